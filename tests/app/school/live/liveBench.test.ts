import { beforeEach, describe, expect, test, vi } from "vitest";
import { BenchSession } from "../../../../src/app/exercises/bench/benchSession";
import { DIALED_HERE } from "../../../../src/app/keeping/here/dialedHere";
import { handWords } from "../../../../src/app/school/live/hand";
import { LiveBench } from "../../../../src/app/school/live/liveBench";
import type { LiveSocket } from "../../../../src/app/school/live/liveLink";
import { workHere } from "../../../../src/app/school/live/workHere";
import { idealMotion } from "../../../../src/dialing/idealMotion";
import { shippedProfile } from "../../../../src/lock/shippedProfiles";
import { describeSource } from "../../../../src/realdial/sources/sourceDescription";
import { motionOfText } from "../../../../src/records/motion/traceCodec";
import { type BenchHears, type BenchTelling, benchTelling, SILENCE_MS } from "../../../../src/school/wire/liveWire";
import { seededChance } from "../../../../src/statistics/chance";
import { NOON } from "../../../support/logbookRecords";

const profile = shippedProfile("three-wheel");
const combination = profile.asSet ?? [];

/** A connection as a server would hold its other end. */
class FakeSocket implements LiveSocket {
  bufferedAmount = 0;
  onmessage: LiveSocket["onmessage"] = null;
  onclose: LiveSocket["onclose"] = null;
  isClosed = false;
  readonly told: BenchTelling[] = [];

  send(text: Parameters<WebSocket["send"]>[0]): void {
    this.told.push(benchTelling.parse(JSON.parse(String(text))));
  }
  close(): void {
    this.isClosed = true;
  }
  says(heard: BenchHears): void {
    this.onmessage?.call(this as never, { data: JSON.stringify(heard) } as MessageEvent);
  }
  ends(code: number): void {
    this.onclose?.call(this as never, { code } as CloseEvent);
  }
}

const isHand = (isRaised: boolean): BenchHears => ({ v: 1, kind: "hand", isRaised });

let bench: BenchSession;
let sockets: FakeSocket[];
let person: { readonly id: string } | null;
let isHidden: boolean;
let path: string;
let live: LiveBench;

/** The connection that is open now. */
const socket = () => sockets.at(-1) as FakeSocket;
const told = (kind: BenchTelling["kind"]) => sockets.flatMap((one) => one.told).filter((one) => one.kind === kind);
const pass = (ms: number) => vi.advanceTimersByTime(ms);

const newLive = () =>
  new LiveBench({
    open: () => {
      sockets.push(new FakeSocket());
      return socket();
    },
    now: () => performance.now(),
    chance: () => 0.5,
    later: (act, wait_ms) => {
      const timer = setTimeout(act, wait_ms);
      return () => clearTimeout(timer);
    },
    joining: () => person,
    work: () => workHere(path),
    last: async () => ({ isRight: true, endedAt: NOON }),
    unsent: () => 3,
    isHidden: () => isHidden,
    newId: () => `id-${bench.version}`,
    wall: () => NOON + performance.now(),
  });

beforeEach(() => {
  vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout", "performance"] });
  bench = new BenchSession({ profile, source: "as-set", combination, help: "full", dial: "usual" }, seededChance(1));
  DIALED_HERE.bench = bench;
  [sockets, person, isHidden, path] = [[], { id: "p" }, false, "bench"];
  live = newLive();
  return () => {
    live.end();
    DIALED_HERE.bench = null;
    vi.useRealTimers();
  };
});

/** Dials the combination as moves of a hand, a tenth of a second each. */
function dial(pause_ms = 100): void {
  const way = idealMotion(profile, combination, bench.lock.dial, [], 5);
  for (const [k, end] of way.slice(1).entries()) {
    pass(pause_ms);
    bench.turnBy(end - (way[k] ?? 0), performance.now());
  }
}

describe("a bench tells its class how it goes", () => {
  test("who, what, which leg, the last result, what waits; then only what is new", async () => {
    live.wake();
    expect(told("state")).toEqual([]);
    socket().says(isHand(false));
    // The last result is looked up in the meantime.
    await Promise.resolve();
    await Promise.resolve();
    pass(100);
    expect(told("state").at(-1)).toMatchObject({
      state: {
        personId: "p",
        profileId: "three-wheel",
        exercise: "bench",
        leg: { at: 1, of: 4 },
        last: { isRight: true, endedAt: NOON },
        isWaiting: false,
        unsent: 3,
      },
    });
    const before = told("state").length;
    pass(2000);
    expect(told("state")).toHaveLength(before);
    path = "logbook";
    pass(100);
    expect(told("state").at(-1)).toMatchObject({ state: { exercise: "logbook", isWaiting: true } });
  });

  test("the motion as it grows, at most ten times a second, and its end before the state that says so", () => {
    live.wake();
    socket().says(isHand(false));
    dial(20);
    pass(100);
    const all = socket().told;
    const motions = told("attempt").map((one) => (one.kind === "attempt" ? one.attempt : null));
    expect(new Set(motions.map((one) => one?.id)).size).toBe(1);
    expect(motionOfText(motions.at(-1)?.motion ?? "").positions).toEqual(bench.recording.positions);
    expect(motions.length).toBeLessThanOrEqual(performance.now() / 100 + 1);
    const end = all.findIndex((one) => one.kind === "state" && one.state.isWaiting);
    expect(all.findLastIndex((one) => one.kind === "attempt")).toBeLessThan(end);
    expect(bench.outcome?.opened).toBe(true);
  });

  test("no motion that must not be kept, and what was told of it is taken back", () => {
    live.wake();
    socket().says(isHand(false));
    bench.turnBy(40, performance.now());
    pass(200);
    expect(told("attempt")).toHaveLength(1);
    bench.noteSource(describeSource("printed-dial", 0.5, null, false));
    bench.turnBy(40, performance.now());
    pass(500);
    expect(told("attempt").map((one) => one.kind === "attempt" && one.attempt === null)).toEqual([false, true]);
  });

  test("nothing while its page is hidden, and nothing of whoever is not of the class", () => {
    live.wake();
    socket().says(isHand(false));
    pass(100);
    isHidden = true;
    pass(100);
    const before = socket().told.length;
    dial();
    expect(socket().told).toHaveLength(before);
    isHidden = false;
    live.nudge();
    expect(socket().told.length).toBeGreaterThan(before);
    person = null;
    live.wake();
    expect(socket().isClosed).toBe(true);
    pass(60_000);
    expect(sockets).toHaveLength(1);
  });
});

describe("a connection that ends is made anew", () => {
  test("after a wait that grows, and all is told again", () => {
    live.wake();
    socket().says(isHand(false));
    pass(100);
    const first = told("state").length;
    socket().ends(1006);
    expect(live.isLive).toBe(false);
    pass(1000);
    expect(sockets).toHaveLength(1);
    pass(1000);
    expect(sockets).toHaveLength(2);
    socket().ends(1006);
    pass(2500);
    expect(sockets).toHaveLength(2);
    pass(1000);
    expect(sockets).toHaveLength(3);
    socket().says(isHand(false));
    pass(100);
    expect(told("state")).toHaveLength(2 * first);
  });

  test("at once when the network is back", () => {
    live.wake();
    socket().ends(1006);
    live.nudge();
    expect(sockets).toHaveLength(2);
  });

  test.each([
    { why: "a server that takes it and never answers", answers: false, after: 10_000 },
    { why: "a server that answers no more", answers: true, after: SILENCE_MS },
  ])("where it is that of $why", ({ answers, after }) => {
    live.wake();
    if (answers) socket().says(isHand(false));
    pass(after - 200);
    expect(socket().isClosed).toBe(false);
    pass(400);
    expect(sockets[0]?.isClosed).toBe(true);
    pass(5000);
    expect(sockets.length).toBeGreaterThan(1);
  });

  test("not where another tab of the bench has it, before the page is worked in again", () => {
    live.wake();
    socket().says(isHand(false));
    socket().ends(4000);
    pass(600_000);
    live.wake();
    expect(sockets).toHaveLength(1);
    live.nudge();
    expect(sockets).toHaveLength(2);
  });
});

describe("a raised hand", () => {
  const words = () => handWords(live.hand, live.isLive);
  const hands = () => told("hand").map((one) => one.kind === "hand" && one.isRaised);

  test("goes up when the server has taken it, and down when the instructor lowers it", () => {
    live.wake();
    socket().says(isHand(false));
    live.wantHand("up");
    expect(words()).toBe("Your hand is going up.");
    socket().says(isHand(true));
    expect(words()).toBe("Your hand is up. Your instructor sees it.");
    socket().says(isHand(false));
    expect(words()).toBe("Your instructor has lowered your hand.");
    expect(hands()).toEqual([true]);
  });

  test("without a connection says so, and goes up once there is one", () => {
    live.wantHand("up");
    expect(words()).toMatch(/^No connection to your class now\. Your hand goes up/);
    expect(hands()).toEqual([]);
    socket().says(isHand(false));
    expect(hands()).toEqual([true]);
    socket().says(isHand(true));
    expect(words()).toMatch(/^Your hand is up\./);
  });

  test("is lowered by its person", () => {
    live.wake();
    socket().says(isHand(true));
    live.wantHand("down");
    socket().says(isHand(false));
    expect([words(), ...hands()]).toEqual(["", false]);
  });

  test("that the server refuses is told, and not tried for ever", () => {
    live.wake();
    socket().says(isHand(false));
    live.wantHand("up");
    socket().says({ v: 1, kind: "refused", problem: { code: "not-joined-here", path: [], values: {} } });
    expect(words()).toMatch(/^Your class did not take your hand\./);
    pass(60_000);
    expect(hands()).toEqual([true]);
  });
});
