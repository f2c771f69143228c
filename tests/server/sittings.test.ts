import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { parseSheet } from "../../src/drill/sheet/parseSheet";
import type { SittingRecord } from "../../src/records/sitting/sittingRecord";
import { ChainWalk } from "../../src/school/signing/chain";
import { isSignatureRight } from "../../src/school/signing/receipt";
import { anAttempt } from "../support/logbookRecords";
import { ENGINES, type TestDatabase } from "./support/engines";
import { SAT_SHEET, satAs, sentSitting, sentTriesOf } from "./support/satSitting";
import { outcomesOf, type TestBench, testBench } from "./support/testBench";
import { type Browser, type TestServer, testSchool, testServer } from "./support/testSchool";

const HOUR = 3600 * 1000;

describe.each(ENGINES)("sittings that a server gives out on $engine", ({ open }) => {
  let database: TestDatabase;
  let school: TestServer;
  let head: Browser;
  let bench: TestBench;
  let ada = "";
  let count = 0;
  beforeAll(async () => {
    database = await open();
    school = await testServer(database);
    head = await testSchool(school, "Millbrook");
    bench = await testBench(school, head.schoolId, ["Ada", "Bo", "Cy", "Di"]);
    ada = bench.people[0] ?? "";
  });
  afterAll(async () => {
    await school.server.close();
    await database.remove();
  });

  async function assign(fields: object = {}, sheet: unknown = SAT_SHEET): Promise<string> {
    const from = school.world.now();
    const terms = { kind: "test", from, until: from + HOUR, attempts: 1, people: null, extraTime: [], ...fields };
    const payload = { classId: bench.classId, sheet, ...terms };
    const made = await school.server.inject({ method: "POST", url: "/api/assignments", payload, ...head });
    return made.json().id;
  }
  const asBench = (method: "GET" | "POST", url: string, payload?: object, by: TestBench = bench) =>
    school.server.inject({ method, url: `/api/bench${url}`, cookies: by.cookies, ...(payload && { payload }) });
  const begin = (assignmentId: string, sittingId = `sat-${++count}`, person = ada) =>
    asBench("POST", `/people/${person}/sittings`, { assignmentId, sittingId });
  const stateOf = async (id: string) => (await asBench("GET", `/sittings/${id}`)).json();
  const send = (id: string, record: SittingRecord, person = ada) =>
    outcomesOf(bench.send([sentSitting(id, person, record)], school.world.now()));

  /** Sits what was given, tries sent as they end, and hands the record in. */
  async function sit(assignmentId: string, person = ada, isClean = true) {
    const given = (await begin(assignmentId, undefined, person)).json();
    const record = satAs(given, isClean);
    school.pass(10 * 60_000);
    await asBench("POST", `/sittings/${given.sittingId}/tries`, { tries: sentTriesOf(record) });
    expect(await send(given.sittingId, record, person)).toEqual(["received"]);
    return { given, record };
  }

  test("seed and sheet come when it begins; asked again it is the same sitting and one attempt", async () => {
    const id = await assign();
    const first = await begin(id, "one-id");
    expect(first.json()).toMatchObject({
      seedFrom: "server",
      attempt: 1,
      extraTime: 0,
      sheet: { title: SAT_SHEET.title },
    });
    expect((await begin(id, "one-id")).json()).toEqual(first.json());
    expect((await begin(id)).json().problem.code).toBe("attempts-used");
    const [one] = (await asBench("GET", `/people/${ada}/due`)).json().due.slice(-1);
    expect(one).toMatchObject({ state: "used-up", left: 0, sittings: [{ sittingId: "one-id", receivedAt: null }] });
    const chain = await database.query.selectFrom("chain").selectAll().where("of_id", "=", "one-id").execute();
    expect(chain.map(({ what }) => what)).toEqual(["sitting-begun"]);
  });

  test("two sittings have two seeds; a sheet that sets its own has that", async () => {
    const id = await assign({ attempts: 2 });
    const [one, two] = [(await begin(id)).json(), (await begin(id)).json()];
    expect([one.attempt, two.attempt, one.seed === two.seed]).toEqual([1, 2, false]);
    const own = (await begin(await assign({}, { ...SAT_SHEET, seed: 99 }))).json();
    expect([own.seed, own.seedFrom]).toEqual([99, "sheet"]);
  });

  test("two benches that begin the last attempt at once: one of them begins", async () => {
    const id = await assign();
    const answers = await Promise.all([begin(id), begin(id), begin(id)]);
    expect(answers.map(({ statusCode }) => statusCode).sort()).toEqual([200, 409, 409]);
  });

  test("it begins in its time alone, and for those it is for", async () => {
    const now = school.world.now();
    const later = await assign({ from: now + 1000, until: now + 2000 });
    expect((await begin(later)).json().problem.code).toBe("not-begun-yet");
    school.pass(2000);
    expect((await begin(later)).json().problem.code).toBe("assignment-over");
    const ended = await assign();
    await school.server.inject({ method: "POST", url: `/api/assignments/${ended}/end`, payload: {}, ...head });
    expect((await begin(ended)).json().problem.code).toBe("assignment-over");
    const others = await assign({ people: [bench.people[1]] });
    expect((await begin(others)).json().problem.code).toBe("no-such-thing");
    const elsewhere = await testBench(school, head.schoolId, ["Eve"]);
    const asked = await asBench("POST", `/people/${ada}/sittings`, { assignmentId: others, sittingId: "e" }, elsewhere);
    expect([asked.statusCode, asked.json().problem.code]).toEqual([404, "no-such-thing"]);
  });

  test("extra time is the assignment's, else the roster's, and is in the sheet", async () => {
    const timed = { ...SAT_SHEET, stations: SAT_SHEET.stations.map((one) => ({ ...one, timeLimit_s: 100 })) };
    await database.query
      .updateTable("people")
      .set({ extra_time: 25 })
      .where("id", "=", bench.people[1] ?? "")
      .execute();
    const id = await assign({ extraTime: [{ personId: ada, percent: 50 }] }, timed);
    const limits = async (person?: string) => {
      const given = (await begin(id, undefined, person)).json();
      return [given.extraTime, parseSheet(given.sheet).stations[0]?.timeLimit_s];
    };
    expect(await limits(ada)).toEqual([50, 150]);
    expect(await limits(bench.people[1])).toEqual([25, 125]);
    expect(await limits(bench.people[2])).toEqual([0, 100]);
  });

  test("what was sat is marked again by the server, which keeps its own verdict", async () => {
    const id = await assign({ attempts: 2 });
    const { given } = await sit(id);
    const passed = await stateOf(given.sittingId);
    expect(passed).toMatchObject({ outcome: "passed", right: 1, isLate: false, problems: 0, tries: 4 });
    expect(passed.findings).toEqual({ problems: [], remarks: [] });
    const failed = await sit(id, ada, false);
    expect(await stateOf(failed.given.sittingId)).toMatchObject({ outcome: "failed", attempt: 2, problems: 0 });
  });

  test("an instructor plays the tries again that were sent; another school gets none of them", async () => {
    const { given, record } = await sit(await assign());
    const url = `/api/sittings/${given.sittingId}/motions`;
    const { motions } = (await school.server.inject({ url, cookies: head.cookies })).json();
    expect(motions).toEqual(
      (record.motions ?? []).flatMap((motion, index) => (motion === null ? [] : [{ index, motion }])),
    );
    expect(motions.length).toBeGreaterThan(0);
    const other = await testSchool(school, "Dale of motions");
    expect((await school.server.inject({ url, cookies: other.cookies })).json()).toEqual({ motions: [] });
  });

  test("a try whose turns are in doubt is counted", async () => {
    const given = (await begin(await assign())).json();
    const record = satAs(given);
    const [first, ...rest] = record.tries;
    const doubts = ["gap"];
    school.pass(10 * 60_000);
    const doubtful = { ...record, tries: [{ ...first, doubts }, ...rest] } as SittingRecord;
    expect(await send(given.sittingId, doubtful)).toEqual(["received"]);
    expect(await stateOf(given.sittingId)).toMatchObject({ doubted: 1 });
  });

  test.each<{
    readonly why: string;
    readonly forged: (record: SittingRecord) => Partial<SittingRecord>;
    readonly code: string;
  }>([
    { why: "another seed", forged: ({ seed }) => ({ seed: seed + 1 }), code: "other-seed-than-given" },
    {
      why: "an easier sheet",
      forged: ({ sheet }) => ({ sheet: { ...sheet, order: "blocked", title: "x" } }),
      code: "other-sheet-than-given",
    },
    {
      why: "better marks",
      forged: ({ marking }) => ({ marking: { ...marking, verdict: "fail" } }),
      code: "other-marks",
    },
    { why: "extra time", forged: () => ({ extraTime_percent: 10 }), code: "other-extra-time" },
    {
      why: "a try that was better than when it was sent",
      forged: ({ tries }) => ({ tries: tries.map((one, k) => (k === 2 ? { ...one, time_ms: one.time_ms - 1 } : one)) }),
      code: "try-not-as-sent",
    },
  ])("a record with $why is kept, and shows nothing", async ({ forged, code }) => {
    const given = (await begin(await assign())).json();
    const record = satAs(given);
    school.pass(10 * 60_000);
    await asBench("POST", `/sittings/${given.sittingId}/tries`, { tries: sentTriesOf(record) });
    expect(await send(given.sittingId, { ...record, ...forged(record) })).toEqual(["received"]);
    const state = await stateOf(given.sittingId);
    expect(state.outcome).toBeNull();
    expect(state.findings.problems.map((one: { code: string }) => one.code)).toContain(code);
  });

  test("a bench without a network sends it all after the window: kept, marked, and told as late", async () => {
    const given = (await begin(await assign())).json();
    const record = satAs(given);
    school.pass(2 * HOUR);
    expect(await send(given.sittingId, record)).toEqual(["received"]);
    const state = await stateOf(given.sittingId);
    expect(state).toMatchObject({ outcome: "passed", isLate: true, tries: 0, problems: 0 });
    expect(state.findings.remarks).toMatchObject([
      { code: "sent-late" },
      { code: "tries-with-the-end", values: { count: 4, of: 4 } },
    ]);
  });

  test("tries sent twice are there once; another in their place is refused", async () => {
    const given = (await begin(await assign())).json();
    const url = `/sittings/${given.sittingId}/tries`;
    const tries = sentTriesOf(satAs(given));
    expect((await asBench("POST", url, { tries: tries.slice(0, 2) })).json()).toEqual({ has: [0, 1] });
    expect((await asBench("POST", url, { tries: [...tries.slice(1), ...tries.slice(3)] })).json()).toEqual({
      has: [0, 1, 2, 3],
    });
    const [first] = tries;
    const altered = { ...first, result: { ...first?.result, time_ms: 1 } };
    const refused = await asBench("POST", url, { tries: [altered] });
    expect([refused.statusCode, refused.json().problem.code]).toEqual([409, "try-sent-otherwise"]);
    const elsewhere = await testBench(school, head.schoolId, ["Eve"]);
    expect((await asBench("POST", url, { tries }, elsewhere)).statusCode).toBe(404);
    const rows = await database.query.selectFrom("chain").select("of_id").where("what", "=", "sitting-try").execute();
    expect(rows.filter(({ of_id }) => of_id.startsWith(`${given.sittingId}:`))).toHaveLength(4);
  });

  test("no practice takes the place of a sitting that goes on, to be deleted with what was sent of it", async () => {
    const given = (await begin(await assign())).json();
    const { sittingId } = given;
    const record = satAs(given, false);
    await asBench("POST", `/sittings/${sittingId}/tries`, { tries: sentTriesOf(record) });
    const practice = { kind: "attempts", record: anAttempt(sittingId, { personId: ada }) };
    expect(await outcomesOf(bench.send([practice]))).toEqual(["in-place-of-sitting"]);
    const deleted = await asBench("POST", "/deletions", { records: [sittingId] });
    expect(deleted.json().deletions).toMatchObject([{ outcome: "no-record" }]);
    expect(await stateOf(sittingId)).toMatchObject({ tries: 4 });
    school.pass(10 * 60_000);
    expect(await send(sittingId, record)).toEqual(["received"]);
    expect(await outcomesOf(bench.send([practice]))).toEqual(["in-place-of-sitting"]);
  });

  test("an instructor sees sheets by people, and how hard stations proved", async () => {
    const id = await assign({ attempts: 2 });
    await sit(id, ada, false);
    const best = await sit(id, ada);
    await sit(id, bench.people[1], false);
    await sit(id, bench.people[2]);
    const results = (
      await school.server.inject({ url: `/api/classes/${bench.classId}/results`, cookies: head.cookies })
    ).json();
    const own = results.people.map(({ name, results: all }: { name: string; results: { assignmentId: string }[] }) => [
      name,
      all.find(({ assignmentId }) => assignmentId === id),
    ]);
    expect(own).toMatchObject([
      [
        "Ada",
        { begun: 2, received: 2, best: { sittingId: best.given.sittingId, outcome: "passed" }, latest: { attempt: 2 } },
      ],
      ["Bo", { begun: 1, best: { outcome: "failed" } }],
      ["Cy", { begun: 1, best: { outcome: "passed" } }],
      ["Di", { begun: 0, best: null, latest: null }],
    ]);
    const hard = (
      await school.server.inject({ url: `/api/assignments/${id}/difficulty`, cookies: head.cookies })
    ).json();
    expect(hard).toMatchObject({ people: 3, questions: [] });
    // The first sitting of each counts: two of three missed one of the two tries at the first station.
    expect(hard.stations[0]).toMatchObject({ item: "dial", people: 3 });
    expect(hard.stations[0].share).toBeCloseTo((0.5 + 0.5 + 1) / 3, 12);
  });

  test("a comment is read by the one it is for, once it is new", async () => {
    const { given } = await sit(await assign(), bench.people[1]);
    const url = `/api/sittings/${given.sittingId}/comments`;
    const said = await school.server.inject({
      method: "POST",
      url,
      payload: { text: "Slow down at the last number." },
      ...head,
    });
    expect(said.json().comments).toMatchObject([
      { text: "Slow down at the last number.", readAt: null, by: "Head of Millbrook" },
    ]);
    const unread = async (person?: string) => (await asBench("GET", `/people/${person}/due`)).json().unread;
    expect([await unread(bench.people[1]), await unread(ada)]).toEqual([1, 0]);
    expect((await asBench("GET", `/people/${bench.people[1]}/comments`)).json().comments).toHaveLength(1);
    expect((await asBench("GET", `/people/${ada}/comments`)).json().comments).toEqual([]);
    expect((await asBench("POST", `/people/${bench.people[1]}/comments/read`, {})).statusCode).toBe(204);
    expect(await unread(bench.people[1])).toBe(0);
  });

  test("the signed statement says what the server knows of a sitting that it gave out", async () => {
    const { given } = await sit(await assign());
    const signed = await school.server.inject({ url: `/api/records/${given.sittingId}/signed`, cookies: head.cookies });
    const { receipt } = signed.json();
    expect(receipt.statement.sitting).toMatchObject({
      assignment: { title: SAT_SHEET.title, kind: "test" },
      attempt: 1,
      seedFrom: "server",
      triesBefore: 4,
      isLate: false,
      outcome: "passed",
      problems: [],
    });
    expect(isSignatureRight(receipt)).toBe(true);
    const otherwise = { ...receipt.statement.sitting, outcome: "failed" };
    expect(isSignatureRight({ ...receipt, statement: { ...receipt.statement, sitting: otherwise } })).toBe(false);
  });

  test("whoever is erased leaves nothing of sittings, what never came in too", async () => {
    const di = bench.people[3] ?? "";
    const id = await assign({ attempts: 2, extraTime: [{ personId: di, percent: 10 }] });
    const { given } = await sit(id, di);
    await stateOf(given.sittingId);
    await begin(id, undefined, di);
    await school.server.inject({ method: "POST", url: `/api/people/${di}/erase`, payload: {}, ...head });
    const left = async (table: "begun_sittings" | "assignment_people") =>
      database.query.selectFrom(table).selectAll().where("person_id", "=", di).execute();
    expect([await left("begun_sittings"), await left("assignment_people")]).toEqual([[], []]);
    for (const table of ["sitting_tries", "sitting_judgments"] as const) {
      const rows = await database.query
        .selectFrom(table)
        .selectAll()
        .where("sitting_id", "=", given.sittingId)
        .execute();
      expect(rows).toEqual([]);
    }
  });

  test("a sheet that was begun stays, and the chain holds all of it", async () => {
    const id = await assign();
    await begin(id);
    const from = school.world.now();
    const terms = { version: 1, kind: "test", from, until: from + HOUR, attempts: 2, people: null, extraTime: [] };
    const put = (payload: object) =>
      school.server.inject({ method: "PUT", url: `/api/assignments/${id}`, payload, ...head });
    expect((await put({ ...terms, sheet: { ...SAT_SHEET, title: "Another" } })).json().problem.code).toBe(
      "sheet-in-use",
    );
    expect((await put(terms)).json()).toMatchObject({ version: 2, begun: 1 });
    const walk = new ChainWalk(head.schoolId);
    const chain = await database.query
      .selectFrom("chain")
      .selectAll()
      .where("school_id", "=", head.schoolId)
      .orderBy("place")
      .execute();
    for (const { of_id, ...link } of chain) walk.next({ ...link, ofId: of_id });
    expect(walk.broken).toBeNull();
  });
});
