import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { ENGINES, type TestDatabase } from "./support/engines";
import { SAT_SHEET } from "./support/satSitting";
import { type TestBench, testBench } from "./support/testBench";
import { type Browser, MORNING, type TestServer, testSchool, testServer } from "./support/testSchool";

const HOUR = 3600 * 1000;

describe.each(ENGINES)("assignments on $engine", ({ open }) => {
  let database: TestDatabase;
  let school: TestServer;
  let head: Browser;
  let other: Browser;
  let bench: TestBench;
  beforeAll(async () => {
    database = await open();
    school = await testServer(database);
    head = await testSchool(school, "Millbrook");
    other = await testSchool(school, "Dale");
    bench = await testBench(school, head.schoolId, ["Ada", "Bo"]);
  });
  afterAll(async () => {
    await school.server.close();
    await database.remove();
  });

  const terms = (fields: object = {}) => ({
    kind: "test",
    from: MORNING,
    until: MORNING + HOUR,
    attempts: 1,
    people: null,
    extraTime: [],
    ...fields,
  });
  const ask = (method: "POST" | "PUT", url: string, payload: object, by: Browser = head) =>
    school.server.inject({ method, url, payload, cookies: by.cookies, headers: by.headers });
  const get = (url: string, by: Browser = head) => school.server.inject({ url, cookies: by.cookies });
  const make = (fields: object = {}, sheet: unknown = SAT_SHEET) =>
    ask("POST", "/api/assignments", { classId: bench.classId, sheet, ...terms(fields) });
  const due = async (person = bench.people[0]) =>
    (await school.server.inject({ url: `/api/bench/people/${person}/due`, cookies: bench.cookies })).json();

  test("a sheet is set a class, and each of its people sees its title, never the sheet", async () => {
    const made = await make({ extraTime: [{ personId: bench.people[1], percent: 50 }] });
    expect(made.statusCode).toBe(200);
    expect(made.json()).toMatchObject({ title: SAT_SHEET.title, people: null, version: 1, begun: 0, received: 0 });
    const { due: list } = await due(bench.people[1]);
    const [one] = list.filter((each: { assignmentId: string }) => each.assignmentId === made.json().id);
    expect(one).toMatchObject({ title: SAT_SHEET.title, state: "open", left: 1, extraTime: 50, sittings: [] });
    expect(JSON.stringify(list)).not.toContain("stations");
    const whole = await get(`/api/assignments/${made.json().id}`);
    expect(whole.json().sheet.stations).toHaveLength(SAT_SHEET.stations.length);
  });

  test("one for some of the class is nobody else's", async () => {
    const made = await make({ people: [bench.people[1]] });
    const ids = async (person?: string) =>
      (await due(person)).due.map(({ assignmentId }: { assignmentId: string }) => assignmentId);
    expect(await ids(bench.people[1])).toContain(made.json().id);
    expect(await ids(bench.people[0])).not.toContain(made.json().id);
  });

  test.each([
    { why: "a sheet that is none", fields: {}, sheet: { format: "x" }, code: "sheet-not-read" },
    { why: "an end before the beginning", fields: { until: MORNING }, code: "ends-before-it-begins" },
    { why: "somebody of no class", fields: { people: ["nobody"] }, code: "no-such-thing" },
    {
      why: "extra time for somebody of no class",
      fields: { extraTime: [{ personId: "x", percent: 5 }] },
      code: "no-such-thing",
    },
    { why: "no attempt", fields: { attempts: 0 }, code: "whole" },
    { why: "another kind", fields: { kind: "exam" }, code: "one-of" },
  ])("$why is refused, and nothing is stored", async ({ fields, sheet = SAT_SHEET, code }) => {
    const count = async () => (await database.query.selectFrom("assignments").select("id").execute()).length;
    const before = await count();
    expect((await make(fields, sheet)).json().problem.code).toBe(code);
    expect(await count()).toBe(before);
  });

  test("nobody who left the class is named anew; whoever was named before stays, with what they sat", async () => {
    const { classId, people } = await testBench(school, head.schoolId, ["Cy", "Di"]);
    const [cy = "", di = ""] = people;
    const set = (fields: object) => ask("POST", "/api/assignments", { classId, sheet: SAT_SHEET, ...terms(fields) });
    const forBoth = { people: [cy, di], extraTime: [{ personId: cy, percent: 25 }] };
    const [before, without] = [(await set(forBoth)).json(), (await set({ people: [di] })).json()];
    await ask("POST", `/api/classes/${classId}/people/${cy}/leave`, {});
    for (const fields of [{ people: [cy, di] }, { extraTime: [{ personId: cy, percent: 25 }] }]) {
      const refused = [
        await set(fields),
        await ask("PUT", `/api/assignments/${without.id}`, { version: 1, ...terms(fields) }),
      ];
      for (const answer of refused) {
        expect([answer.statusCode, answer.json().problem]).toMatchObject([
          409,
          { code: "left-class", values: { name: "Cy" } },
        ]);
      }
    }
    const later = { version: 1, ...terms({ ...forBoth, until: MORNING + 2 * HOUR }) };
    expect((await ask("PUT", `/api/assignments/${before.id}`, later)).json()).toMatchObject({
      people: [cy, di].sort(),
      version: 2,
    });
    expect((await ask("POST", `/api/classes/${classId}/people`, { name: "Cy", personId: cy })).statusCode).toBe(200);
    expect((await set(forBoth)).statusCode).toBe(200);
  });

  test("a change needs the version it was made on", async () => {
    const { id } = (await make()).json();
    const changed = await ask("PUT", `/api/assignments/${id}`, { version: 1, ...terms({ attempts: 3 }) });
    expect(changed.json()).toMatchObject({ version: 2, attempts: 3 });
    const late = await ask("PUT", `/api/assignments/${id}`, { version: 1, ...terms({ attempts: 5 }) });
    expect([late.statusCode, late.json().problem]).toMatchObject([
      409,
      { code: "assignment-changed", values: { version: 2 } },
    ]);
    const again = await ask("PUT", `/api/assignments/${id}`, { version: 2, sheet: SAT_SHEET, ...terms() });
    expect(again.json()).toMatchObject({ version: 3, attempts: 1 });
  });

  test("one that was ended is over, and ending it twice changes nothing", async () => {
    const { id } = (await make()).json();
    const first = await ask("POST", `/api/assignments/${id}/end`, {});
    expect(first.json()).toMatchObject({ endedAt: MORNING, version: 2 });
    expect((await ask("POST", `/api/assignments/${id}/end`, {})).json()).toEqual(first.json());
    const [one] = (await due()).due.filter((each: { assignmentId: string }) => each.assignmentId === id);
    expect(one.state).toBe("over");
    // A bench says when it closed, not until when it would have been open.
    expect(one.until).toBe(first.json().endedAt);
  });

  test("one that nobody began is withdrawn, and is due for nobody; one that was begun stays", async () => {
    const { id } = (await make({ people: [bench.people[0]] })).json();
    const idsDue = async () => (await due()).due.map(({ assignmentId }: { assignmentId: string }) => assignmentId);
    expect(await idsDue()).toContain(id);
    expect((await ask("POST", `/api/assignments/${id}/withdraw`, {}, other)).statusCode).toBe(404);
    expect((await ask("POST", `/api/assignments/${id}/withdraw`, {})).statusCode).toBe(204);
    expect(await idsDue()).not.toContain(id);
    expect((await get(`/api/assignments/${id}`)).statusCode).toBe(404);
    const rows = await database.query.selectFrom("audit").selectAll().where("of_id", "=", id).execute();
    expect(rows.map(({ action }) => action)).toEqual(["assignment.made", "assignment.withdrawn"]);

    const begun = (await make()).json().id;
    const payload = { assignmentId: begun, sittingId: "begun-before-withdrawn" };
    const url = `/api/bench/people/${bench.people[0]}/sittings`;
    await school.server.inject({ method: "POST", url, payload, cookies: bench.cookies });
    const refused = await ask("POST", `/api/assignments/${begun}/withdraw`, {});
    expect([refused.statusCode, refused.json().problem.code]).toEqual([409, "begun-already"]);
    expect(await idsDue()).toContain(begun);
  });

  test("another school sees and changes nothing of it", async () => {
    const { id } = (await make()).json();
    expect((await get(`/api/classes/${bench.classId}/assignments`, other)).json()).toEqual({ assignments: [] });
    for (const answer of [
      await get(`/api/assignments/${id}`, other),
      await get(`/api/assignments/${id}/difficulty`, other),
      await ask("POST", `/api/assignments/${id}/end`, {}, other),
      await ask("PUT", `/api/assignments/${id}`, { version: 1, ...terms() }, other),
      await ask("POST", "/api/assignments", { classId: bench.classId, sheet: SAT_SHEET, ...terms() }, other),
    ]) {
      expect([answer.statusCode, answer.json().problem.code]).toEqual([404, "no-such-thing"]);
    }
  });

  test("what an instructor assigned is written down", async () => {
    const { id } = (await make()).json();
    const rows = await database.query.selectFrom("audit").selectAll().where("of_id", "=", id).execute();
    expect(rows.map(({ action }) => action)).toEqual(["assignment.made"]);
  });
});
