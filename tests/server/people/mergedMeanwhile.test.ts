import { connect } from "node:net";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { runCommand } from "../../../src/server/backup/commands";
import { anAttempt } from "../../support/logbookRecords";
import { type Asking, asking, benchCookies, outcome, testClass } from "../support/asking";
import { ENGINES, type TestDatabase } from "../support/engines";
import { MORNING, type TestServer, testSchool, testServer } from "../support/testSchool";

const ATTEMPTS = 6;
const ROUNDS = [0, 1, 2, 3];

describe.each(ENGINES)("at one moment, on $engine", ({ open }) => {
  let database: TestDatabase;
  let school: TestServer;
  let head: Asking;
  let anyone: Asking;
  beforeAll(async () => {
    database = await open();
    school = await testServer(database);
    head = asking(school, await testSchool(school, "hill"));
    anyone = asking(school);
  });
  afterAll(async () => {
    const { isWell, lines } = await runCommand({ verb: "check" }, database, school.world.keys, MORNING);
    expect(isWell, lines.join("\n")).toBe(true);
    await school.server.close();
    await database.remove();
  });

  async function seated(code: string, name: string) {
    const joined = await anyone.post("/api/join", { code, name, bench: `Bench of ${name}` });
    const { id } = joined.json().person as { id: string };
    const bench = asking(school, benchCookies(joined));
    const send = (recordId: string) => {
      const record = anAttempt(recordId, { personId: id });
      return bench.post("/api/bench/records", { sentAt: MORNING, records: [{ kind: "attempts", record }] });
    };
    return { id, bench, send };
  }
  const shown = async (id: string) =>
    ((await head.get(`/api/people/${id}/export/logbook`)).json().attempts as { id: string }[]).map((one) => one.id);

  test.each(ROUNDS)("two become one while both send: every record that was taken is shown once (%i)", async (round) => {
    const { classId, code } = await testClass(head);
    const [one, other] = [await seated(code, "Mibsy"), await seated(code, "Mibsy Rowe")];
    const sent = [one, other].flatMap(({ send }, k) =>
      Array.from({ length: ATTEMPTS }, (_, n) => ({ id: `${classId}-${k}-${n}`, send })),
    );
    const merge = () => head.post(`/api/people/${one.id}/merge`, { into: other.id });
    const sending = sent.map(({ id, send }, k) => Promise.all([send(id), k === 2 * round ? merge() : null]));
    const answers = await Promise.all(sending);
    expect(answers.map(([answer]) => answer.json().receipts[0].outcome)).toEqual(sent.map(() => "received"));
    expect(answers.flatMap(([, merged]) => (merged === null ? [] : [outcome(merged)]))).toEqual(["200"]);
    expect((await shown(other.id)).toSorted()).toEqual(sent.map(({ id }) => id).toSorted());
    const left = await database.query.selectFrom("records").select("id").where("person_id", "=", one.id).execute();
    expect(left).toEqual([]);
    const { rows } = (await head.get(`/api/classes/${classId}/desk`)).json();
    expect(rows).toMatchObject([{ person: { id: other.id }, cells: [{ attempts: sent.length }] }]);
    // Sent again, since the answers were lost: known, and still there once.
    const again = await Promise.all(sent.map(({ id, send }) => send(id)));
    expect(again.map((answer) => answer.json().receipts[0].outcome)).toEqual(sent.map(() => "known"));
    expect(await shown(other.id)).toHaveLength(sent.length);
  });

  test.each(ROUNDS)("a card is shown while its person becomes another entry: one of the two holds (%i)", async () => {
    const { classId, code } = await testClass(head);
    const [one, other] = [await seated(code, "Mibsy"), await seated(code, "Mibsy Rowe")];
    const { cards } = (await head.post(`/api/classes/${classId}/cards`, { personIds: [one.id] })).json();
    const [joined, merged] = await Promise.all([
      anyone.post("/api/join/card", { token: cards[0].token, pin: "4711", bench: "Bench 3" }),
      head.post(`/api/people/${one.id}/merge`, { into: other.id }),
    ]);
    expect(outcome(merged)).toBe("200");
    expect(["200", "410 card-not-valid"]).toContain(outcome(joined));
    const [{ pin_hash } = { pin_hash: "" }] = await database.query
      .selectFrom("people")
      .select("pin_hash")
      .where("id", "=", one.id)
      .execute();
    expect(pin_hash).toBeNull();
  });

  test.each(ROUNDS)("whoever is taken out of a class while they join sits at no bench of it (%i)", async (round) => {
    const { classId, code } = await testClass(head);
    const { id } = await seated(code, "Quillon");
    const { cards } = (await head.post(`/api/classes/${classId}/cards`, { personIds: [id] })).json();
    const byCard = () => anyone.post("/api/join/card", { token: cards[0].token, pin: "4711", bench: "Bench 3" });
    const byCode = () => anyone.post("/api/join", { code, name: "Quillon", bench: "Bench 3" });
    const [joined, left] = await Promise.all([
      round % 2 === 0 ? byCard() : byCode(),
      head.post(`/api/classes/${classId}/people/${id}/leave`),
    ]);
    expect(outcome(left)).toBe("204");
    expect(["200", "410 card-not-valid"]).toContain(outcome(joined));
    const { devices } = (await head.get(`/api/classes/${classId}/devices`)).json();
    const sitting = devices.flatMap(({ people }: { people: { id: string }[] }) => people.map((person) => person.id));
    expect(sitting).not.toContain(id);
  });

  test("a bench whose network goes between commit and answer asks again: one row", async () => {
    const { code } = await testClass(head);
    const joined = await anyone.post("/api/join", { code, name: "Tavro", bench: "Bench 1" });
    const personId = joined.json().person.id as string;
    const record = anAttempt(`cut-${personId}`, { personId });
    const body = JSON.stringify({ sentAt: MORNING, records: [{ kind: "attempts", record }] });
    const [cookie = ""] = Object.entries(benchCookies(joined).cookies ?? {}).map((pair) => pair.join("="));
    const address = new URL(await school.server.listen({ host: "127.0.0.1", port: 0 }));
    const rows = () => database.query.selectFrom("records").select("id").where("id", "=", record.id).execute();
    const socket = connect(Number(address.port), address.hostname);
    // Nothing of the answer is ever read.
    socket.pause();
    const lines = [
      "POST /api/bench/records HTTP/1.1",
      `host: ${address.host}`,
      `cookie: ${cookie}`,
      "content-type: application/json",
      `content-length: ${Buffer.byteLength(body)}`,
    ];
    socket.write(`${lines.join("\r\n")}\r\n\r\n${body}`);
    while ((await rows()).length === 0) await new Promise((resolve) => setImmediate(resolve));
    socket.destroy();
    const again = await fetch(`${address.origin}/api/bench/records`, {
      method: "POST",
      headers: { cookie, "content-type": "application/json" },
      body,
    });
    expect(await again.json()).toMatchObject({ receipts: [{ id: record.id, outcome: "known" }] });
    expect(await rows()).toHaveLength(1);
  });
});
