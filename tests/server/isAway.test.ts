import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { isAway } from "../../src/server/database/isAway";
import { type OpenDatabase, openPostgres } from "../../src/server/database/openDatabase";
import { anAttempt } from "../support/logbookRecords";
import { type PostgresServer, startPostgres } from "./support/postgresServer";
import { outcomesOf, testBench } from "./support/testBench";
import { testSchool, testServer } from "./support/testSchool";

const withCode = (code: string) => Object.assign(new Error("x"), { code });

test.each([
  { error: withCode("ECONNREFUSED"), is: true },
  { error: new AggregateError([withCode("ECONNREFUSED")]), is: true },
  { error: withCode("57P01"), is: true },
  { error: withCode("40P01"), is: true },
  { error: withCode("53100"), is: true },
  { error: new Error("Connection terminated unexpectedly"), is: true },
  { error: withCode("23505"), is: false },
  { error: new Error("anything"), is: false },
  { error: "ECONNREFUSED", is: false },
])("$error.code $error.message passes by itself: $is", ({ error, is }) => {
  expect(isAway(error)).toBe(is);
});

describe("PostgreSQL that is stopped and started again", () => {
  let postgres: PostgresServer;
  let database: OpenDatabase;
  beforeAll(async () => {
    postgres = await startPostgres();
    database = await openPostgres(await postgres.newDatabase("school"));
  });
  afterAll(async () => {
    await database.close();
    await postgres.remove();
  });

  test("a bench is told to try again meanwhile, and its records are taken after it", async () => {
    const school = await testServer({ ...database, remove: database.close });
    const { schoolId } = await testSchool(school, "Millbrook");
    const bench = await testBench(school, schoolId);
    const part = [{ kind: "attempts", record: anAttempt("one", { personId: bench.people[0] ?? "" }) }];
    await postgres.stop();
    const answer = await bench.send(part);
    expect([answer.statusCode, answer.json().problem.code]).toEqual([503, "try-again"]);
    await postgres.start();
    expect(await outcomesOf(bench.send(part))).toEqual(["received"]);
    await school.server.close();
  });
});
