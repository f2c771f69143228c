import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { toBase64 } from "../../../src/records/motion/base64";
import { boardAfter, type LiveBoard } from "../../../src/school/live/liveBoard";
import { type BenchTelling, boardEvent, type LiveBench, TELLING_LIMITS } from "../../../src/school/wire/liveWire";
import { SHORT_TRACE } from "../../support/logbookRecords";
import { ENGINES, type TestDatabase } from "../support/engines";
import { type BoardEnd, connectBench, openBoard, strangerStatus } from "../support/liveEnds";
import { type TestBench, testBench } from "../support/testBench";
import { type Browser, type TestServer, testSchool, testServer } from "../support/testSchool";

const state = (personId: string, other = {}): BenchTelling => ({
  v: 1,
  kind: "state",
  state: { personId, profileId: "three-wheel", exercise: "open", isWaiting: false, unsent: 0, ...other },
});

const growing = (id: string): BenchTelling => ({
  v: 1,
  kind: "attempt",
  attempt: {
    id,
    startedAt: 5,
    profileId: "three-wheel",
    combination: [10, 20, 30],
    motion: toBase64(SHORT_TRACE),
  },
});

/** The next time that a board shows a bench so. */
const shown = async (board: BoardEnd, { deviceId }: TestBench, fits: (bench: LiveBench) => boolean) => {
  const isIt = (bench: LiveBench) => bench.deviceId === deviceId && fits(bench);
  const event = await board.events.until(({ benches }) => benches.some(isIt));
  return { event, bench: event.benches.find(isIt) as LiveBench };
};

describe.each(ENGINES)("benches live on $engine", ({ engine, open }) => {
  let database: TestDatabase;
  let school: TestServer;
  let head: Browser;
  const servers: TestServer[] = [];
  const another = async (seed: number) => {
    const made = await testServer(database, seed);
    servers.push(made);
    await made.server.listen({ port: 0, host: "127.0.0.1" });
    return made;
  };
  beforeAll(async () => {
    database = await open();
    school = await another(1);
    head = await testSchool(school, "Millbrook");
  });
  afterAll(async () => {
    for (const { server } of servers) await server.close();
    await database.remove();
  });

  test("a board hears all benches at first, then what each tells, gathered", async () => {
    const bench = await testBench(school, head.schoolId);
    const [personId = ""] = bench.people;
    const end = await connectBench(school, bench);
    await end.hears.until(({ kind }) => kind === "hand");
    const board = await openBoard(school, bench.classId, head);
    const first = await board.events.until(() => true);
    expect(first.isAll).toBe(true);
    expect(first.benches.map(({ deviceId, isHere }) => [deviceId, isHere])).toEqual([[bench.deviceId, true]]);
    for (let at = 1; at <= 10; at++) end.tell(state(personId, { leg: { at, of: 10 } }));
    const { event } = await shown(board, bench, (one) => one.state?.leg?.at === 10);
    const { id: _, ...sent } = event;
    expect(boardEvent.parse(sent)).toEqual(sent);
    // Ten messages at once are far less than ten events.
    expect(board.events.all.length).toBeLessThan(5);
    end.leave();
    expect((await shown(board, bench, ({ isHere }) => !isHere)).bench.state?.personId).toBe(personId);
    const now = board.events.all.reduce<LiveBoard>(boardAfter, new Map());
    expect([...now.values()].map(({ deviceId, isHere }) => [deviceId, isHere])).toEqual([[bench.deviceId, false]]);
    board.leave();
  });

  test("a board that comes again hears what has changed since, and only that", async () => {
    const bench = await testBench(school, head.schoolId);
    const end = await connectBench(school, bench);
    end.tell(state(bench.people[0] ?? "", { unsent: 1 }));
    const board = await openBoard(school, bench.classId, head);
    const { event } = await shown(board, bench, (one) => one.state?.unsent === 1);
    board.leave();
    end.tell(state(bench.people[0] ?? "", { unsent: 2 }));
    const again = await openBoard(school, bench.classId, head, event.id);
    await shown(again, bench, (one) => one.state?.unsent === 2);
    expect(again.events.all.every(({ isAll }) => !isAll)).toBe(true);
    const fresh = await openBoard(school, bench.classId, head, "another-server:3");
    expect((await fresh.events.until(() => true)).isAll).toBe(true);
    for (const one of [again, fresh]) one.leave();
    end.leave();
  });

  test("a raised hand stays up, bench gone or not, until the bench or an instructor lowers it", async () => {
    const bench = await testBench(school, head.schoolId);
    const [personId = ""] = bench.people;
    const end = await connectBench(school, bench);
    end.tell({ v: 1, kind: "hand", personId, isRaised: true });
    await end.hears.until((one) => one.kind === "hand" && one.isRaised);
    end.leave();
    await end.closed;
    const board = await openBoard(school, bench.classId, head);
    await shown(board, bench, ({ hand }) => hand?.personId === personId);
    const back = await connectBench(school, bench);
    await back.hears.until((one) => one.kind === "hand" && one.isRaised);
    const lowered = await school.server.inject({
      method: "POST",
      url: `/api/classes/${bench.classId}/live/${bench.deviceId}/lower-hand`,
      cookies: head.cookies,
      headers: head.headers,
    });
    expect(lowered.statusCode).toBe(204);
    await back.hears.until((one) => one.kind === "hand" && !one.isRaised);
    await shown(board, bench, ({ hand, isHere }) => hand === null && isHere);
    back.tell({ v: 1, kind: "hand", personId, isRaised: true });
    await shown(board, bench, ({ hand, isHere }) => hand !== null && isHere);
    back.tell({ v: 1, kind: "hand", personId, isRaised: false });
    const rows = () => database.query.selectFrom("live_hands").selectAll().execute();
    await back.hears.until(() => back.hears.all.filter((one) => one.kind === "hand" && !one.isRaised).length === 2);
    expect(await rows()).toEqual([]);
    board.leave();
    back.leave();
  });

  test("the attempt that grows is asked for by itself, ends when nobody works on, and is taken back", async () => {
    const bench = await testBench(school, head.schoolId);
    const end = await connectBench(school, bench);
    const board = await openBoard(school, bench.classId, head);
    end.tell(state(bench.people[0] ?? ""));
    end.tell(growing("growing"));
    await shown(board, bench, ({ attempt }) => attempt?.id === "growing");
    const ask = () =>
      school.server.inject({
        url: `/api/classes/${bench.classId}/live/${bench.deviceId}/attempt`,
        cookies: head.cookies,
      });
    expect({ v: 1, kind: "attempt", ...(await ask()).json() }).toEqual(growing("growing"));
    end.tell(state(bench.people[0] ?? "", { isWaiting: true }));
    await shown(board, bench, ({ state: now }) => now?.isWaiting === true);
    // It stays to be seen again, until its bench takes it back.
    expect(board.events.all.at(-1)?.benches[0]?.attempt?.hasEnded).toBe(true);
    expect((await ask()).json().attempt).toMatchObject({ id: "growing" });
    end.tell({ v: 1, kind: "attempt", attempt: null });
    await shown(board, bench, ({ attempt, state: now }) => now?.isWaiting === true && attempt === null);
    expect((await ask()).json()).toEqual({ attempt: null });
    board.leave();
    end.leave();
  });

  test.each([
    { why: "no JSON", sent: "{", code: "invalid" },
    { why: "another version", sent: '{"v":2,"kind":"hand","isRaised":true}', code: "invalid" },
    {
      why: "a field that does not belong there",
      sent: JSON.stringify({ ...state("x"), more: 1 }),
      code: "unknown-field",
    },
    { why: "somebody who never joined there", sent: JSON.stringify(state("stranger")), code: "not-joined-here" },
  ])("$why is refused, and the connection goes on", async ({ sent, code }) => {
    const bench = await testBench(school, head.schoolId);
    const end = await connectBench(school, bench);
    end.tell(sent);
    const heard = await end.hears.until(({ kind }) => kind === "refused");
    expect(heard.kind === "refused" && heard.problem.code).toBe(code);
    end.tell({ v: 1, kind: "hand", personId: bench.people[0] ?? "", isRaised: true });
    await end.hears.until((one) => one.kind === "hand" && one.isRaised);
    end.leave();
  });

  test("too large a message, or far too many, end the connection; a second one takes the place of the first", async () => {
    const bench = await testBench(school, head.schoolId);
    const large = await connectBench(school, bench);
    large.tell("x".repeat(TELLING_LIMITS.bytes + 1));
    expect(await large.closed).toBe(1009);
    const many = await connectBench(school, bench);
    for (let k = 0; k < 700; k++) many.tell("{");
    expect(await many.closed).toBe(1008);
    expect(many.hears.all.filter(({ kind }) => kind === "refused").length).toBeLessThanOrEqual(TELLING_LIMITS.atOnce);
    const one = await connectBench(school, bench);
    await one.hears.until(({ kind }) => kind === "hand");
    const two = await connectBench(school, bench);
    expect(await one.closed).toBe(4000);
    two.leave();
  });

  test("nobody else's: no page of another server, no stranger, no other school, no bench at a board", async () => {
    const bench = await testBench(school, head.schoolId);
    const foreign = { origin: "http://elsewhere.example", host: "school.example" };
    await expect(connectBench(school, bench, foreign)).rejects.toThrow("403");
    expect(await strangerStatus(school)).toBe(401);
    const other = await testSchool(school, "Second");
    expect((await openBoard(school, bench.classId, other)).status).toBe(404);
    expect((await openBoard(school, bench.classId, bench)).status).toBe(401);
    for (const [method, path] of [
      ["GET", "attempt"],
      ["POST", "lower-hand"],
    ] as const) {
      const url = `/api/classes/${bench.classId}/live/${bench.deviceId}/${path}`;
      const asked = (who: Browser) => school.server.inject({ method, url, cookies: who.cookies, headers: who.headers });
      expect([(await asked(other)).statusCode, (await school.server.inject({ method, url })).statusCode]).toEqual([
        404, 401,
      ]);
    }
  });

  test.runIf(engine === "PostgreSQL")(
    "a board at another server of the database hears the same, and asks for the same",
    async () => {
      const bench = await testBench(school, head.schoolId);
      const [personId = ""] = bench.people;
      const end = await connectBench(school, bench);
      end.tell(state(personId, { unsent: 7 }));
      end.tell(growing("far"));
      // It starts when the bench has told all already: it asks the others.
      const second = await another(2);
      const board = await openBoard(second, bench.classId, head);
      await shown(board, bench, (one) => one.state?.unsent === 7 && one.attempt?.id === "far");
      const url = `/api/classes/${bench.classId}/live/${bench.deviceId}`;
      const attempt = await second.server.inject({ url: `${url}/attempt`, cookies: head.cookies });
      expect(attempt.json().attempt).toMatchObject({ id: "far", combination: [10, 20, 30] });
      expect(await database.query.selectFrom("live_attempts").selectAll().execute()).toEqual([]);
      end.tell({ v: 1, kind: "hand", personId, isRaised: true });
      await shown(board, bench, ({ hand, isHere }) => hand !== null && isHere);
      await second.server.inject({
        method: "POST",
        url: `${url}/lower-hand`,
        ...{ cookies: head.cookies, headers: head.headers },
      });
      await end.hears.until(() => end.hears.all.filter((one) => one.kind === "hand" && !one.isRaised).length === 2);
      // The bench goes to the other server: that the first one lost it afterwards is no news.
      const moved = await connectBench(second, bench);
      moved.tell(state(personId, { unsent: 8 }));
      const first = await openBoard(school, bench.classId, head);
      await shown(first, bench, (one) => one.state?.unsent === 8);
      end.leave();
      await end.closed;
      moved.tell(state(personId, { unsent: 9 }));
      await shown(first, bench, (one) => one.state?.unsent === 9);
      expect(first.events.all.flatMap(({ benches }) => benches).every(({ isHere }) => isHere)).toBe(true);
      for (const one of [board, first]) one.leave();
      moved.leave();
    },
  );
});
