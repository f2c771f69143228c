import { sql } from "kysely";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test, vi } from "vitest";
import { type LiveBench, SIGN_MS } from "../../../src/school/wire/liveWire";
import { ENGINES, type TestDatabase } from "../support/engines";
import { type BoardEnd, connectBench, openBoard } from "../support/liveEnds";
import { type TestBench, testBench } from "../support/testBench";
import { type Browser, type TestServer, testSchool, testServer } from "../support/testSchool";

/** The next time that a board shows a bench so. */
const shown = async (board: BoardEnd, { deviceId }: TestBench, fits: (bench: LiveBench) => boolean) => {
  await board.events.until(({ benches }) => benches.some((bench) => bench.deviceId === deviceId && fits(bench)));
};

describe.each(ENGINES)("boards of classes on $engine", ({ open }) => {
  let database: TestDatabase;
  let school: TestServer;
  let head: Browser;
  beforeAll(async () => {
    database = await open();
  });
  afterAll(() => database.remove());
  beforeEach(async (context) => {
    // Pings go by hand; what a socket does takes its real time.
    vi.useFakeTimers({ toFake: ["setInterval", "clearInterval"] });
    school = await testServer(database, context.task.name.length);
    await school.server.listen({ port: 0, host: "127.0.0.1" });
    head = await testSchool(school, context.task.name);
  });
  afterEach(async () => {
    await school.server.close();
    vi.useRealTimers();
  });

  test("a board whose beginning fails is cut off, and hears all when it comes again", async () => {
    const bench = await testBench(school, head.schoolId);
    const rename = (from: string, to: string) =>
      sql`alter table ${sql.table(from)} rename to ${sql.table(to)}`.execute(database.query);
    await rename("live_hands", "hands_away");
    await expect(openBoard(school, bench.classId, head)).rejects.toThrow("socket hang up");
    await rename("hands_away", "live_hands");
    const board = await openBoard(school, bench.classId, head);
    expect((await board.events.until(() => true)).isAll).toBe(true);
    board.leave();
  });

  test("a bench that has joined another class leaves the board of the one before", async () => {
    const [bench, { classId }] = [await testBench(school, head.schoolId), await testBench(school, head.schoolId)];
    const [end, board] = [await connectBench(school, bench), await openBoard(school, bench.classId, head)];
    await shown(board, bench, ({ isHere }) => isHere);
    await database.query.updateTable("devices").set({ class_id: classId }).where("id", "=", bench.deviceId).execute();
    vi.advanceTimersByTime(SIGN_MS);
    await end.closed;
    await shown(board, bench, ({ isHere }) => !isHere);
    const again = await connectBench(school, bench);
    const other = await openBoard(school, classId, head);
    await shown(other, bench, ({ isHere }) => isHere);
    for (const one of [board, other, again]) one.leave();
  });

  test("a bench raises no hand for somebody who was erased since it spoke for them", async () => {
    const bench = await testBench(school, head.schoolId);
    const [personId = ""] = bench.people;
    const [end, board] = [await connectBench(school, bench), await openBoard(school, bench.classId, head)];
    const state = { personId, profileId: "three-wheel", exercise: "open", isWaiting: false, unsent: 0 };
    end.tell({ v: 1, kind: "state", state });
    await shown(board, bench, (one) => one.state?.personId === personId);
    await school.server.inject({ method: "POST", url: `/api/people/${personId}/erase`, payload: {}, ...head });
    end.tell({ v: 1, kind: "hand", personId, isRaised: true });
    expect(await end.hears.until(({ kind }) => kind === "refused")).toMatchObject({
      problem: { code: "not-joined-here" },
    });
    const hands = database.query.selectFrom("live_hands").select("person_id").where("device_id", "=", bench.deviceId);
    expect(await hands.execute()).toEqual([]);
    const heard = end.hears.all.length;
    end.tell({ v: 1, kind: "hand", personId, isRaised: false });
    end.tell({ v: 1, kind: "hand", personId, isRaised: true });
    await end.hears.until((one) => end.hears.all.indexOf(one) >= heard && one.kind === "refused");
    expect(end.hears.all.filter(({ kind }) => kind === "refused")).toHaveLength(2);
    for (const one of [end, board]) one.leave();
  });
});
