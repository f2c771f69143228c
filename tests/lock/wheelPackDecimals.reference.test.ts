import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { reading } from "../../src/lock/dial";
import type { WheelPackProfile } from "../../src/lock/profile";
import { SHIPPED_PROFILES } from "../../src/lock/shippedProfiles";
import { WheelPack } from "../../src/lock/wheelPack";
import { replay } from "../../src/trace/replay";
import { draws } from "../support/draws";
import { type StepwiseLock, StepwisePack } from "./stepwisePack";

// The independent judge is tests/lock/stepwisePack.ts: the same lock in whole steps of a hundredth or a thousandth,
// moved one step at a time. Nose, alignment, draw and positive stop are its own.

const packs = SHIPPED_PROFILES.filter((profile): profile is WheelPackProfile => profile.kind === "wheel-pack");

/** The lock as the judge counts it. */
function inSteps(profile: WheelPackProfile, combination: readonly number[], per: number): StepwiseLock {
  const steps = (graduations: number) => Math.round(graduations * per);
  return {
    turn: steps(profile.graduations),
    freePlay: profile.wheelPack.freePlay.map(steps),
    gateTolerance: profile.wheelPack.gateTolerance.map(steps),
    ways: profile.procedure.map(({ turn }) => (turn === "left" ? 1 : -1)),
    combination: combination.map(steps),
    engageAt: steps(profile.draw.engageAt),
    travel: steps(profile.draw.travel),
    drawWay: profile.draw.turn === "left" ? 1 : -1,
  };
}

/** Where the n-th coming of a number is met when turning one way, in steps, by walking turn after turn. */
function comingOf(number: number, way: 1 | -1, from: number, turn: number, times: number): number {
  let mark = number;
  while (way * (mark - from) <= turn / 50) mark += way * turn;
  while (way * (mark - turn * way - from) > turn / 50) mark -= way * turn;
  return mark + way * (times - 1) * turn;
}

interface Dialed {
  readonly lock: StepwiseLock;
  /** Positions of the hand in steps. */
  readonly hand: readonly number[];
}

/**
 * A hand that dials the combination with stops off by some steps, and draws until so many steps beyond the positive stop.
 *
 * @param short - steps by which each stop falls short, negative where it runs past
 */
function dialed(
  profile: WheelPackProfile,
  lock: StepwiseLock,
  start: number,
  short: readonly number[],
  beyond: number,
): Dialed {
  const hand = [start];
  let at = start;
  profile.procedure.forEach(({ arrivals }, k) => {
    const way = lock.ways[k] ?? 1;
    at = comingOf(lock.combination[k] ?? 0, way, at, lock.turn, arrivals) - way * (short[k] ?? 0);
    hand.push(at);
  });
  const { drawWay, engageAt, turn, travel } = lock;
  let engages = engageAt;
  while (drawWay * (engages - at) <= 0) engages += drawWay * turn;
  while (drawWay * (engages - drawWay * turn - at) > 0) engages -= drawWay * turn;
  hand.push(engages + drawWay * (travel + beyond));
  return { lock, hand };
}

/** What the judge says, and what the pack says of the same positions written as decimals. */
function bothOf(profile: WheelPackProfile, combination: readonly number[], { lock, hand }: Dialed, per: number) {
  const judge = new StepwisePack(lock, hand[0] ?? 0);
  for (const [i, position] of hand.slice(1).entries()) judge.turnBy(position - (hand[i] ?? 0));
  const attempt = replay({ profile, combination, positions: hand.map((steps) => Number((steps / per).toFixed(3))) });
  const said = {
    opened: judge.opened,
    dial: judge.dial,
    wheels: judge.wheels,
    gaps: judge.gapsOff(),
    retraction: (judge.drawn ?? 0) / lock.travel,
  };
  const steps = (graduations: number) => graduations * per;
  const pack = attempt.pack;
  const ours = {
    opened: attempt.opened,
    dial: Math.round(steps(attempt.dial)),
    wheels: (pack?.positions() ?? []).map((position) => Math.round(steps(position))),
    gaps: (pack?.errors() ?? []).map((error) => Math.round(Math.abs(steps(error)))),
    retraction: attempt.retraction,
  };
  return { said, ours, attempt };
}

const numbersOf = (profile: WheelPackProfile, per: number, grain: number) =>
  fc.array(
    fc.integer({ min: 0, max: (profile.graduations * per) / grain - 1 }).map((n) => (n * grain) / per),
    { minLength: profile.procedure.length, maxLength: profile.procedure.length },
  );

/** Stops on the number, anywhere near, exactly on the edge of the gate, and one step outside it. */
const shortOf = (profile: WheelPackProfile, per: number, grain: number) =>
  fc.tuple(
    ...profile.wheelPack.gateTolerance.map((tolerance) => {
      const edge = Math.round(tolerance * per);
      return fc.oneof(
        {
          weight: 3,
          arbitrary: fc.integer({ min: -edge, max: edge }).map((steps) => Math.trunc(steps / grain) * grain),
        },
        { weight: 2, arbitrary: fc.constantFrom(edge, -edge) },
        { weight: 1, arbitrary: fc.constantFrom(edge + 1, -edge - 1) },
      );
    }),
  );

const beyondOf = fc.oneof(
  { weight: 4, arbitrary: fc.constant(0) },
  { weight: 1, arbitrary: fc.constant(-1) },
  { weight: 1, arbitrary: fc.integer({ min: -300, max: 300 }) },
);

const tally = { opened: 0, refused: 0, atTheStop: 0 };

describe.each(packs.map((profile) => [profile.id, profile] as const))(
  "the %s lock dialed in decimals",
  (_, profile) => {
    test.each([
      { name: "tenths", per: 100, grain: 10, numRuns: draws(50, 200) },
      { name: "hundredths", per: 100, grain: 1, numRuns: draws(50, 200) },
      { name: "thousandths", per: 1000, grain: 1, numRuns: draws(6, 12) },
    ])("in $name it opens where the judge opens, and stands where the judge stands", ({ per, grain, numRuns }) => {
      const cases = fc.record({
        combination: numbersOf(profile, per, grain),
        start: fc.integer({ min: (-200 * per) / grain, max: (200 * per) / grain }).map((n) => n * grain),
        short: shortOf(profile, per, grain),
        beyond: beyondOf,
      });
      fc.assert(
        fc.property(cases, ({ combination, start, short, beyond }) => {
          const lock = inSteps(profile, combination, per);
          const { said, ours } = bothOf(profile, combination, dialed(profile, lock, start, short, beyond), per);
          expect(ours).toEqual(said);
          tally[said.opened ? "opened" : "refused"] += 1;
          if (said.opened && beyond === 0) tally.atTheStop += 1;
        }),
        { numRuns },
      );
    });

    test("wherever the hand goes, in hundredths", () => {
      const moves = fc.array(fc.integer({ min: -25_000, max: 25_000 }), { minLength: 1, maxLength: 8 });
      fc.assert(
        fc.property(numbersOf(profile, 100, 100), moves, (combination, steps) => {
          const lock = inSteps(profile, combination, 100);
          let at = 0;
          const hand = [0, ...steps.map((by) => (at += by))];
          const { said, ours } = bothOf(profile, combination, { lock, hand }, 100);
          expect(ours).toEqual(said);
        }),
        { numRuns: draws(20, 60) },
      );
    });
  },
);

test("the traces above opened at the very stop by the hundred, and were refused as well", () => {
  expect(tally.atTheStop).toBeGreaterThan(draws(100, 500));
  expect(tally.refused).toBeGreaterThan(draws(50, 200));
});

test("a lock one step wider at one gate is found out", () => {
  const profile = packs.find(({ id }) => id === "two-wheel");
  if (profile === undefined) throw new TypeError("no two-wheel pack");
  const combination = [74, 37];
  const lock = inSteps(profile, combination, 100);
  const wider = { ...lock, gateTolerance: lock.gateTolerance.map((tolerance) => tolerance + 1) };
  const edge = [0, (lock.gateTolerance[1] ?? 0) + 1];
  const { said, ours } = bothOf(profile, combination, dialed(profile, wider, 0, edge, 0), 100);
  expect([said.opened, ours.opened]).toEqual([true, false]);
});

describe("moves in decimals do not drift", () => {
  const profile = packs[0];
  if (profile === undefined) throw new TypeError("no pack");

  test("a million moves of a tenth are a hundred thousand graduations", () => {
    const pack = new WheelPack(profile, profile.asSet ?? []);
    for (let i = 0; i < 1_000_000; i++) pack.turnBy(0.1);
    expect(pack.dial).toBe(100_000);
    expect(pack.positions()).toEqual(pack.positions().map(() => 100_000));
  });

  test("whatever the moves, the dial stands at their decimal sum", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -9999, max: 9999 }), { maxLength: 300 }), (hundredths) => {
        const pack = new WheelPack(profile, [0.003, 50.007]);
        for (const by of hundredths) pack.turnBy(by / 100);
        const total = hundredths.reduce((sum, by) => sum + by, 0);
        expect(pack.dial).toBe(total / 100);
        expect(reading(pack.dial, 100)).toBe((((total % 10_000) + 10_000) % 10_000) / 100);
      }),
    );
  });
});
