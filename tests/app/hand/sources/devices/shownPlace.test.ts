import { expect, test } from "vitest";
import type { DialInHand } from "../../../../../src/app/hand/sources/deviceSlot";
import { halfText, shownNumber, shownPlace } from "../../../../../src/app/hand/sources/devices/shownPlace";

/** A dial on the screen whose drawn index reads this, unwrapped. */
const dialAt = (seen: number, perTurn = 100) =>
  ({ perTurn, drawn: () => ({ seen }), screenMoves: 0, turn: () => undefined }) as unknown as DialInHand;

test("a dial is where its index reads, and the other way round for a device that counts so", () => {
  expect(shownPlace(dialAt(130), false)).toEqual({ turns: 1.3, number: 30, perTurn: 100, keepsMoves: false });
  expect(shownPlace(dialAt(-15, 60), true)).toEqual({ turns: 0.25, number: 45, perTurn: 60, keepsMoves: false });
  expect(shownPlace(undefined, false)).toBeNull();
});

test.each([
  [30.2, "30"],
  [30.3, "30.5"],
  [30.8, "31"],
  [0, "0"],
  // The last quarter of a graduation of the turn is 0 again.
  [99.8, "0"],
])("the number %f is said as %s", (number, text) => {
  expect(halfText({ number, perTurn: 100 })).toBe(text);
  expect(shownNumber(dialAt(number))).toBe(text);
});
