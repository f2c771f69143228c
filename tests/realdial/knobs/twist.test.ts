import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { TwistFollower, twistBetween } from "../../../src/realdial/knobs/twist";

const flat = (alpha: number) => ({ alpha: ((alpha % 360) + 360) % 360, beta: 0, gamma: 0 });

type Vector = readonly [number, number, number];
const RADIANS = Math.PI / 180;

/** Rows of the rotation matrix Z-X'-Y'' as W3C Device Orientation gives it, by matrices and not by quaternions. */
function matrixOf(alpha: number, beta: number, gamma: number): readonly Vector[] {
  const [cX, cY, cZ] = [beta, gamma, alpha].map((angle) => Math.cos(angle * RADIANS)) as [number, number, number];
  const [sX, sY, sZ] = [beta, gamma, alpha].map((angle) => Math.sin(angle * RADIANS)) as [number, number, number];
  return [
    [cZ * cY - sZ * sX * sY, -cX * sZ, cY * sZ * sX + cZ * sY],
    [cY * sZ + cZ * sX * sY, cZ * cX, sZ * sY - cZ * cY * sX],
    [-cX * sY, sX, cX * cY],
  ];
}

/** Angles of an attitude turned by so many degrees about its own z axis. */
function turnedAboutScreen({ alpha, beta, gamma }: { alpha: number; beta: number; gamma: number }, degrees: number) {
  const [c, s] = [Math.cos(degrees * RADIANS), Math.sin(degrees * RADIANS)];
  const m = matrixOf(alpha, beta, gamma).map(([x, y, z]) => [x * c + y * s, y * c - x * s, z] as const);
  const at = (row: number, column: number) => m[row]?.[column] ?? 0;
  return {
    alpha: Math.atan2(-at(0, 1), at(1, 1)) / RADIANS,
    beta: Math.asin(Math.max(-1, Math.min(1, at(2, 1)))) / RADIANS,
    gamma: Math.atan2(-at(2, 0), at(2, 2)) / RADIANS,
  };
}

describe("how far a phone has turned about its screen", () => {
  test("is its yaw where it lies flat, left positive, past north too", () => {
    expect(twistBetween(flat(10), flat(46))).toBeCloseTo(0.1, 12);
    expect(twistBetween(flat(350), flat(8))).toBeCloseTo(0.05, 12);
    expect(twistBetween(flat(8), flat(350))).toBeCloseTo(-0.05, 12);
  });

  test("is the same however the knob stands", () => {
    const angles = fc.record({
      alpha: fc.double({ min: 0, max: 360, noNaN: true }),
      beta: fc.double({ min: -80, max: 80, noNaN: true }),
      gamma: fc.double({ min: -80, max: 80, noNaN: true }),
    });
    fc.assert(
      fc.property(angles, fc.double({ min: -170, max: 170, noNaN: true }), (attitude, degrees) => {
        expect(twistBetween(attitude, turnedAboutScreen(attitude, degrees)) * 360).toBeCloseTo(degrees, 5);
      }),
    );
  });
});

describe("a follower of a phone on a knob", () => {
  const follow = (angles: readonly number[], every = 16) => {
    const follower = new TwistFollower();
    const gaps = angles.map((alpha, k) => follower.take(flat(alpha), k * every));
    return { follower, gaps: gaps.filter((isGap) => isGap).length };
  };
  const tenth = (angle: number) => Math.round(angle * 10) / 10;
  const run = (from: number, to: number, steps: number) =>
    Array.from({ length: steps }, (_, k) => from + ((to - from) * k) / (steps - 1));

  test("counts turns of a hand, forth and back, within 0.1 graduations a leg", () => {
    const { follower } = follow([...run(0, 1080, 150), ...run(1080, 360, 150)].map(tenth));
    expect(follower.turns * 100).toBeGreaterThan(99.9);
    expect(follower.turns * 100).toBeLessThan(100.2);
  });

  test("does not move for a sensor that creeps, and tells its drift", () => {
    const { follower } = follow(run(0, 3, 3750).map(tenth));
    expect(Math.abs(follower.turns * 100)).toBeLessThan(0.03);
    // 3 degrees in a minute are 0.83 graduations.
    expect((follower.driftPerMinute ?? 0) * 100).toBeCloseTo(0.83, 1);
  });

  test("knows no drift before it has rested", () => {
    expect(follow(run(0, 0.1, 100)).follower.driftPerMinute).toBeNull();
  });

  test("tells a gap, and counts nothing across it", () => {
    const { follower, gaps } = follow([0, 90, 180], 600);
    expect(gaps).toBe(2);
    expect(follower.turns).toBe(0);
  });
});
