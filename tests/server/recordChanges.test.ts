import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { canonicalJson } from "../../src/drill/canonicalJson";
import { readLogbookFile } from "../../src/records/file/logbookFile";
import { toBase64 } from "../../src/records/motion/base64";
import { ERASED_WORDS } from "../../src/school/records/erasedWords";
import { EXPORT_FORMS } from "../../src/school/wire/recordsWire";
import { runCommand } from "../../src/server/backup/commands";
import { keptSitting } from "../support/keptRecord";
import { aJob, anAttempt, SHORT_TRACE } from "../support/logbookRecords";
import { ENGINES, type TestDatabase } from "./support/engines";
import { outcomesOf, type TestBench, testBench } from "./support/testBench";
import { type Browser, MORNING, type TestServer, testSchool, testServer } from "./support/testSchool";

describe.each(ENGINES)("records changed and taken out on $engine", ({ open }) => {
  let database: TestDatabase;
  let school: TestServer;
  let head: Browser;
  let bench: TestBench;
  let tavro = "";
  let mibsy = "";
  beforeAll(async () => {
    database = await open();
    school = await testServer(database);
    head = await testSchool(school, "Millbrook");
    bench = await testBench(school, head.schoolId, ["Tavro", "Mibsy"]);
    [tavro = "", mibsy = ""] = bench.people;
  });
  afterAll(async () => {
    const { isWell, lines } = await runCommand({ verb: "check" }, database, school.world.keys, MORNING);
    expect(isWell, lines.join("\n")).toBe(true);
    await school.server.close();
    await database.remove();
  });

  const attempt = (id: string, other = {}) => ({
    kind: "attempts",
    record: anAttempt(id, { personId: tavro, ...other }),
    motion: toBase64(SHORT_TRACE),
  });
  const post = (url: string, payload: object, who: Pick<Browser, "cookies"> & { headers?: Browser["headers"] }) =>
    school.server.inject({ method: "POST", url, payload, cookies: who.cookies, headers: who.headers ?? {} });
  const edit = async (recordId: string, base: number, note: string, at: number, who = bench) =>
    (await post("/api/bench/edits", { edits: [{ recordId, base, note, at }] }, who)).json().edits[0];
  const get = (url: string) => school.server.inject({ url, cookies: head.cookies });

  test("an edit is a version on top; the record stays as it was received", async () => {
    await bench.send([attempt("noted")]);
    expect(await edit("noted", 0, "first", 10)).toEqual({
      recordId: "noted",
      outcome: "taken",
      version: 1,
      note: "first",
    });
    expect(await edit("noted", 0, "earlier", 5)).toMatchObject({ outcome: "other-holds", version: 3, note: "first" });
    expect(await edit("noted", 3, "second", 20)).toMatchObject({ outcome: "taken", version: 4 });
    expect(await edit("noted", 3, "second", 20)).toMatchObject({ outcome: "taken", version: 4 });
    expect(await outcomesOf(bench.send([attempt("noted")]))).toEqual(["known"]);
    const file = (await get(`/api/people/${tavro}/export/logbook`)).json();
    expect(file.attempts.find(({ id }: { id: string }) => id === "noted").note).toBe("second");
  });

  test("a record of somebody else, or none, is not there to be edited or deleted", async () => {
    const other = await testBench(school, head.schoolId, ["Dorvik"]);
    await bench.send([attempt("mine")]);
    expect(await edit("mine", 0, "x", 1, other)).toMatchObject({ outcome: "no-record" });
    expect(await edit("none", 0, "x", 1)).toMatchObject({ outcome: "no-record" });
    const deleted = await post("/api/bench/deletions", { records: ["mine", "none"] }, other);
    expect(deleted.json().deletions.map(({ outcome }: { outcome: string }) => outcome)).toEqual([
      "no-record",
      "no-record",
    ]);
  });

  test("a bench deletes what is practice; a sitting and its tries stay, until an instructor deletes them", async () => {
    const sitting = { kind: "sittings", record: { ...keptSitting("test"), personId: tavro } };
    await bench.send([attempt("practice"), attempt("test:0", { sittingId: "test" }), sitting]);
    const records = ["practice", "test:0", "test"];
    const outcomes = async (url: string, who: typeof bench | Browser) =>
      (await post(url, { records }, who)).json().deletions.map(({ outcome }: { outcome: string }) => outcome);
    expect(await outcomes("/api/bench/deletions", bench)).toEqual(["deleted", "stays", "stays"]);
    expect(await outcomes("/api/records/deletions", head)).toEqual(["no-record", "deleted", "deleted"]);
    expect(await outcomesOf(bench.send([attempt("practice"), sitting]))).toEqual(["erased", "erased"]);
    const audit = (await get("/api/audit")).json().entries;
    expect(audit.filter(({ action }: { action: string }) => action === "record.deleted")).toHaveLength(2);
  });

  test.each(EXPORT_FORMS.map((form) => ({ form })))("a class and a person are given out as $form", async ({ form }) => {
    await bench.send([
      attempt("given"),
      { kind: "jobs", record: aJob("given-job", { personId: mibsy, isRight: false }) },
      { kind: "sittings", record: { ...keptSitting("given-sitting"), personId: mibsy } },
    ]);
    const whole = await get(`/api/classes/${bench.classId}/export/${form}`);
    expect(whole.statusCode).toBe(200);
    expect(whole.headers["content-disposition"]).toMatch(/^attachment; filename="[a-z]+\.(json|csv)"$/);
    const own = await get(`/api/people/${tavro}/export/${form}`);
    const [all, one] = [whole.body, own.body];
    if (form === "logbook") {
      const { records, traces, remarks } = readLogbookFile(all);
      expect(remarks).toEqual([]);
      expect(records.people.map(({ name }) => name).toSorted()).toEqual(["Mibsy", "Tavro"]);
      expect([records.attempts, records.jobs, records.sittings].map((list) => list.length > 0)).toEqual([
        true,
        true,
        true,
      ]);
      expect(traces.get("given")).toEqual(SHORT_TRACE);
    }
    if (["logbook", "xapi", "jobs", "sittings"].includes(form)) expect(all).toContain("Mibsy");
    expect(one).not.toContain("Mibsy");
  });

  test("nobody of another school is given out, edited, deleted or erased", async () => {
    const second = await testSchool(school, "Second");
    await bench.send([attempt("ours")]);
    for (const url of [`/api/people/${tavro}/export/logbook`, `/api/classes/${bench.classId}/export/logbook`]) {
      expect((await school.server.inject({ url, cookies: second.cookies })).statusCode).toBe(404);
    }
    const deleted = await post("/api/records/deletions", { records: ["ours"] }, second);
    expect(deleted.json().deletions).toEqual([{ recordId: "ours", outcome: "no-record" }]);
    expect((await post(`/api/people/${tavro}/erase`, {}, second)).statusCode).toBe(404);
  });

  test("whoever is erased is gone from every table but for what is told", async () => {
    const other = await testBench(school, head.schoolId, ["Quillon"]);
    const [person = ""] = other.people;
    await other.send([attempt("of-quillon", { personId: person, note: "a secret note" })]);
    await post(
      "/api/bench/edits",
      { edits: [{ recordId: "of-quillon", base: 0, note: "another secret", at: 1 }] },
      other,
    );
    const answer = await post(`/api/people/${person}/erase`, {}, head);
    expect(answer.json()).toEqual({ records: 1, stays: Object.keys(ERASED_WORDS) });
    const tables = ["people", "records", "record_edits", "audit", "chain", "tombstones", "class_people"] as const;
    for (const table of tables) {
      const rows = await database.query.selectFrom(table).selectAll().execute();
      expect(canonicalJson(JSON.parse(JSON.stringify(rows)))).not.toMatch(/Quillon|secret/);
    }
    expect(await outcomesOf(other.send([attempt("later", { personId: person })]))).toEqual(["erased"]);
    expect((await post(`/api/people/${person}/erase`, {}, head)).statusCode).toBe(404);
    expect((await get(`/api/people/${person}/export/logbook`)).statusCode).toBe(404);
  });
});
