import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type PostChanges, sentChanges } from "../../src/app/school/sentChanges";
import { Logbook } from "../../src/store/logbook";
import { LogbookDatabase } from "../../src/store/logbookDatabase";
import { deleteRecord } from "../../src/store/moveRecords";
import { nextChanges, toldChanges } from "../../src/store/outbox/changes";
import { joinHere } from "../../src/store/outbox/joinings";
import { nextToSend, settleSent } from "../../src/store/outbox/outbox";
import { anAttempt, emptyHost } from "../support/logbookRecords";
import { ENGINES, type TestDatabase } from "./support/engines";
import { type TestBench, testBench } from "./support/testBench";
import { type Browser, MORNING, type TestServer, testSchool, testServer } from "./support/testSchool";

describe.each(ENGINES)("what a bench changes of records that were sent, on $engine", ({ open }) => {
  let database: TestDatabase;
  let school: TestServer;
  let head: Browser;
  beforeAll(async () => {
    database = await open();
    school = await testServer(database);
    head = await testSchool(school, "Millbrook");
  });
  afterAll(async () => {
    await school.server.close();
    await database.remove();
  });

  /** A bench with its logbook, and the ways to the server. */
  async function aBench(bench: TestBench) {
    const [id = ""] = bench.people;
    const logbook = new Logbook(new LogbookDatabase(`book-${bench.deviceId}`, emptyHost()));
    await logbook.open();
    const shown = {
      school: { id: head.schoolId, name: "Millbrook" },
      class: { id: bench.classId, name: "First years" },
    };
    await joinHere(logbook, { id, name: "Tavro", ...shown, deviceId: bench.deviceId, joinedAt: MORNING });
    const post = async (url: string, payload: object) => {
      const answer = await school.server.inject({ method: "POST", url, cookies: bench.cookies, payload });
      return answer.statusCode === 200
        ? ({ kind: "answered", value: answer.json() } as const)
        : ({ kind: "refused", status: answer.statusCode, problem: answer.json().problem } as const);
    };
    const ways: PostChanges = {
      edits: (edits) => post("/api/bench/edits", { edits }),
      deletions: (records) => post("/api/bench/deletions", { records }),
    };
    const send = async () => {
      const records = await nextToSend(logbook, 200, MORNING);
      await bench.send(records);
      await settleSent(
        logbook,
        records.map(({ record }) => ({ id: record.id, state: "sent" })),
      );
      for (;;) {
        const part = await nextChanges(logbook, 200, MORNING);
        if (part === null) return;
        expect((await sentChanges(logbook, part, ways)).kind).toBe("answered");
      }
    };
    const save = (recordId: string, other: Parameters<typeof anAttempt>[1] = {}) =>
      logbook.save({ kind: "attempts", record: anAttempt(recordId, { personId: id, ...other }) });
    const atServer = async () => {
      const answer = await school.server.inject({
        url: `/api/people/${id}/export/logbook`,
        cookies: head.cookies,
      });
      return answer.json().attempts as readonly { id: string; note?: string; tags: string[] }[];
    };
    return { logbook, send, save, atServer };
  }

  test("comes there: notes, tags, and what is deleted", async () => {
    const { logbook, send, save, atServer } = await aBench(await testBench(school, head.schoolId));
    await save("noted");
    await save("gone");
    await send();
    expect(await atServer()).toHaveLength(2);
    await save("noted", { note: "light grip", tags: ["retake"], updatedAt: MORNING });
    await deleteRecord(logbook, "attempts", "gone");
    await send();
    expect(await atServer()).toMatchObject([{ id: "noted", note: "light grip", tags: ["retake"] }]);
    await save("noted", { note: "", tags: [], updatedAt: MORNING + 1 });
    await send();
    expect(await atServer()).toMatchObject([{ id: "noted", note: "", tags: [] }]);
    expect(await toldChanges(logbook)).toEqual([]);
  });

  test("at two benches at once: the later one holds at both, and the other is told", async () => {
    const bench = await testBench(school, head.schoolId);
    const [one, two] = [await aBench(bench), await aBench(bench)];
    await one.save("shared");
    await one.send();
    await two.save("shared");
    await two.send();
    await one.save("shared", { note: "later", updatedAt: MORNING - 10 });
    await two.save("shared", { note: "earlier", updatedAt: MORNING - 20 });
    await one.send();
    await two.send();
    expect(await one.atServer()).toMatchObject([{ note: "later" }]);
    expect((await two.logbook.database?.attempts.get("shared"))?.note).toBe("later");
    expect(await toldChanges(two.logbook)).toMatchObject([{ overruled: { note: "earlier" } }]);
    expect(await toldChanges(one.logbook)).toEqual([]);
  });

  test("is kept where it is of a sitting", async () => {
    const { logbook, send, save, atServer } = await aBench(await testBench(school, head.schoolId));
    await save("test:0", { sittingId: "test" });
    await send();
    await deleteRecord(logbook, "attempts", "test:0");
    await send();
    expect(await atServer()).toHaveLength(1);
    expect(await toldChanges(logbook)).toMatchObject([{ id: "test:0" }]);
  });
});
