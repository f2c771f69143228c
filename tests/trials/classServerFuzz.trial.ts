import { ENGINES } from "../server/support/engines";
import { fuzz } from "../server/weather/requestFuzz";
import type { Trial } from "./trial";

/* 100,000 requests from the schemas and around them, half to each database: no fault of the server, nothing stored against a schema. */

const REQUESTS = 50_000;

export const trial: Trial = {
  name: "class server asked for anything",
  async run({ chance, hasTime, pass, fail }) {
    for (const { engine, open } of ENGINES) {
      const database = await open();
      const { statuses, stored, problems } = await fuzz(database, REQUESTS, Math.floor(1e6 * chance()), hasTime);
      process.stdout.write(`${engine}: ${JSON.stringify(statuses)}, ${stored} records stored\n`);
      for (const problem of problems.slice(0, 20)) fail(problem);
      if (problems.length === 0) pass();
      await database.remove();
    }
  },
};
