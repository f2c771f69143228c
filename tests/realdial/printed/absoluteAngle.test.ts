import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { absoluteAngle, type TrackPhase } from "../../../src/realdial/printed/absoluteAngle";
import { TRACKS } from "../../../src/realdial/sheet/design";

const CYCLES = TRACKS.map(({ cycles }) => cycles);

/** Phases of a disc turned by so much, each off by a part of its cycle. */
const phasesAt = (turns: number, off: readonly number[] = [], cycles = CYCLES): TrackPhase[] =>
  cycles.map((count, k) => {
    const cycle = turns * count + (off[k] ?? 0);
    return { cycles: count, phase: 2 * Math.PI * (cycle - Math.round(cycle)), spread: 0.15, amplitude: 1, twist: 0 };
  });

/** How far apart two angles are, turns. */
const apart = (one: number, other: number) => Math.abs(one - other - Math.round(one - other));

const turns = fc.integer({ min: 0, max: 99_999 }).map((one) => one / 100_000);
const part = fc.integer({ min: -50, max: 50 }).map((one) => one / 1000);

describe("the angle of all tracks", () => {
  test("is right where each track is wrong by up to a twentieth of its cycle", () => {
    fc.assert(
      fc.property(turns, part, part, part, (at, fine, middle, coarse) => {
        const { turns: found } = absoluteAngle(phasesAt(at, [fine, middle, coarse]), null);
        expect(apart(found, at)).toBeLessThan(0.005);
      }),
    );
  });

  test("is sure where all agree", () => {
    fc.assert(
      fc.property(turns, (at) => {
        expect(absoluteAngle(phasesAt(at), null).margin).toBeGreaterThan(7);
      }),
    );
  });

  test("of one track alone is not sure, until it is known where to look", () => {
    const alone = phasesAt(0.31, [], [7]);
    expect(absoluteAngle(alone, null).margin).toBeLessThan(1e-6);
    const helped = absoluteAngle(alone, { turns: 0.3, spread: 0.02 });
    expect(helped.margin).toBeGreaterThan(7);
    expect(apart(helped.turns, 0.31)).toBeLessThan(1e-9);
  });

  test("shows where a track is not read right", () => {
    expect(absoluteAngle(phasesAt(0.4), null).misfit).toBeLessThan(1e-6);
    expect(absoluteAngle(phasesAt(0.4, [0.5]), null).misfit).toBeGreaterThan(1);
  });

  test("is not sure where the coarse track lies between two", () => {
    const { margin } = absoluteAngle(phasesAt(0.2, [0, 0, 1 / 14]), null);
    expect(margin).toBeLessThan(7);
  });
});
