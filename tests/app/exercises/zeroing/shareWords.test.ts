import { expect, test } from "vitest";
import { shareWords } from "../../../../src/app/exercises/zeroing/shareWords";

const TOLERANCE = 1;

test.each([
  { zero: 0.1, fit: 0, hand: 0.7, words: "inside the tolerance" },
  { zero: 0, fit: 0.6, hand: 0.7, words: "the hand and the fit together" },
  { zero: 0, fit: -0.6, hand: -0.7, words: "the hand and the fit together" },
  { zero: 0.4, fit: 0.4, hand: 0.4, words: "the zero, the fit and the hand together" },
  { zero: 0, fit: 0.3, hand: 1.2, words: "mostly the hand" },
  { zero: 0, fit: 1.6, hand: -0.4, words: "mostly the fit" },
  { zero: -1.5, fit: 0.4, hand: 0, words: "mostly the zero" },
])("what takes a stop out of the tolerance: %j", ({ zero, fit, hand, words }) => {
  const share = { number: 50, total: zero + fit + hand, fromZero: zero, fromFit: fit, fromHand: hand };
  expect(shareWords(share, TOLERANCE)).toBe(words);
});
