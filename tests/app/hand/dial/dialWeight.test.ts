import { describe, expect, test } from "vitest";
import { BenchSession } from "../../../../src/app/exercises/bench/benchSession";
import { DialingTry } from "../../../../src/app/sittings/tries/dialingTry";
import { trySetup } from "../../../../src/app/sittings/tries/trySetup";
import { ZeroingTry } from "../../../../src/app/sittings/tries/zeroingTry";
import { type DialWeight, DRAG_LAG } from "../../../../src/dialing/hand/dialFeel";
import { idealMotion } from "../../../../src/dialing/idealMotion";
import type { Station } from "../../../../src/drill/sheet/sheet";
import { shippedProfile } from "../../../../src/lock/shippedProfiles";
import { attemptOutcome } from "../../../../src/records/attemptOutcome";
import { decodeTrace, encodeTrace } from "../../../../src/records/motion/traceCodec";
import { seededChance } from "../../../../src/statistics/chance";
import { replay } from "../../../../src/trace/replay";
import { dialingStation, testSheet, zeroingStation } from "../../../support/testSheet";

const benchOf = (profileId: string, dial: DialWeight) => {
  const profile = shippedProfile(profileId);
  const combination = profile.asSet ?? [];
  return new BenchSession({ profile, source: "as-set", combination, help: "full", dial }, seededChance(3));
};

/** Turns a bench's dial frame by frame. */
class FrameHand {
  private readonly bench: BenchSession;
  private now = 0;

  constructor(bench: BenchSession) {
    this.bench = bench;
  }

  /** Turns evenly until the dial is to be where it is wanted, stops there, and rests while frames go on. */
  turnEvenly(goal: number): void {
    const way = goal - this.bench.lock.dial;
    const moves = Math.max(1, Math.round(Math.abs(way) / 2));
    for (let i = 0; i < moves; i++) this.turnBy(way / moves);
    this.rest(40);
  }

  /** Comes to its goal ever slower, so that nothing is left to run on. */
  turnSoftly(goal: number): void {
    for (let i = 0; i < 600 && Math.abs(goal - this.bench.lock.dial) > 0.02; i++) {
      const left = goal - this.bench.lock.dial;
      this.turnBy(Math.abs(left) < 0.6 ? Math.sign(left) / 64 : left * 0.03);
    }
    this.rest(40);
  }

  turnBy(by: number): void {
    this.now += 16;
    this.bench.turnBy(by, this.now);
  }

  rest(frames: number): void {
    for (let i = 0; i < frames; i++) {
      this.now += 16;
      this.bench.runOn(this.now);
    }
  }
}

const dialed = (profileId: string, dial: DialWeight) => {
  const bench = benchOf(profileId, dial);
  const { profile, combination } = bench.attempt;
  const hand = new FrameHand(bench);
  for (const end of idealMotion(profile, combination, bench.lock.dial, [], 5).slice(1)) hand.turnEvenly(end);
  return bench;
};

const stopErrorsOf = (bench: BenchSession) => attemptOutcome(bench.attempt).stops.map(({ error }) => error);

describe("on the bench", () => {
  test("a perfect hand stops short of every number on a heavy dial, and runs past on a light one", () => {
    expect(stopErrorsOf(dialed("three-wheel", "usual")).map(Math.abs)).toEqual([0, 0, 0]);
    // From the second number on the hand turns about, and loses the lag on both sides.
    const wanted = [-DRAG_LAG, -2 * DRAG_LAG, -2 * DRAG_LAG];
    stopErrorsOf(dialed("three-wheel", "heavy")).forEach((error, k) => {
      expect(error).toBeCloseTo(wanted[k] ?? Number.NaN, 1);
    });
    for (const error of stopErrorsOf(dialed("three-wheel", "light"))) expect(error).toBeGreaterThan(2);
  });

  test.each(["heavy", "light"] as const)(
    "what the %s dial did is what is recorded, and replays to the same",
    (dial) => {
      for (const id of ["three-wheel", "dial-encoder", "small-three-wheel"]) {
        const bench = dialed(id, dial);
        const { profile, combination } = bench.attempt;
        const kept = decodeTrace(encodeTrace(bench.recording));
        const again = replay({ profile, combination, ...kept });
        expect(again.dial).toBe(bench.attempt.dial);
        expect(attemptOutcome(again)).toEqual(attemptOutcome(bench.attempt));
      }
    },
  );

  test("a light dial that runs on ends at the positive stop, in an opened lock", () => {
    const bench = benchOf("three-wheel", "light");
    const { profile, combination } = bench.attempt;
    const path = idealMotion(profile, combination, bench.lock.dial, [], 5).slice(1);
    const stop = dialed("three-wheel", "usual").attempt.dial;
    const way = Math.sign(stop - (path.at(-2) ?? 0));
    const hand = new FrameHand(bench);
    for (const end of [...path.slice(0, -1), stop - way * 10]) hand.turnSoftly(end);
    for (let i = 0; i < 4; i++) hand.turnBy(way * 2);
    expect([bench.attempt.opened, bench.isRunningOn]).toEqual([false, true]);
    for (let i = 0; i < 60 && !bench.attempt.opened; i++) hand.rest(1);
    expect([bench.attempt.opened, bench.isRunningOn]).toEqual([true, false]);
    expect(bench.lock.dial).toBe(stop);
  });

  test("another weight takes another attempt", () => {
    const bench = benchOf("three-wheel", "usual");
    bench.turnBy(5, 10);
    bench.change({ ...bench.setup, dial: "heavy" });
    expect(bench.recording.positions).toEqual([]);
    bench.turnBy(0.5, 20);
    expect([bench.recording.positions, bench.windUp]).toEqual([[], 0.5]);
  });
});

const setupOf = (station: Station, repetition = 1) =>
  trySetup(testSheet({ stations: [station] }), { station: 0, repetition, combination: [38, 71, 26] }, 5, 0);

describe("in a sitting", () => {
  const light = { conditions: [{ kind: "light-dial" as const, from: 2 }] };
  const heavy = { conditions: [{ kind: "heavy-dial" as const }] };

  test("a heavy dial lags at both kinds of station", () => {
    const dialing = new DialingTry(setupOf(dialingStation(heavy)));
    const zeroing = new ZeroingTry(setupOf(zeroingStation(heavy)));
    const starts = [dialing.dial, zeroing.session.lock.dial];
    for (const one of [dialing, zeroing]) one.turnBy(4, 100);
    expect(dialing.dial - (starts[0] ?? 0)).toBeCloseTo(4 - DRAG_LAG, 2);
    expect(zeroing.session.lock.dial - (starts[1] ?? 0)).toBeCloseTo(4 - DRAG_LAG, 9);
  });

  test.each([
    { repetition: 1, isLight: false },
    { repetition: 2, isLight: true },
  ])("at try $repetition the dial is light: $isLight, as the sheet says", ({ repetition, isLight }) => {
    const dialing = new DialingTry(setupOf(dialingStation(light), repetition));
    const zeroing = new ZeroingTry(setupOf(zeroingStation(light), repetition));
    const stands = () => [dialing.dial, zeroing.session.lock.dial];
    for (const one of [dialing, zeroing]) one.turnBy(10, 100);
    const before = stands();
    expect([dialing.isRunningOn, zeroing.isRunningOn]).toEqual([isLight, isLight]);
    for (const one of [dialing, zeroing]) one.runOn(4000);
    expect(stands().map((dial, k) => dial - (before[k] ?? 0) > 1)).toEqual([isLight, isLight]);
    expect([dialing.isRunningOn, zeroing.isRunningOn]).toEqual([false, false]);
  });

  test("ten nudges of a tenth make one graduation", () => {
    const one = new DialingTry(setupOf(dialingStation()));
    const stood = one.dial;
    for (let k = 1; k <= 10; k++) one.turnBy(0.1, 1000 * k);
    expect(one.dial).toBe(stood + 1);
  });

  test("nothing runs on once a try has ended", () => {
    const one = new DialingTry(setupOf(dialingStation(light), 2));
    one.turnBy(20, 100);
    one.end();
    const stood = one.dial;
    one.runOn(5000);
    expect([one.isRunningOn, one.dial]).toEqual([false, stood]);
  });
});
