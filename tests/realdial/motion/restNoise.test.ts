import { describe, expect, test } from "vitest";
import { NOISIEST, RestNoise } from "../../../src/realdial/motion/restNoise";

describe("noise at rest", () => {
  test("is the standard deviation of a second's readings", () => {
    const noise = new RestNoise();
    const rests = Array.from({ length: 31 }, (_, k) => noise.take(25 + (k % 2 === 0 ? 0.1 : -0.1), 40 * k));
    expect(rests.slice(0, 25)).toEqual(Array(25).fill(null));
    expect(rests.at(-1)?.noise).toBeCloseTo(0.1, 2);
    expect(rests.at(-1)?.position).toBeCloseTo(25, 1);
  });

  test("is not measured while the dial turns, and anew after it", () => {
    const noise = new RestNoise();
    for (let k = 0; k < 100; k++) expect(noise.take(0.1 * k, 40 * k)).toBeNull();
    expect(noise.take(30, 5000)).toBeNull();
    expect(noise.take(30, 6000)).toEqual({ position: 30, noise: 0 });
  });

  test("of two readings is their distance by the root of 2, and never more than NOISIEST", () => {
    const two = (apart: number) => {
      const noise = new RestNoise();
      noise.take(25, 0);
      return noise.take(25 + apart, 1000);
    };
    expect(two(0.4)?.noise).toBeCloseTo(0.4 / Math.SQRT2, 12);
    expect(two(0.5)?.noise).toBeCloseTo(NOISIEST, 12);
    expect(two(0.51)).toBeNull();
  });
});
