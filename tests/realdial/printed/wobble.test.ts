import { describe, expect, test } from "vitest";
import { Wobble } from "../../../src/realdial/printed/wobble";

/** How the disc's rings are drawn out, and turned, by the map u -> g (t u): its symmetric and its other part. */
function seenOf(g: { x: number; y: number }, slope: { x: number; y: number }, turns: number) {
  const [cosine, sine] = [Math.cos(2 * Math.PI * turns), Math.sin(2 * Math.PI * turns)];
  // Turned to the left in a picture whose y runs down.
  const t = { x: cosine * slope.x + sine * slope.y, y: cosine * slope.y - sine * slope.x };
  return {
    along: (g.x * t.x - g.y * t.y) / 2,
    aslant: (g.x * t.y + g.y * t.x) / 2,
    // Clockwise where y runs down, which is to the right: it has to be added to turns to the left.
    turned: (g.y * t.x - g.x * t.y) / 2 / (2 * Math.PI),
  };
}

const SLOPE = { x: 0.015, y: -0.008 };
const PLACES = Array.from({ length: 40 }, (_, k) => k / 25);

describe("once a disc has turned,", () => {
  test.each([
    { x: 0.5, y: 0.1 },
    { x: -0.2, y: 0.55 },
    { x: 0, y: -0.6 },
  ])("what its wobble turns is known, with a camera aslant by $x $y", (g) => {
    const wobble = new Wobble();
    const left = PLACES.map((turns) => {
      const { along, aslant, turned } = seenOf(g, SLOPE, turns);
      return Math.abs(wobble.take(along, aslant, g, turns) - turned);
    });
    expect(Math.max(...left.slice(20))).toBeLessThan(0.0002);
  });

  test("what stays where it is turns nothing", () => {
    const wobble = new Wobble();
    const taken = PLACES.map((turns) => wobble.take(0.006, -0.004, { x: 0.5, y: 0.2 }, turns));
    expect(Math.abs(taken.at(-1) ?? 1)).toBeLessThan(0.0001);
    expect(Math.abs(taken[5] ?? 0)).toBeGreaterThan(0.0001);
  });
});

test("a camera that looks straight down shows no wobble, and is led astray by nothing", () => {
  const wobble = new Wobble();
  for (const turns of PLACES) expect(Math.abs(wobble.take(0.01, 0.01, { x: 0, y: 0 }, turns))).toBeLessThan(1e-12);
});
