import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { DialingFact } from "../../src/dialing/dialingFact";
import { HandReader } from "../../src/dialing/handReader";
import { type Leg, legArrivals } from "../../src/dialing/leg";
import { arrivals, stopError } from "../../src/dialing/runs";
import type { Graduations, Turn } from "../../src/lock/dial";
import type { Profile } from "../../src/lock/profile";
import { parseProfile } from "../../src/lock/profileSchema";
import { SHIPPED_PROFILES } from "../../src/lock/shippedProfiles";
import { batchArrivals, batchRuns, batchStart, batchStopError } from "../support/batchReading";

const exact = (from: number, to: number) => fc.integer({ min: from * 64, max: to * 64 }).map((n) => n / 64);

/** Short procedures, so that random motions often start afresh and get far; and other turnbacks. */
const SHORT: Profile[] = [0, 0.5, 2].map((turnback) =>
  parseProfile({
    id: `short-${turnback}`,
    kind: "dial-encoder",
    graduations: 40,
    procedure: [
      { turn: "right", arrivals: 2, rule: "at-least" },
      { turn: "left", arrivals: 1, rule: "at-least" },
      { turn: "right", arrivals: 1, rule: "at-least" },
    ],
    draw: { turn: "left", travel: 8 },
    turnback,
  }),
);
const PROFILES = [...SHIPPED_PROFILES, ...SHORT];

/** Moves like a hand's: long turns, steps about a turnback, wobbles and rests. */
const move = fc.oneof(
  { weight: 3, arbitrary: exact(-420, 420) },
  { weight: 2, arbitrary: exact(-60, 60) },
  { weight: 3, arbitrary: exact(-3, 3) },
  { weight: 1, arbitrary: fc.constant(0) },
);

const hands = fc.constantFrom(...PROFILES).chain((profile) =>
  fc.record({
    profile: fc.constant(profile),
    combination: fc.array(fc.integer({ min: 0, max: profile.graduations - 1 }), {
      minLength: profile.procedure.length,
      maxLength: profile.procedure.length,
    }),
    start: exact(-100, 100),
    moves: fc.array(move, { maxLength: 24 }),
  }),
);

/** Positions of the hand: where it starts, and where each move ends. */
function positionsOf(start: Graduations, moves: readonly Graduations[]): Graduations[] {
  let position = start;
  return [
    start,
    ...moves.map((by) => {
      position += by;
      return position;
    }),
  ];
}

function read(profile: Profile, combination: readonly number[], positions: readonly Graduations[]) {
  const [start = 0, ...others] = positions;
  const reader = new HandReader(profile, combination, start);
  const facts: DialingFact[] = others.flatMap((position) => reader.moveTo(position, undefined));
  return { reader, facts };
}

/** A leg reaches as far as the furthest of its runs, and every second run of it is a turnback. */
function expectWhole(leg: Leg, { runs }: HandReader, { procedure, graduations }: Profile): void {
  const along = (position: Graduations) => (leg.turn === "left" ? position : -position);
  const own = runs.slice(leg.firstRun, leg.lastRun + 1).filter(({ turn }) => turn === leg.turn);
  expect(along(leg.to)).toBe(Math.max(...own.map(({ to }) => along(to))));
  // Turning back in the draw may go on for as long as the last number's stop is not reached again.
  const longest = leg.step >= procedure.length - 1 ? Infinity : graduations / 4;
  expect(leg.turnbacks.every((size) => size > 0 && size < longest)).toBe(true);
  expect(leg.turnbacks).toHaveLength(Math.floor((leg.lastRun - leg.firstRun) / 2));
}

/** An encoder lock lets one go round again, so its attempt may begin before the last run that is long enough. */
function expectEncoderStart({ legs, runs }: HandReader, lastFresh: number, turn: Turn): void {
  const begins = legs[0]?.firstRun ?? -1;
  expect(begins).toBeLessThanOrEqual(lastFresh);
  expect(begins < 0).toBe(lastFresh < 0);
  if (begins >= 0) expect(runs[begins]?.turn).toBe(turn);
}

describe("a hand read move by move is the hand read as a whole", () => {
  test("the same runs, and the same start of the attempt", () => {
    fc.assert(
      fc.property(hands, ({ profile, combination, start, moves }) => {
        const positions = positionsOf(start, moves);
        const { reader } = read(profile, combination, positions);
        const runs = batchRuns(positions, profile.turnback);
        expect(reader.runs).toEqual(runs);
        const first = profile.procedure[0] ?? { turn: "left" as const, arrivals: 1 };
        const begins = batchStart(runs, first.turn, (first.arrivals - 1) * profile.graduations);
        if (profile.kind === "wheel-pack") expect(reader.legs[0]?.firstRun ?? -1).toBe(begins);
        else expectEncoderStart(reader, begins, first.turn);
      }),
      { numRuns: 3000 },
    );
  });

  test("the same arrivals and stop errors, run by run", () => {
    fc.assert(
      fc.property(hands, ({ profile, combination, start, moves }) => {
        const { graduations: perTurn, stopTolerance } = profile;
        const { reader } = read(profile, combination, positionsOf(start, moves));
        const pairs = reader.runs.flatMap((run) => combination.map((number) => ({ run, number })));
        for (const { run, number } of pairs) {
          const counted = arrivals(run, number, perTurn, stopTolerance);
          expect(counted).toBe(batchArrivals(run, number, perTurn, stopTolerance));
          expect(stopError(run.turn, run.to, number, perTurn)).toBe(batchStopError(run, number, perTurn));
        }
      }),
      { numRuns: 500 },
    );
  });

  test("the same arrivals leg by leg, each from where its first run starts", () => {
    fc.assert(
      fc.property(hands, ({ profile, combination, start, moves }) => {
        const { reader } = read(profile, combination, positionsOf(start, moves));
        for (const leg of reader.legs) {
          expect(leg.from).toBe(reader.runs[leg.firstRun]?.from);
          const target = reader.targetOf(leg);
          const counted = target && legArrivals(leg, target);
          const wanted = target && batchArrivals(leg, target.number, profile.graduations, profile.stopTolerance);
          expect(counted).toBe(wanted);
        }
      }),
      { numRuns: 500 },
    );
  });

  test("legs take turns, each with the runs from its first to its last, and a turnback is shorter than a quarter", () => {
    fc.assert(
      fc.property(hands, ({ profile, combination, start, moves }) => {
        const { reader } = read(profile, combination, positionsOf(start, moves));
        // What follows the draw is one leg, whatever the hand does in it.
        const legs = reader.legs.slice(0, profile.procedure.length + 1);
        expect(legs.map(({ step }) => step)).toEqual(legs.map((_, k) => k));
        for (const [k, leg] of legs.slice(1).entries()) {
          expect([leg.turn, leg.firstRun]).not.toContain(legs[k]?.turn);
          expect(leg.firstRun).toBe((legs[k]?.lastRun ?? 0) + 1);
        }
        for (const leg of legs) expectWhole(leg, reader, profile);
      }),
      { numRuns: 1000 },
    );
  });
});

test("moves made in many small moves are the same runs, the same legs and end in the same place", () => {
  const cuts = fc.array(fc.array(fc.integer({ min: 1, max: 63 }), { maxLength: 5 }), { minLength: 24, maxLength: 24 });
  fc.assert(
    fc.property(hands, cuts, ({ profile, combination, start, moves }, fractions) => {
      const finely = moves.flatMap((by, i) => {
        // Whole 64ths of a move that is itself a multiple of 1/64: still exact.
        const ends = [...(fractions[i] ?? [])].sort((a, b) => a - b).map((part) => (by * part) / 64);
        return [...ends, by].map((end, k) => end - (k === 0 ? 0 : (ends[k - 1] ?? 0)));
      });
      const coarse = read(profile, combination, positionsOf(start, moves)).reader;
      const fine = read(profile, combination, positionsOf(start, finely)).reader;
      expect(fine.runs).toEqual(coarse.runs);
      expect(fine.legs).toEqual(coarse.legs);
      expect(fine.position).toBe(coarse.position);
      expect(fine.wrongWay).toBe(coarse.wrongWay);
    }),
    { numRuns: 1000 },
  );
});

test("a way back from a long draw clears the lock before it is back, in one move as in many", () => {
  const profile = SHORT[0];
  if (profile === undefined) throw new TypeError("no short procedure");
  const legsAfter = (way: readonly Graduations[]) =>
    read(profile, [0, 0, 0], [0, -10, 10, 0, 45, ...way]).reader.legs.map(({ step, from, to }) => ({ step, from, to }));
  expect(legsAfter([5, -1, -60])).toEqual([{ step: 0, from: 45, to: -60 }]);
  expect(legsAfter([-60])).toEqual([{ step: 0, from: 45, to: -60 }]);
});
