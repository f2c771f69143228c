import { ENGINES } from "../server/support/engines";
import { fuzz } from "../server/weather/requestFuzz";
import type { Trial } from "./trial";

/* 100,000 requests from the schemas and around them to each database: no fault of the server, nothing stored against a schema. */

const REQUESTS = 100_000;

export const trial: Trial = {
  name: "class server asked for anything",
  async run({ chance, hasTime, pass, fail }) {
    const seed = Math.floor(1e6 * chance());
    // Both at once: while one waits for its disk the other is asked.
    const tried = ENGINES.map(async ({ engine, open }) => {
      const database = await open();
      const { statuses, stored, problems } = await fuzz(database, REQUESTS, seed, hasTime);
      const asked = Object.values(statuses).reduce((sum, count) => sum + count, 0);
      process.stdout.write(`${engine}: ${asked} requests, ${JSON.stringify(statuses)}, ${stored} records stored\n`);
      for (const problem of problems.slice(0, 20)) fail(`${engine}, seed ${seed}: ${problem}`);
      if (problems.length === 0) pass();
      await database.remove();
    });
    await Promise.all(tried);
  },
};
