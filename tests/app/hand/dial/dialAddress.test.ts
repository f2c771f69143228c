import { expect, test } from "vitest";
import { fitOf, weightOf, withWeight } from "../../../../src/app/hand/dial/dialAddress";

const asked = (query: string) => new URLSearchParams(query);

test("an address asks for a weight of the dial; as it should be where there is no such weight", () => {
  expect([weightOf(asked("dial=heavy")), weightOf(asked("dial=stuck")), weightOf(asked(""))]).toEqual([
    "heavy",
    "usual",
    "usual",
  ]);
});

test.each([
  ["#/zeroing", "heavy", "#/zeroing?dial=heavy"],
  ["#/handover?view=change&seed=5", "light", "#/handover?view=change&seed=5&dial=light"],
  ["#/handover?view=change&dial=light&seed=5", "heavy", "#/handover?view=change&dial=heavy&seed=5"],
  ["#/handover?view=holdback&dial=light", "usual", "#/handover?view=holdback"],
  ["#/zeroing?dial=light", "usual", "#/zeroing"],
] as const)("%s with a dial that is %s is %s", (hash, weight, next) => {
  expect(withWeight(hash, weight)).toBe(next);
});

test("an address asks for an index that stands off and for play, and what is no size is told", () => {
  const problems: string[] = [];
  expect(fitOf(asked("index=-0.5&play=1"), problems)).toEqual({ indexOffset: -0.5, lostMotion: 1 });
  expect(fitOf(asked(""), problems)).toBeUndefined();
  expect(problems).toEqual([]);
  expect(fitOf(asked("index=9&play=-1"), problems)).toBeUndefined();
  expect(problems).toHaveLength(2);
});
