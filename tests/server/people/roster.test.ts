import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type Asking, asking, outcome, testClass } from "../support/asking";
import { ENGINES, type TestDatabase } from "../support/engines";
import { type TestServer, testSchool, testServer } from "../support/testSchool";

describe.each(ENGINES)("on $engine", ({ open }) => {
  let database: TestDatabase;
  let school: TestServer;
  let head: Asking;
  let other: Asking;
  beforeAll(async () => {
    database = await open();
    school = await testServer(database);
    head = asking(school, await testSchool(school, "hill"));
    other = asking(school, await testSchool(school, "vale"));
  });
  afterAll(async () => {
    await school.server.close();
    await database.remove();
  });

  const people = async (classId: string) => (await head.get(`/api/classes/${classId}/people`)).json().people;
  const add = (classId: string, body: object) => head.post(`/api/classes/${classId}/people`, body);

  test("a class is made, renamed and ended", async () => {
    const made = (await head.post("/api/classes", { name: " Night  shift " })).json();
    expect(made).toMatchObject({ name: "Night shift", endedAt: null, people: 0 });
    await add(made.id, { name: "Ann" });
    expect(outcome(await head.post(`/api/classes/${made.id}/name`, { name: "Day shift" }))).toBe("204");
    const { classes } = (await head.get("/api/classes")).json();
    expect(classes).toEqual([{ ...made, name: "Day shift", people: 1 }]);
    await head.post(`/api/classes/${made.id}/end`);
    expect((await head.get("/api/classes")).json().classes[0].endedAt).toBe(school.world.now());
    expect(outcome(await add(made.id, { name: "Bea" }))).toBe("409 class-ended");
    expect((await other.get("/api/classes")).json().classes).toEqual([]);
  });

  test("a person is added by hand once, with extra time, and is the same in another class", async () => {
    const [one, two] = [await testClass(head), await testClass(head)];
    const { id } = (await add(one.classId, { name: "Cal", extraTime: 25 })).json();
    expect(outcome(await add(one.classId, { name: "CAL" }))).toBe("409 name-taken");
    expect((await add(two.classId, { name: "cal" })).json()).toEqual({ id });
    expect(await people(two.classId)).toMatchObject([{ id, name: "Cal", extraTime: 25, isByCode: false }]);
    const found = (await head.get("/api/people")).json().people.filter((one: { id: string }) => one.id === id);
    expect(found[0].classIds.toSorted()).toEqual([one.classId, two.classId].toSorted());
    const { classId } = await testClass(other);
    expect(outcome(await other.post(`/api/classes/${classId}/people`, { name: "Cal", personId: id }))).toBe(
      "404 no-such-thing",
    );
    expect((await other.post(`/api/classes/${classId}/people`, { name: "Cal" })).json().id).not.toBe(id);
  });

  test("of two changes on one version the second is told what holds now, and changes nothing", async () => {
    const { classId } = await testClass(head);
    const { id } = (await add(classId, { name: "Dan" })).json();
    await add(classId, { name: "Eli" });
    expect(outcome(await head.post(`/api/people/${id}`, { version: 1, name: "Dann", extraTime: 10 }))).toBe("204");
    const late = await head.post(`/api/people/${id}`, { version: 1, name: "Danny" });
    expect(late.json().problem).toEqual({
      code: "changed-meanwhile",
      path: [],
      values: { name: "Dann", extraTime: 10, version: 2 },
    });
    expect(outcome(await head.post(`/api/people/${id}`, { version: 2, name: "ELI" }))).toBe("409 name-taken");
    expect(outcome(await head.post(`/api/people/${id}`, { version: 2, name: "dann" }))).toBe("204");
    expect(await people(classId)).toMatchObject([{ name: "Eli" }, { name: "dann", extraTime: 10, version: 3 }]);
  });

  test("two who change one person at once: one is taken, one is told", async () => {
    const { classId } = await testClass(head);
    const { id } = (await add(classId, { name: "Flo" })).json();
    const both = await Promise.all(
      [5, 10].map((extraTime) => head.post(`/api/people/${id}`, { version: 1, extraTime })),
    );
    expect(both.map(outcome).toSorted()).toEqual(["204", "409 changed-meanwhile"]);
  });

  test("a file is looked at, and nothing is written before it is confirmed", async () => {
    const [here, there] = [await testClass(head), await testClass(head)];
    const { id: gil } = (await add(there.classId, { name: "Gil" })).json();
    const { id: hua } = (await add(here.classId, { name: "Hua" })).json();
    const csv = "Name;Extra time\nNew One;20 %\nGIL;\nhua;15\nnew  one;\n;5\n";
    const look = () => head.post(`/api/classes/${here.classId}/roster/preview`, { csv });
    const preview = (await look()).json();
    expect(preview.rows).toEqual([
      { line: 2, outcome: "added", name: "New One", extraTime: 20 },
      { line: 3, outcome: "matched", name: "Gil", personId: gil, isInClass: false, extraTime: null },
      { line: 4, outcome: "matched", name: "Hua", personId: hua, isInClass: true, extraTime: 15 },
      { line: 5, outcome: "refused", name: "new one", why: { code: "twice", path: [], values: { line: 2 } } },
      { line: 6, outcome: "refused", name: "", why: { code: "no-name", path: [], values: {} } },
    ]);
    expect(await people(here.classId)).toHaveLength(1);
    await add(here.classId, { name: "New one" });
    const confirm = (seen: string) => head.post(`/api/classes/${here.classId}/roster`, { csv, seen });
    expect(outcome(await confirm(preview.seen))).toBe("409 roster-changed");
    expect(await people(here.classId)).toHaveLength(2);
    const taken = await confirm((await look()).json().seen);
    expect(taken.json()).toEqual({ added: 0, matched: 3, refused: 2 });
    expect(await people(here.classId)).toMatchObject([
      { name: "Gil", extraTime: 0 },
      { name: "Hua", extraTime: 15, version: 2 },
      { name: "New one", extraTime: 20 },
    ]);
    expect(outcome(await confirm(preview.seen))).toBe("409 roster-changed");
  });

  test("what was looked at for one class is not taken for another", async () => {
    const [one, two] = [await testClass(head), await testClass(head)];
    const { seen } = (await head.post(`/api/classes/${one.classId}/roster/preview`, { csv: "Zoe" })).json();
    expect(outcome(await head.post(`/api/classes/${two.classId}/roster`, { csv: "Zoe", seen }))).toBe(
      "409 roster-changed",
    );
  });

  test("the head reads who changed what, and no secret is in it", async () => {
    const { classId, code } = await testClass(head, "Audited");
    const { id } = (await add(classId, { name: "Ivy Audited" })).json();
    const { cards } = (await head.post(`/api/classes/${classId}/cards`, {})).json();
    await head.post(`/api/people/${id}`, { version: 1, name: "Ivy Renamed", noPin: true });
    const log = await head.get("/api/audit");
    const [latest] = log.json().entries;
    expect(latest).toMatchObject({ by: { name: "Head of hill" }, action: "person.changed", ofId: id });
    expect(latest.details).toEqual({ fields: ["name", "noPin"] });
    expect(log.body).not.toContain(cards[0].token);
    expect(log.body).not.toContain(code.replace("-", ""));
    expect(log.body).not.toContain("Ivy");
    const rest = (await head.get(`/api/audit?before=${latest.id}`)).json();
    expect(rest.entries[0].action).toBe("cards.made");
    expect((await other.get("/api/audit")).body).not.toContain(classId);
  });
});
