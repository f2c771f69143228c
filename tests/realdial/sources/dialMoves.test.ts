import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { exact } from "../../../src/lock/exact";
import { DialMoves } from "../../../src/realdial/sources/dialMoves";

describe("turns of a device as moves of a dial", () => {
  test("do not drift, however many steps there are and however large", () => {
    const steps = fc.array(fc.integer({ min: -3000, max: 3000 }), { maxLength: 400 });
    fc.assert(
      fc.property(steps, fc.constantFrom(60, 100), fc.constantFrom(96, 2400, 4000), (all, perTurn, counts) => {
        const moves = new DialMoves(perTurn);
        moves.takeUp(0);
        let count = 0;
        let dial = 0;
        for (const step of all) {
          count += step;
          dial = exact(dial + moves.moveTo(count / counts));
        }
        expect(dial).toBe(exact((count / counts) * perTurn));
      }),
    );
  });

  test("begin where the device is taken up, at first and after it was lost", () => {
    const moves = new DialMoves(100);
    expect(moves.moveTo(3.5)).toBe(0);
    expect(moves.moveTo(3.25)).toBe(-25);
    moves.takeUp(7);
    expect(moves.moveTo(7.01)).toBe(1);
  });
});
