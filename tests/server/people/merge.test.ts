import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { canonicalJson } from "../../../src/drill/canonicalJson";
import { runCommand } from "../../../src/server/backup/commands";
import { anAttempt } from "../../support/logbookRecords";
import { type Asking, asking, benchCookies, outcome, testClass } from "../support/asking";
import { ENGINES, type TestDatabase } from "../support/engines";
import { SAT_SHEET } from "../support/satSitting";
import { MORNING, type TestServer, testSchool, testServer } from "../support/testSchool";

describe.each(ENGINES)("two entries of one person on $engine", ({ open }) => {
  let database: TestDatabase;
  let school: TestServer;
  let head: Asking;
  beforeAll(async () => {
    database = await open();
    school = await testServer(database);
    head = asking(school, await testSchool(school, "hill"));
  });
  afterAll(async () => {
    const { isWell, lines } = await runCommand({ verb: "check" }, database, school.world.keys, MORNING);
    expect(isWell, lines.join("\n")).toBe(true);
    await school.server.close();
    await database.remove();
  });

  const anyone = () => asking(school);
  const merge = (from: string, into: string, who = head) => who.post(`/api/people/${from}/merge`, { into });
  const attempts = async (id: string) =>
    (await head.get(`/api/people/${id}/export/logbook`)).json().attempts as { id: string; personId: string }[];

  /** Two names of one class, each at a bench of its own, each with an attempt. */
  async function twoNames() {
    const { classId, code } = await testClass(head);
    const at = async (name: string) => {
      const joined = await anyone().post("/api/join", { code, name, bench: `Bench of ${name}` });
      const { id } = joined.json().person;
      const bench = asking(school, benchCookies(joined));
      const send = (recordId: string) => {
        const record = anAttempt(recordId, { personId: id });
        return bench.post("/api/bench/records", { sentAt: MORNING, records: [{ kind: "attempts", record }] });
      };
      await send(`${classId}-${name.replace(" ", ".")}`);
      return { id: id as string, bench, send };
    };
    return { classId, code, one: await at("Mibsy"), other: await at("Mibsy Rowe") };
  }

  test("become one: records are shown under the one who stays, as they were sent", async () => {
    const { classId, one, other } = await twoNames();
    const rows = async () => {
      const query = database.query.selectFrom("records").select(["id", "sha256", "body", "place"]);
      return query.where("id", "like", `${classId}%`).orderBy("id").execute();
    };
    const before = await rows();
    expect((await merge(one.id, other.id)).json()).toEqual({ records: 1 });
    expect(await rows()).toEqual(before);
    const shown = await attempts(other.id);
    expect(shown.map(({ personId }) => personId)).toEqual([other.id, other.id]);
    const desk = (await head.get(`/api/classes/${classId}/desk`)).json();
    expect(desk.rows).toMatchObject([{ person: { id: other.id, name: "Mibsy Rowe" }, cells: [{ attempts: 2 }] }]);
    expect(outcome(await head.get(`/api/people/${one.id}/export/logbook`))).toBe("404 no-such-thing");
  });

  test("the bench of the one who went goes on, under the other name", async () => {
    const { classId, one, other } = await twoNames();
    await merge(one.id, other.id);
    expect((await one.bench.get("/api/bench")).json().people).toEqual([{ id: one.id, name: "Mibsy Rowe" }]);
    expect((await one.send(`${classId}-later`)).json().receipts).toMatchObject([{ outcome: "received" }]);
    expect((await one.send(`${classId}-later`)).json().receipts).toMatchObject([{ outcome: "known" }]);
    expect(await attempts(other.id)).toHaveLength(3);
    const edits = [{ recordId: `${classId}-Mibsy`, base: 0, note: "mine", at: 1 }];
    expect((await one.bench.post("/api/bench/edits", { edits })).json().edits).toMatchObject([{ outcome: "taken" }]);
    const records = [`${classId}-later`];
    expect((await one.bench.post("/api/bench/deletions", { records })).json().deletions).toMatchObject([
      { outcome: "deleted" },
    ]);
    expect(outcome(await one.bench.get(`/api/bench/people/${one.id}/due`))).toBe("200");
    await head.post(`/api/people/${other.id}`, { version: 1, name: "Mibsy R." });
    expect((await one.bench.get("/api/bench")).json().people).toMatchObject([{ name: "Mibsy R." }]);
  });

  test("the roster and the school have the person once, and whoever joins by the old name is new", async () => {
    const { classId, code, one, other } = await twoNames();
    await merge(one.id, other.id);
    const { people } = (await head.get(`/api/classes/${classId}/people`)).json();
    expect(people.map(({ id }: { id: string }) => id)).toEqual([other.id]);
    const everybody = (await head.get("/api/people")).json().people.map(({ id }: { id: string }) => id);
    expect(everybody).toContain(other.id);
    expect(everybody).not.toContain(one.id);
    const joined = await anyone().post("/api/join", { code, name: "Mibsy", bench: "Bench 3" });
    expect(joined.json().person.id).not.toBe(one.id);
  });

  test("erasing the one who stays leaves nothing of the other", async () => {
    const { classId, one, other } = await twoNames();
    await merge(one.id, other.id);
    expect((await head.post(`/api/people/${other.id}/erase`)).json()).toMatchObject({ records: 2 });
    const names = await database.query
      .selectFrom("people")
      .select("name")
      .where("id", "in", [one.id, other.id])
      .execute();
    expect(canonicalJson(names)).not.toContain("Mibsy");
    expect((await one.send(`${classId}-late`)).json().receipts).toMatchObject([{ outcome: "erased" }]);
  });

  test("attempts at one sheet that both began count on, and none is lost", async () => {
    const { classId, one, other } = await twoNames();
    const terms = { kind: "test", from: MORNING, until: MORNING + 3_600_000, attempts: 3, people: null, extraTime: [] };
    const made = await head.post("/api/assignments", { classId, sheet: SAT_SHEET, ...terms });
    const assignmentId = made.json().id;
    const begin = ({ id, bench }: typeof one, sittingId: string) =>
      bench.post(`/api/bench/people/${id}/sittings`, { assignmentId, sittingId });
    for (const who of [one, other]) expect(outcome(await begin(who, `of-${who.id}`))).toBe("200");
    expect(outcome(await merge(one.id, other.id))).toBe("200");
    const attemptOf = async (id: string) => (await head.get(`/api/sittings/of-${id}`)).json().attempt;
    expect([await attemptOf(other.id), await attemptOf(one.id)]).toEqual([1, 2]);
    expect((await begin(one, "third")).json()).toMatchObject({ attempt: 3 });
    expect(outcome(await begin(other, "fourth"))).toBe("409 attempts-used");
  });

  test("a card of the one who went is good no more, and no bench is told that it was lost", async () => {
    const { classId, one, other } = await twoNames();
    const { cards } = (await head.post(`/api/classes/${classId}/cards`, { personIds: [one.id] })).json();
    school.pass(1000);
    await merge(one.id, other.id);
    expect((await one.bench.get("/api/bench")).json().people).toEqual([{ id: one.id, name: "Mibsy Rowe" }]);
    const byCard = await anyone().post("/api/join/card", { token: cards[0].token, bench: "Bench 5" });
    expect(outcome(byCard)).toBe("410 card-not-valid");
  });

  test("one after another: who was merged before follows", async () => {
    const { code, one, other } = await twoNames();
    const third = (await anyone().post("/api/join", { code, name: "M. Rowe", bench: "Bench 4" })).json().person.id;
    await merge(one.id, other.id);
    await merge(other.id, third);
    expect(await attempts(third)).toHaveLength(2);
    expect((await one.bench.get("/api/bench")).json().people).toEqual([{ id: one.id, name: "M. Rowe" }]);
  });

  test("nobody is merged into nobody, into themselves, twice, or into somebody of another school", async () => {
    const { one, other } = await twoNames();
    const elsewhere = asking(school, await testSchool(school, "vale"));
    expect(outcome(await merge(one.id, one.id))).toBe("404 no-such-thing");
    expect(outcome(await merge(one.id, "none"))).toBe("404 no-such-thing");
    expect(outcome(await merge(one.id, other.id, elsewhere))).toBe("404 no-such-thing");
    expect(outcome(await merge(one.id, other.id))).toBe("200");
    expect(outcome(await merge(one.id, other.id))).toBe("404 no-such-thing");
    expect(outcome(await merge(other.id, one.id))).toBe("404 no-such-thing");
  });
});
