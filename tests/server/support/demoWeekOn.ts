import { type DemoWeek, runDemoWeek } from "../../../src/server/demo/demoWeek";
import { inviteFirst } from "../../../src/server/people/links";
import type { TestDatabase } from "./engines";
import { MORNING, type TestServer, testServer } from "./testSchool";

/** The demo week as it came into a database, with how many records of each kind it has. */
interface WeekThere {
  readonly school: TestServer;
  readonly week: DemoWeek;
  readonly kinds: Readonly<Record<string, number>>;
}

/** Runs the demo week on a database, by a server whose chance repeats. */
export async function demoWeekOn(
  database: TestDatabase,
  which: { readonly apprentices: number; readonly seed: number },
): Promise<WeekThere> {
  const school = await testServer(database);
  const { server, world, pass } = school;
  const week = await runDemoWeek({
    ...which,
    server,
    passTo: (at) => pass(at - world.now()),
    monday: MORNING - 8 * 3600 * 1000,
    token: await inviteFirst(world),
    password: "a long password",
    appVersion: world.appVersion,
  });
  const rows = await database.query
    .selectFrom("records")
    .select(["kind", (of) => of.fn.countAll<number>().as("count")])
    .groupBy("kind")
    .execute();
  return { school, week, kinds: Object.fromEntries(rows.map(({ kind, count }) => [kind, Number(count)])) };
}
