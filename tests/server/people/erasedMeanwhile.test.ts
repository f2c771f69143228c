import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { runCommand } from "../../../src/server/backup/commands";
import { anAttempt } from "../../support/logbookRecords";
import { type Asking, asking, benchCookies, outcome, testClass } from "../support/asking";
import { ENGINES, type TestDatabase } from "../support/engines";
import { SAT_SHEET, satAs, sentSitting, sentTriesOf } from "../support/satSitting";
import { MORNING, type TestServer, testSchool, testServer } from "../support/testSchool";

type Answer = Awaited<ReturnType<Asking["get"]>>;

/** Turns of the event loop by which the second of two requests comes later: other steps of the first are under way each time. */
const LAGS = [0, 1, 3, 8, 20];

async function turns(count: number): Promise<void> {
  for (let k = 0; k < count; k++) await new Promise((resolve) => setImmediate(resolve));
}

/** Asks for two things at once, the second a little later. */
async function both(lag: number, first: () => Promise<Answer>, second: () => Promise<Answer>) {
  const other = turns(lag).then(second);
  const answers = [await first(), await other] as const;
  for (const { statusCode, body } of answers) expect(statusCode, body).toBeLessThan(500);
  return answers;
}

/** Tables with a column of the person in which nothing of somebody erased may be. */
const TABLES = [
  "records",
  "class_people",
  "cards",
  "assignment_people",
  "begun_sittings",
  "comments",
  "skill_summaries",
  "live_hands",
];

describe.each(ENGINES)("somebody is erased meanwhile, on $engine", ({ open }) => {
  let database: TestDatabase;
  let school: TestServer;
  let head: Asking;
  let schoolId = "";
  let anyone: Asking;
  beforeAll(async () => {
    database = await open();
    school = await testServer(database);
    const browser = await testSchool(school, "hill");
    head = asking(school, browser);
    schoolId = browser.schoolId;
    anyone = asking(school);
  });
  afterAll(async () => {
    const { isWell, lines } = await runCommand({ verb: "check" }, database, school.world.keys, MORNING);
    expect(isWell, lines.join("\n")).toBe(true);
    await school.server.close();
    await database.remove();
  });

  const erase = (id: string) => head.post(`/api/people/${id}/erase`);

  /** Somebody at a bench of a class, with a card. */
  async function seated(name = "Quillon") {
    const { classId, code } = await testClass(head);
    const joined = await anyone.post("/api/join", { code, name, bench: "Bench 1" });
    const { id } = joined.json().person as { id: string };
    const { cards } = (await head.post(`/api/classes/${classId}/cards`, { personIds: [id] })).json();
    return { classId, code, id, token: cards[0].token as string, bench: asking(school, benchCookies(joined)) };
  }

  const terms = {
    kind: "test",
    from: MORNING,
    until: MORNING + 3_600_000,
    attempts: null,
    people: null,
    extraTime: [],
  };
  const assign = async (classId: string, more: object = {}) =>
    head.post("/api/assignments", { classId, sheet: SAT_SHEET, ...terms, ...more });

  /** Somebody with a sitting that has begun. */
  async function sitting() {
    const one = await seated();
    const assignmentId = (await assign(one.classId)).json().id as string;
    const sittingId = `sat-${one.id}`;
    const given = await one.bench.post(`/api/bench/people/${one.id}/sittings`, { assignmentId, sittingId });
    return { ...one, assignmentId, sittingId, record: satAs(given.json()) };
  }

  /** Nothing of somebody is stored but that there was a person, now without a name. */
  async function isGone(id: string) {
    const person = await database.query.selectFrom("people").selectAll().where("id", "=", id).executeTakeFirstOrThrow();
    expect([person.name, person.pin_hash, person.erased_at]).toEqual(["Erased person", null, school.world.now()]);
    for (const table of TABLES as readonly "records"[]) {
      expect(
        await database.query.selectFrom(table).select("person_id").where("person_id", "=", id).execute(),
        table,
      ).toEqual([]);
    }
    for (const table of ["sitting_tries", "sitting_judgments"] as const) {
      const rows = await database.query
        .selectFrom(table)
        .select("sitting_id")
        .where("sitting_id", "=", `sat-${id}`)
        .execute();
      expect(rows, table).toEqual([]);
    }
  }

  describe.each(LAGS)("%i turns later", (lag) => {
    test("who joins with a card and a first PIN leaves no PIN behind, and nobody else's name is answered", async () => {
      const { id, token, bench, code } = await seated();
      await bench.post("/api/join", { code, name: "Other", bench: "Bench 1" });
      const [joined, erased] = await both(
        lag,
        () => bench.post("/api/join/card", { token, pin: "4711", bench: "Bench 1" }),
        () => erase(id),
      );
      expect(outcome(erased)).toBe("200");
      expect(["200", "410 card-not-valid"]).toContain(outcome(joined));
      if (joined.statusCode === 200) expect(joined.json().person).toEqual({ id, name: "Quillon" });
      await isGone(id);
    });

    test("who joins with a code and a first PIN is the same person before, and a new one after", async () => {
      const { id, code } = await seated();
      const [joined, erased] = await both(
        lag,
        () => anyone.post("/api/join", { code, name: "Quillon", pin: "4711", bench: "Bench 2" }),
        () => erase(id),
      );
      expect([outcome(joined), outcome(erased)]).toEqual(["200", "200"]);
      expect(joined.json().person.name).toBe("Quillon");
      await isGone(id);
    });

    test("no card is made for nobody", async () => {
      const { id, classId } = await seated();
      const [made] = await both(
        lag,
        () => head.post(`/api/classes/${classId}/cards`, { personIds: [id] }),
        () => erase(id),
      );
      expect(["200", "404 no-such-thing"]).toContain(outcome(made));
      await isGone(id);
    });

    test("nobody is put on another roster", async () => {
      const { id } = await seated();
      const other = await testClass(head);
      const add = { name: "Quillon", personId: id };
      const [added] = await both(
        lag,
        () => head.post(`/api/classes/${other.classId}/people`, add),
        () => erase(id),
      );
      expect(["200", "404 no-such-thing"]).toContain(outcome(added));
      await isGone(id);
    });

    test("a sheet is not set to nobody", async () => {
      const { id, classId } = await seated();
      const [made] = await both(
        lag,
        () => assign(classId, { people: [id] }),
        () => erase(id),
      );
      expect(["200", "404 no-such-thing"]).toContain(outcome(made));
      await isGone(id);
    });

    test("tries that come late, a comment, and marks leave nothing", async () => {
      const { id, bench, sittingId, record } = await sitting();
      const tries = () => bench.post(`/api/bench/sittings/${sittingId}/tries`, { tries: sentTriesOf(record) });
      const [kept] = await both(lag, tries, () => erase(id));
      expect(["200", "404 no-such-thing"]).toContain(outcome(kept));
      await isGone(id);

      const other = await sitting();
      const say = () => head.post(`/api/sittings/${other.sittingId}/comments`, { text: "Slower." });
      const [said] = await both(lag, say, () => erase(other.id));
      expect(["200", "404 no-such-thing"]).toContain(outcome(said));
      await isGone(other.id);

      const third = await sitting();
      await third.bench.post("/api/bench/records", {
        sentAt: MORNING,
        records: [sentSitting(third.sittingId, third.id, third.record)],
      });
      await both(
        lag,
        () => head.get(`/api/classes/${third.classId}/results`),
        () => erase(third.id),
      );
      await isGone(third.id);
    });

    test("a sitting that begins, and records that come, are taken before and refused after", async () => {
      const { id, bench, assignmentId } = await sitting();
      const begin = () => bench.post(`/api/bench/people/${id}/sittings`, { assignmentId, sittingId: `other-${id}` });
      const [begun] = await both(lag, begin, () => erase(id));
      expect(["200", "404 no-such-thing"]).toContain(outcome(begun));
      await isGone(id);

      const other = await seated();
      const record = anAttempt(`of-${other.id}`, { personId: other.id, note: "a secret note" });
      const send = () =>
        other.bench.post("/api/bench/records", { sentAt: MORNING, records: [{ kind: "attempts", record }] });
      const [sent] = await both(lag, send, () => erase(other.id));
      expect(["received", "erased"]).toContain(sent.json().receipts[0].outcome);
      expect((await send()).json().receipts[0].outcome).toBe("erased");
      await isGone(other.id);
    });
  });

  test("the bench of somebody who was erased sends on: nothing of it is stored", async () => {
    const { id, code, classId, bench, sittingId, assignmentId, record } = await sitting();
    const post = async (url: string, body: object) => outcome(await bench.post(`/api/bench${url}`, body));
    const attempt = (name: string, note: string) => ({
      kind: "attempts",
      record: anAttempt(name, { personId: id, note }),
    });
    await bench.post("/api/bench/records", { sentAt: MORNING, records: [attempt(`early-${id}`, "x")] });
    const { deviceId } = (await bench.get("/api/bench")).json();
    const hand = { school_id: schoolId, class_id: classId, device_id: deviceId, person_id: id, raised_at: MORNING };
    await database.query.insertInto("live_hands").values(hand).execute();
    await erase(id);
    const seats = await database.query
      .selectFrom("device_people")
      .select("left_at")
      .where("person_id", "=", id)
      .execute();
    expect(seats).toEqual([{ left_at: school.world.now() }]);
    const records = [
      attempt(`early-${id}`, "x"),
      attempt(`late-${id}`, "a secret"),
      sentSitting(sittingId, id, record),
    ];
    const sent = await bench.post("/api/bench/records", { sentAt: MORNING, records });
    expect(sent.json().receipts.map((one: { outcome: string }) => one.outcome)).toEqual(["erased", "erased", "erased"]);
    const edits = [{ recordId: `early-${id}`, base: 0, note: "a secret", at: 1 }];
    expect((await bench.post("/api/bench/edits", { edits })).json().edits).toMatchObject([{ outcome: "no-record" }]);
    const deletions = await bench.post("/api/bench/deletions", { records: [`early-${id}`] });
    expect(deletions.json().deletions).toMatchObject([{ outcome: "no-record" }]);
    expect(await post(`/sittings/${sittingId}/tries`, { tries: sentTriesOf(record) })).toBe("404 no-such-thing");
    expect(await post(`/people/${id}/sittings`, { assignmentId, sittingId: "new" })).toBe("404 no-such-thing");
    expect(outcome(await bench.get(`/api/bench/people/${id}/due`))).toBe("404 no-such-thing");
    expect(outcome(await bench.get("/api/bench"))).toBe("409 nobody-joined");
    await isGone(id);
    const again = await bench.post("/api/join", { code, name: "Quillon", bench: "Bench 1" });
    expect(again.json().person.id).not.toBe(id);
    expect(again.json().people).toHaveLength(1);
  });
});
