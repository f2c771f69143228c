import { describe, expect, test } from "vitest";
import { problemWords } from "../../../../src/app/exercises/zeroing/playWords";
import { PlaySession } from "../../../../src/app/exercises/zeroing/session/playSession";
import { ZeroingSession } from "../../../../src/app/exercises/zeroing/session/zeroingSession";
import { seededChance } from "../../../../src/statistics/chance";
import { indexErrorEstimate } from "../../../../src/zeroing/ringClamp";
import { usualRules } from "../../../../src/zeroing/zeroingRules";
import { USUAL_RANGES } from "../../../../src/zeroing/zeroLock";

const SETUP = {
  graduations: 100,
  rules: usualRules(100),
  ranges: { ...USUAL_RANGES, noise: [0, 0] as const },
  creep: [0, 0] as const,
};

/** A session whose ring is clamped, and a hand that stops a given way off zero after a good turn. */
function clamped(seed = 8) {
  const session = new ZeroingSession(SETUP, seededChance(seed));
  session.clampRing();
  let now = 0;
  const later = (by: number) => {
    now += by;
    return now;
  };
  const turn = (by: number) => session.turnBy(by, later(50));
  const read = () => session.takeReading(later(1000));
  /** Turns on, the way that is asked, until the mark is `off` from zero. */
  const stopAt = (off: number) => {
    const s = session.asked === "right" ? -1 : 1;
    const ahead = s * (off - session.lock.seenDeviation);
    turn(s * (ahead < 30 ? ahead + 100 : ahead));
    read();
  };
  return { session, turn, read, stopAt };
}

describe("a zeroing exercise", () => {
  test("takes what the dial does in between for no approach: a side reopened wants a whole turn again", () => {
    const { session, turn, read, stopAt } = clamped();
    for (const off of [0.3, 0.1, 0.2, 0.45, -0.1, 0.2]) stopAt(off);
    expect(session.state).toBe("zeroSet");
    session.lock.turnBy(40);
    session.reopen("left");
    expect(session.asked).toBe("left");
    turn(-session.lock.seenDeviation + 3);
    turn(-3);
    read();
    expect(session.memory.last?.refusal).not.toBeNull();
  });

  test("shows the ring's error apart from a hand that leans", () => {
    const { session, stopAt } = clamped();
    for (const off of [0.4, 0.45, 0.5, 0.4, 0.45, 0.5]) stopAt(off);
    const { left } = session.memory.accepted;
    const { estimate } = indexErrorEstimate(left.map(({ cam, deviation }) => cam - deviation));
    // Positions are whole millionths of a graduation.
    expect(Math.abs(estimate - session.lock.indexError)).toBeLessThanOrEqual(1e-6);
  });
});

describe("finding the play", () => {
  const PLAY = { graduations: 100, ranges: { ...SETUP.ranges, lostMotion: [1, 1] as const } };
  const play = () => new PlaySession(PLAY, seededChance(3));

  test.each([
    { why: "the mark is out of sight", by: -30, says: /not on its line/ },
    { why: "the cam has not moved yet", by: -0.4, says: /has not moved yet/ },
  ])("keeps no stop where $why", ({ by, says }) => {
    const session = play();
    session.turnBy(30, 100);
    session.turnBy(by, 200);
    session.keepStop();
    expect(problemWords(session.chart.getSnapshot().context)).toMatch(says);
    expect(session.chart.getSnapshot().context.stops).toEqual({ right: [], left: [] });
  });

  test("keeps a stop once, with the cam's mark on its line", () => {
    const session = play();
    session.turnBy(30, 300);
    session.turnBy(70 - session.lock.camDeviation, 400);
    session.turnBy(-session.lock.camDeviation + (session.lock.camDeviation < 0 ? 0 : 100), 500);
    session.keepStop();
    session.keepStop();
    expect(session.chart.getSnapshot().context.stops.left).toHaveLength(1);
    expect(problemWords(session.chart.getSnapshot().context)).toMatch(/recorded already/);
  });

  test("tells a dial at rest that a stop is good with the cam's mark on its line, and nowhere else", () => {
    const session = play();
    const seen = [session.isAtStop];
    session.turnBy(30, 300);
    seen.push(session.isAtStop);
    session.turnBy(70 - session.lock.camDeviation, 400);
    session.turnBy(-session.lock.camDeviation + (session.lock.camDeviation < 0 ? 0 : 100), 500);
    seen.push(session.isAtStop);
    session.turnBy(-0.1, 600);
    seen.push(session.isAtStop);
    expect(seen).toEqual([false, false, true, false]);
  });

  test("keeps no stop of a light dial that still runs on", () => {
    const session = new PlaySession({ ...PLAY, weight: "light" }, seededChance(3));
    session.turnBy(30, 300);
    session.turnBy(70 - session.lock.camDeviation, 400);
    session.turnBy(-3, 420);
    const asks = () => {
      session.keepStop();
      return problemWords(session.chart.getSnapshot().context);
    };
    expect([session.isRunningOn, asks()]).toEqual([true, expect.stringMatching(/still moving/)]);
    expect(session.chart.getSnapshot().context.stops).toEqual({ right: [], left: [] });
    session.runOn(5000);
    expect([session.isRunningOn, asks()]).toEqual([false, expect.not.stringMatching(/still moving/)]);
  });
});
