import { describe, expect, test } from "vitest";
import { slantOf, TurnAndShift } from "../../../src/realdial/ordinary/match/turnAndShift";
import { poseOf } from "../../../src/realdial/ordinary/pose/dialPose";
import { AROUND } from "../../../src/realdial/ordinary/pose/ring";
import { beginOf, PIECE_COLUMNS, PIECES } from "../../../src/realdial/ordinary/strip/pieces";
import { seeded } from "../../support/seeded";

const RADIANS = Math.PI / 180;
const COLUMNS = AROUND / (2 * Math.PI);
const middleOf = (piece: number) => (2 * Math.PI * (beginOf(piece) + PIECE_COLUMNS / 2)) / AROUND;
const mean = (of: readonly number[]) => of.reduce((sum, one) => sum + one, 0) / of.length;

/** The pose of a dial that a far camera sees aslant by an angle, from a direction (degrees). */
const aslant = (tilt: number, from: number) => {
  const sine = Math.sin(tilt * RADIANS);
  const toward = [sine * Math.cos(from * RADIANS), sine * Math.sin(from * RADIANS)] as const;
  return poseOf({ middle: { x: 0, y: 0 }, tilt: toward, size: 100 }, 1e9);
};

/**
 * How far left (columns) each piece of a dial is seen that wobbles: points of a circle in a plane tipped by an angle (degrees),
 * looked at along a line of sight, which is followed to the plane of the dial that does not wobble.
 */
function seenThrough(wobble: number, wobbleTo: number, tilt: number, from: number): number[] {
  const sight = Math.tan(tilt * RADIANS);
  return Array.from({ length: PIECES }, (_, piece) => {
    const at = middleOf(piece);
    const height = Math.tan(wobble * RADIANS) * Math.cos(at - wobbleTo * RADIANS);
    const x = Math.cos(at) - height * sight * Math.cos(from * RADIANS);
    const y = Math.sin(at) - height * sight * Math.sin(from * RADIANS);
    return COLUMNS * Math.atan2(Math.cos(at) * y - Math.sin(at) * x, Math.cos(at) * x + Math.sin(at) * y);
  });
}

describe("a wobble that looks like a turn is told from one", () => {
  test.each([
    { tilt: 30, from: 0, wobbleTo: 0 },
    { tilt: 30, from: 250, wobbleTo: 90 },
    { tilt: 20, from: 130, wobbleTo: 20 },
    { tilt: 35, from: 300, wobbleTo: 215 },
  ])("tilt $tilt from $from, wobble to $wobbleTo", ({ tilt, from, wobbleTo }) => {
    const turned = 0.37;
    const seen = seenThrough(1, wobbleTo, tilt, from);
    const fit = new TurnAndShift(slantOf(aslant(tilt, from)));
    seen.forEach((off, piece) => {
      fit.add(piece, off + turned, 1);
    });
    // A hundredth of a graduation is 0.1 columns.
    expect(Math.abs(fit.solved().turn - turned)).toBeLessThan(0.05);
  });

  test("which a face that is taken to be seen from before it does not tell", () => {
    const fit = new TurnAndShift([0, 0, 0]);
    seenThrough(1, 90, 30, 0).forEach((off, piece) => {
      fit.add(piece, off, 1);
    });
    expect(Math.abs(fit.solved().turn)).toBeGreaterThan(0.7);
  });
});

describe("the standard error is what turns scatter by", () => {
  test.each([
    { shown: "all of the ring", part: 1, most: 1.25 },
    { shown: "half of it", part: 0.5, most: 1.25 },
    // What is held, for want of knowing, does not scatter: it is told all the same.
    { shown: "a quarter", part: 0.25, most: 6 },
  ])("$shown", ({ part, most }) => {
    const chance = seeded(11);
    const noise = () => Math.sqrt(12) * (chance() + chance() + chance() + chance() - 2) * 0.5;
    const draws = Array.from({ length: 400 }, () => {
      const fit = new TurnAndShift(slantOf(aslant(25, 200)));
      for (let piece = 0; piece < PIECES; piece++) if (middleOf(piece) < 2 * Math.PI * part) fit.add(piece, noise(), 1);
      return fit.solved();
    });
    const scatter = Math.sqrt(mean(draws.map(({ turn }) => turn * turn)));
    const told = Math.sqrt(mean(draws.map(({ error }) => error * error)));
    expect(told / scatter).toBeGreaterThan(0.85);
    expect(told / scatter).toBeLessThan(most);
  });

  test.each([0, 1, 2])("and nothing is known where only %i pieces speak", (pieces) => {
    const fit = new TurnAndShift([0, 0, 0]);
    for (let piece = 0; piece < pieces; piece++) fit.add(20 * piece, 0.1 * piece, 1);
    fit.add(100, 0.4, 0);
    expect(fit.solved().error).toBe(Number.POSITIVE_INFINITY);
  });
});
