import { expect, test } from "vitest";
import { handsCompared } from "../../src/progress/stops/handsCompared";
import { handOf } from "../../src/realdial/sources/handOf";
import { handsOf } from "../../src/realdial/sources/handsOf";
import { describeSource } from "../../src/realdial/sources/sourceDescription";
import { SCREEN_SOURCE } from "../../src/realdial/sources/sourcesSeen";
import { anAttempt, stopsOf } from "../support/logbookRecords";

const ENCODER = describeSource("encoder", 0.05);
const onScreen = [0.1, 0.2, 0.3].map((worst, k) => anAttempt(`s${k}`, { opened: true, stops: stopsOf(worst) }));
const byEncoder = [1.1, 1.2, 1.3].map((worst, k) =>
  anAttempt(`e${k}`, { opened: k === 0, stops: stopsOf(worst), sources: [ENCODER] }),
);

test.each([
  [undefined, "screen"],
  [[], "screen"],
  [[ENCODER], "encoder"],
  [[ENCODER, describeSource("encoder", 0.1)], "encoder"],
  [[ENCODER, SCREEN_SOURCE], "mixed"],
] as const)("%o: %s", (sources, hand) => {
  expect(handOf({ sources })).toBe(hand);
});

test("the hand used last comes first", () => {
  expect(handsOf([...byEncoder, ...onScreen])).toEqual(["screen", "encoder"]);
  expect(handsOf([...onScreen, ...byEncoder])).toEqual(["encoder", "screen"]);
});

test("each hand has its own openings, and its worst stop is compared with that on the screen", () => {
  const [encoder, screen] = handsCompared([...onScreen, ...byEncoder]);
  expect(screen).toMatchObject({ hand: "screen", openings: { opened: 3, trials: 3 }, worstStopMore: null });
  expect(encoder).toMatchObject({ hand: "encoder", openings: { opened: 1, trials: 3 } });
  expect(encoder?.worstStopMore?.difference).toBeCloseTo(1, 9);
  expect(encoder?.worstStopMore?.low).toBeGreaterThan(0);
});

test("one attempt is too few to compare", () => {
  expect(handsCompared([...onScreen, ...byEncoder.slice(0, 1)])[0]).toMatchObject({ worstStopMore: null });
});
