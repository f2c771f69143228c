import { csvParse } from "d3-dsv";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { classTable } from "../../src/progress/classTable";
import { demoLogbook } from "../../src/progress/demo/demoLogbook";
import { NO_CONTENTS } from "../../src/records/logbookContents";
import { deskAnswer } from "../../src/school/wire/deskWire";
import { sumUpAnew } from "../../src/server/desk/summaries";
import { seededChance } from "../../src/statistics/chance";
import { ENGINES, type TestDatabase } from "./support/engines";
import { outcomesOf, type TestBench, testBench } from "./support/testBench";
import { type Browser, MORNING, type TestServer, testSchool, testServer } from "./support/testSchool";

const demo = demoLogbook(7, MORNING);
const DEMO_NAMES = new Map(demo.records.people.map(({ id, name }) => [id, name]));

/** Numbers as they are but for rounding; nothing of how somebody came to where they are, nor of when a name was written. */
const rounded = (value: unknown): unknown =>
  JSON.parse(
    JSON.stringify(value, (key, one) => {
      if (["scores", "wasReady", "createdAt", "updatedAt", "isDemo"].includes(key)) return undefined;
      return typeof one === "number" && !Number.isInteger(one) ? Number(one.toFixed(9)) : one;
    }),
  );

describe.each(ENGINES)("the desk of a server on $engine", ({ open }) => {
  let database: TestDatabase;
  let school: TestServer;
  let head: Browser;
  let bench: TestBench;
  /** The demo week, its people those of the class. */
  let week = NO_CONTENTS;
  beforeAll(async () => {
    database = await open();
    school = await testServer(database);
    head = await testSchool(school, "Millbrook");
    const trainees = demo.records.people.filter(({ part }) => part === "trainee");
    bench = await testBench(
      school,
      head.schoolId,
      trainees.map(({ name }) => name),
    );
    const ids = new Map(trainees.map(({ name }, k) => [name, bench.people[k] ?? ""]));
    const moved = <One extends { readonly personId: string }>(records: readonly One[]) =>
      records.map((one) => ({ ...one, personId: ids.get(DEMO_NAMES.get(one.personId) ?? "") ?? "" }));
    const { attempts, jobs, declarations } = demo.records;
    const people = trainees.map((one) => ({ ...one, id: ids.get(one.name) ?? "" }));
    const records = { people, attempts: moved(attempts), jobs: moved(jobs), declarations: moved(declarations) };
    week = { ...NO_CONTENTS, records: { ...NO_CONTENTS.records, ...records } };
  });
  afterAll(async () => {
    await school.server.close();
    await database.remove();
  });

  const desk = (path = "desk", who = head) =>
    school.server.inject({ url: `/api/classes/${bench.classId}/${path}`, cookies: who.cookies });
  const expected = (records: Partial<typeof week.records> = {}) =>
    rounded({
      ...classTable([{ ...week, records: { ...week.records, ...records } }], undefined, { now: school.world.now() }),
      hands: ["screen"],
    });

  test("has nothing of a class that did nothing", async () => {
    expect((await desk()).json()).toMatchObject({ skills: [], hand: "screen", hands: ["screen"] });
  });

  test("is the desk of files, with whatever order the records come in", async () => {
    const { attempts, jobs, declarations } = week.records;
    const sent = [
      ...attempts.map((record) => ({ kind: "attempts", record })),
      ...jobs.map((record) => ({ kind: "jobs", record })),
      ...declarations.map((record) => ({ kind: "declarations", record })),
    ];
    const chance = seededChance(3);
    const shuffled = sent
      .map((one) => ({ one, place: chance() }))
      .sort((a, b) => a.place - b.place)
      .map(({ one }) => one);
    for (let from = 0; from < shuffled.length; from += 60) {
      const outcomes = await outcomesOf(bench.send(shuffled.slice(from, from + 60)));
      expect(new Set(outcomes)).toEqual(new Set(["received"]));
      // Twice: it counts once.
      await bench.send(shuffled.slice(from, from + 60));
    }
    expect(rounded((await desk()).json())).toEqual(expected());
  });

  test("is what its schema says, no more and no less: the server does not check it when it answers", async () => {
    const answer = (await desk()).json();
    expect(deskAnswer.parse(answer)).toEqual(answer);
  });

  test("is the same when all is summed up anew", async () => {
    const before = rounded((await desk()).json());
    await database.query.transaction().execute(async (held) => {
      for (const id of bench.people) await sumUpAnew(held, head.schoolId, id);
    });
    expect(rounded((await desk()).json())).toEqual(before);
  });

  test("is CSV too, a row each person and skill", async () => {
    const rows = csvParse((await desk("desk.csv")).body);
    const cells = (await desk()).json().rows.flatMap(({ cells: own }: { cells: unknown[] }) => own.filter(Boolean));
    expect(rows).toHaveLength(cells.length);
    expect(rows[0]).toMatchObject({ person: "Dorvik", turned_by: "screen" });
  });

  test("loses what is deleted", async () => {
    const [gone] = week.records.attempts;
    const answer = await school.server.inject({
      method: "POST",
      url: "/api/records/deletions",
      cookies: head.cookies,
      headers: head.headers,
      payload: { records: [gone?.id] },
    });
    expect(answer.statusCode).toBe(200);
    expect(rounded((await desk()).json())).toEqual(expected({ attempts: week.records.attempts.slice(1) }));
  });

  test("says what it answers where the others do", async () => {
    const told = (await school.server.inject({ url: "/api/openapi.json" })).json();
    const { get } = told.paths["/api/classes/{classId}/desk"];
    expect(Object.keys(get.responses["200"].content["application/json"].schema.properties)).toEqual([
      "skills",
      "rows",
      "hand",
      "hands",
    ]);
  });

  test("is nobody else's", async () => {
    const other = await testSchool(school, "Second");
    for (const path of ["desk", "desk.csv"]) {
      expect((await desk(path, other)).statusCode).toBe(404);
      expect((await desk(path, { ...other, cookies: bench.cookies })).statusCode).toBe(401);
    }
  });
});
