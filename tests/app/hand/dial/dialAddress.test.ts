import { expect, test } from "vitest";
import { fitOf, fitQuery, weightOf, withWeight } from "../../../../src/app/hand/dial/dialAddress";

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
  expect(fitOf(asked("index=99&play=-1"), problems)).toBeUndefined();
  expect(problems).toHaveLength(2);
});

test("an address asks for a key in another keyway, a dial off its axis and a key that rides on the lever, and is written the same way", () => {
  const problems: string[] = [];
  const fit = {
    indexOffset: 0.5,
    lostMotion: 0.25,
    keyedOff: 25,
    runout: { size: 0.3, at: 40 },
    catching: { drag: 2, at: 50, arc: 12.5 },
  };
  expect(fitOf(asked(fitQuery(fit)), problems)).toEqual(fit);
  expect(problems).toEqual([]);
  for (const query of [
    "round=0.3",
    "round=9,0",
    "round=,",
    "catch=2,50",
    "catch=-1,0,0",
    "catch=a,b,c",
    "keyed=-1",
    "keyed=x",
  ]) {
    expect(fitOf(asked(query), problems)).toBeUndefined();
  }
  expect(problems).toHaveLength(8);
});
