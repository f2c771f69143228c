import { gzipSync } from "node:zlib";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { fromBase64, toBase64 } from "../../src/records/motion/base64";
import { keptHash } from "../../src/school/records/sentRecords";
import { ChainWalk } from "../../src/school/signing/chain";
import { keptSitting } from "../support/keptRecord";
import { aJob, anAttempt, SHORT_TRACE } from "../support/logbookRecords";
import { ENGINES, type TestDatabase } from "./support/engines";
import { outcomesOf, type TestBench, testBench } from "./support/testBench";
import { type Browser, type TestServer, testSchool, testServer } from "./support/testSchool";

const MOTION = toBase64(SHORT_TRACE);
const OTHER_HASH = { ...(keptSitting("x").body as object), sha256: "0".repeat(64) };
const CAMERA = { kind: "printed-dial", name: "Camera", resolution: 0.05, noise: null, isCoarse: false };

describe.each(ENGINES)("records sent to a server on $engine", ({ open }) => {
  let database: TestDatabase;
  let school: TestServer;
  let head: Browser;
  let bench: TestBench;
  let personId = "";
  beforeAll(async () => {
    database = await open();
    school = await testServer(database);
    head = await testSchool(school, "Millbrook");
    bench = await testBench(school, head.schoolId);
    personId = bench.people[0] ?? "";
  });
  afterAll(async () => {
    await school.server.close();
    await database.remove();
  });

  const attempt = (id: string, other = {}) => ({ kind: "attempts", record: anAttempt(id, { personId, ...other }) });
  const rowOf = (id: string) =>
    database.query.selectFrom("records").selectAll().where("id", "=", id).executeTakeFirst();

  test("what keeps the rules is stored as it came, with its motion, and linked into the chain", async () => {
    const job = { kind: "jobs", record: aJob("a-job", { personId }) };
    const sitting = { kind: "sittings", record: { ...keptSitting("a-sitting"), personId } };
    const part = [{ ...attempt("first"), motion: MOTION }, job, sitting];
    expect(await outcomesOf(bench.send(part, school.world.now() + 2500))).toEqual(["received", "received", "received"]);
    const row = await rowOf("first");
    expect(JSON.parse(row?.body ?? "")).toEqual(part[0]?.record);
    expect(row).toMatchObject({ kind: "attempts", person_id: personId, clock_ahead_ms: 2500, place: 1 });
    expect(new Uint8Array(row?.motion ?? [])).toEqual(fromBase64(MOTION));
    expect(row?.sha256).toBe(keptHash("attempts", row?.body ?? "", MOTION));
    const chain = await database.query.selectFrom("chain").selectAll().orderBy("place").execute();
    expect(chain.map(({ place, what, of_id }) => [place, what, of_id])).toEqual([
      [1, "attempts", "first"],
      [2, "jobs", "a-job"],
      [3, "sittings", "a-sitting"],
    ]);
    const walk = new ChainWalk(head.schoolId);
    for (const { of_id, ...link } of chain) walk.next({ ...link, ofId: of_id });
    expect(walk.broken).toBeNull();
  });

  test("the same comes twice, or twice in one part: it is one row", async () => {
    expect(await outcomesOf(bench.send([attempt("twice"), attempt("twice")]))).toEqual(["received", "known"]);
    expect(await outcomesOf(bench.send([attempt("twice")]))).toEqual(["known"]);
  });

  test("other content under a known id is refused, and the first stays", async () => {
    const other = attempt("same-id", { note: "another" });
    expect(await outcomesOf(bench.send([attempt("same-id"), other]))).toEqual(["received", "changed"]);
    expect(await outcomesOf(bench.send([other]))).toEqual(["changed"]);
    expect(JSON.parse((await rowOf("same-id"))?.body ?? "").note).toBeUndefined();
  });

  test.each([
    { code: "invalid", sent: null, why: "nothing" },
    { code: "invalid", sent: { kind: "people", record: {} }, why: "a kind that no bench sends" },
    { code: "flag", sent: attempt("bad-1", { opened: 1 }), why: "a field that its schema refuses" },
    { code: "id", sent: attempt("bad 2"), why: "an id that is none" },
    { code: "unknown-field", sent: { ...attempt("bad-3"), more: 1 }, why: "a field that does not belong there" },
    { code: "not-ended", sent: attempt("bad-4", { isUnfinished: true }), why: "an attempt under way" },
    { code: "bad-trace", sent: { ...attempt("bad-5"), motion: "AQID" }, why: "a motion that cannot be read" },
    { code: "doubt-without-device", sent: attempt("bad-6", { doubts: ["gap"] }), why: "doubts that cannot be" },
    { code: "none-named", sent: attempt("bad-7", { sources: [] }), why: "sources that cannot be" },
    { code: "too-noisy", sent: attempt("bad-8", { sources: [{ ...CAMERA, noise: 0.9 }] }), why: "too noisy a source" },
    {
      code: "not-ended",
      sent: { kind: "sittings", record: { ...keptSitting("bad-9"), state: "running" } },
      why: "a sitting under way",
    },
    { code: "not-joined-here", sent: attempt("bad-10", { personId: "stranger" }), why: "a person of no bench" },
    {
      code: "other-hash",
      sent: { kind: "sittings", record: { ...keptSitting("bad-11"), body: OTHER_HASH } },
      why: "a sitting whose record is not that of its hash",
    },
  ])("$why is refused, named, and keeps no other back", async ({ code, sent }) => {
    const id = `beside-${code}-${JSON.stringify(sent).length}`;
    // Those made before there was a person of the school.
    const value = JSON.parse(JSON.stringify(sent).replace('"personId":""', `"personId":"${personId}"`));
    const outcomes = await outcomesOf(bench.send([value, attempt(id)]));
    expect(outcomes).toEqual([code, "received"]);
    expect(await rowOf(value?.record?.id ?? "none")).toBeUndefined();
  });

  test("somebody who joined at another bench is not taken at this one", async () => {
    const other = await testBench(school, head.schoolId, ["Mibsy"]);
    const sent = attempt("elsewhere", { personId: other.people[0] });
    expect(await outcomesOf(bench.send([sent]))).toEqual(["not-joined-here"]);
    expect(await outcomesOf(other.send([sent]))).toEqual(["received"]);
  });

  test("two schools may have one id, each its own chain", async () => {
    const second = await testSchool(school, "Second");
    const other = await testBench(school, second.schoolId);
    const sent = attempt("shared-id", { personId: other.people[0] });
    expect(await outcomesOf(bench.send([attempt("shared-id")]))).toEqual(["received"]);
    expect(await outcomesOf(other.send([sent]))).toEqual(["received"]);
    const { place } = await database.query
      .selectFrom("chain")
      .select("place")
      .where("school_id", "=", second.schoolId)
      .executeTakeFirstOrThrow();
    expect(place).toBe(1);
  });

  test("what was deleted is not taken again, nor anything of who was erased", async () => {
    const { schoolId } = head;
    await bench.send([attempt("deleted")]);
    await database.query.deleteFrom("records").where("id", "=", "deleted").execute();
    await database.query
      .insertInto("tombstones")
      .values({ school_id: schoolId, record_id: "deleted", kind: "attempts", by_id: "x", at: 1 })
      .execute();
    expect(await outcomesOf(bench.send([attempt("deleted")]))).toEqual(["erased"]);
    const other = await testBench(school, schoolId, ["Gone"]);
    await database.query
      .updateTable("people")
      .set({ erased_at: 1 })
      .where("id", "=", other.people[0] ?? "")
      .execute();
    expect(await outcomesOf(other.send([attempt("of-gone", { personId: other.people[0] })]))).toEqual(["erased"]);
  });

  test("parts that come at once are stored once, in one chain without a gap", async () => {
    const parts = Array.from({ length: 8 }, (_, k) => [attempt(`at-once-${k}`), attempt("at-once-all")]);
    const outcomes = await Promise.all(parts.map((part) => outcomesOf(bench.send(part))));
    expect(outcomes.map(([own]) => own)).toEqual(parts.map(() => "received"));
    expect(outcomes.map(([, all]) => all).toSorted()).toEqual([...parts.slice(1).map(() => "known"), "received"]);
    const chain = await database.query
      .selectFrom("chain")
      .selectAll()
      .where("school_id", "=", head.schoolId)
      .orderBy("place")
      .execute();
    const walk = new ChainWalk(head.schoolId);
    for (const { of_id, ...link } of chain) walk.next({ ...link, ofId: of_id });
    expect(walk.broken).toBeNull();
  });

  const raw = (payload: Buffer | string, encoding = "gzip") =>
    school.server.inject({
      method: "POST",
      url: "/api/bench/records",
      cookies: bench.cookies,
      headers: { "content-type": "application/json", "content-encoding": encoding },
      payload,
    });

  test.each([
    { why: "a body that unpacks to gigabytes", code: "too-large", payload: gzipSync(Buffer.alloc(64 * 2 ** 20)) },
    { why: "a body that is no gzip", code: "not-compressed-so", payload: Buffer.from("{}") },
    { why: "an encoding that is not known", code: "not-compressed-so", payload: Buffer.from("{}"), encoding: "br" },
    { why: "half a body", code: "not-compressed-so", payload: gzipSync("{}").subarray(0, 12) },
    { why: "gzip of no JSON", code: "invalid", payload: gzipSync("{") },
  ])("$why is refused", async ({ code, payload, encoding }) => {
    const answer = await raw(payload, encoding);
    expect([answer.json().problem.code, answer.statusCode]).toEqual([code, code === "too-large" ? 413 : 400]);
  });

  test("a part that is not packed is taken as well", async () => {
    const answer = await raw(JSON.stringify({ sentAt: 0, records: [attempt("plain")] }), "identity");
    expect(answer.json().receipts).toEqual([{ id: "plain", outcome: "received" }]);
  });

  test("who is no bench sends nothing", async () => {
    const answer = await school.server.inject({
      method: "POST",
      url: "/api/bench/records",
      payload: { sentAt: 0, records: [] },
      cookies: head.cookies,
      headers: head.headers,
    });
    expect(answer.statusCode).toBe(401);
  });
});
