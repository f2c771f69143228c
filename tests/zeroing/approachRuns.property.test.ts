import fc from "fast-check";
import { expect, test } from "vitest";
import { ApproachRuns, TREMBLE } from "../../src/zeroing/approachRuns";

const move = fc.integer({ min: -640, max: 640 }).map((n) => n / 64);
const moves = fc.array(move, { maxLength: 30 });

function runsOf(by: readonly number[], sign = 1) {
  const runs = new ApproachRuns(0);
  let position = 0;
  for (const one of by) {
    position += sign * one;
    runs.moveTo(position);
  }
  const { turn, length, lengthBefore } = runs;
  return { turn, length, lengthBefore };
}

const flipped = { left: "right", right: "left" } as const;

test("a mirrored hand makes mirrored runs", () => {
  fc.assert(
    fc.property(moves, (by) => {
      const { turn, ...lengths } = runsOf(by);
      expect(runsOf(by, -1)).toEqual({ turn: turn && flipped[turn], ...lengths });
    }),
  );
});

test("stopping on the way changes nothing", () => {
  fc.assert(
    fc.property(moves, fc.integer({ min: 1, max: 5 }), (by, parts) => {
      const inParts = by.flatMap((one) => Array.from({ length: 2 ** parts }, () => one / 2 ** parts));
      expect(runsOf(inParts)).toEqual(runsOf(by));
    }),
  );
});

test("whatever came before, a long turn counts but for a tremble", () => {
  fc.assert(
    fc.property(moves, (by) => {
      const { turn, length } = runsOf([...by, 64]);
      expect(turn).toBe("left");
      expect(length).toBeGreaterThanOrEqual(64 - TREMBLE);
    }),
  );
});
