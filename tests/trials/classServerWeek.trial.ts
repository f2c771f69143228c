import { DEMO_CLASS } from "../../src/school/demo/demoClass";
import { demoWeekOn } from "../server/support/demoWeekOn";
import { ENGINES } from "../server/support/engines";
import type { Trial } from "./trial";

/* A week of the whole invented class on each database: every record that a bench was told is stored is there, once. */

export const trial: Trial = {
  name: "a week of a class of 24",
  async run({ chance, pass, fail }) {
    const seed = Math.floor(1e6 * chance());
    for (const { engine, open } of ENGINES) {
      const database = await open();
      const began = performance.now();
      const { school, week, kinds } = await demoWeekOn(database, { apprentices: DEMO_CLASS, seed });
      const seconds = Math.round((performance.now() - began) / 1000);
      const rows = Object.values(kinds).reduce((sum, count) => sum + count, 0);
      process.stdout.write(`${engine}: ${seconds} s, ${JSON.stringify(kinds)}, ${week.acknowledged} acknowledged\n`);
      if (rows === week.acknowledged && week.sittings === kinds.sittings) pass();
      else fail(`${engine}, seed ${seed}: ${week.acknowledged} acknowledged, ${rows} rows, ${week.sittings} sittings`);
      await school.server.close();
      await database.remove();
    }
  },
};
