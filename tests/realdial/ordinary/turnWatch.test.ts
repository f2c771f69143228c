import { expect, test } from "vitest";
import { type TurnHint, TurnWatch } from "../../../src/realdial/ordinary/turnWatch";

const picture = (level: number) => ({ width: 2, height: 2, data: new Uint8Array(4).fill(level) });
const LIT = picture(120);

/** What is said after a turn was seen at these places, graduations; null is a picture in which it was not recognized. */
function said(places: readonly (number | null)[], image = LIT): TurnHint | null {
  const watch = new TurnWatch();
  let [turnedBy, missedInARow] = [0, 0];
  let hint: TurnHint | null = null;
  for (const place of places) {
    missedInARow = place === null ? missedInARow + 1 : 0;
    turnedBy = place ?? turnedBy;
    hint = watch.look(image, { turnedBy, missedInARow });
  }
  return hint;
}

const slowly = (from: number, to: number) =>
  Array.from({ length: 2 * Math.abs(to - from) + 1 }, (_, k) => from + (Math.sign(to - from) * k) / 2);

test.each<[string, readonly (number | null)[], TurnHint | null]>([
  ["a slow turn left", slowly(0, 40), null],
  ["a slow turn right", slowly(0, -40), null],
  ["a leap from picture to picture", [...slowly(0, 5), 7], "too-fast"],
  ["a hand that takes hold anew and slips a little", [...slowly(0, 40), ...slowly(40, 39)], null],
  ["turning back", [...slowly(0, 40), ...slowly(40, 30)], "turned-back"],
  ["turning back a turn to the right", [...slowly(0, -40), ...slowly(-40, -30)], "turned-back"],
  ["on again after it was turned back", [...slowly(0, 20), ...slowly(20, 10), ...slowly(10, 21)], null],
  ["a picture or two without the dial", [...slowly(0, 10), null, null], null],
  ["a hand that stays over it", [...slowly(0, 10), null, null, null, null], "covered"],
  ["one that was fast and is gone", [0, 1, 2, 3, null, null, null, null], "too-fast"],
])("%s", (_, places, hint) => {
  expect(said(places)).toBe(hint);
});

test("a dark picture is too dark, whatever is seen in it", () => {
  expect(said([0, 1], picture(10))).toBe("too-dark");
  expect(said([0, null, null, null, null, null], picture(10))).toBe("too-dark");
});
