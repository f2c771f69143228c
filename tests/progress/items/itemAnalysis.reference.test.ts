import fc from "fast-check";
import jstat from "jstat";
import { expect, test } from "vitest";
import { itemAnalysis, type PersonsItems } from "../../../src/progress/items/itemAnalysis";

const met = (scores: Readonly<Record<string, number>>): PersonsItems =>
  Object.entries(scores).map(([item, score]) => ({ item, score }));

/*
 * Worked by hand: five people, three questions. Rest of A (mean of B and C): 1, 1/2, 1/2, 0, 0; A: 1, 1, 0, 1, 0.
 * Means 2/5 and 3/5. Products of deviations: 2/5*3/5 + 2/5*1/10 + -3/5*1/10 + 2/5*-2/5 + -3/5*-2/5 = 0.3.
 * Squares: of A 1.2, of the rest 0.7. So r = 0.3 / sqrt(1.2 * 0.7) = 0.32733.
 */
const FIVE = [
  met({ A: 1, B: 1, C: 1 }),
  met({ A: 1, B: 1, C: 0 }),
  met({ A: 0, B: 1, C: 0 }),
  met({ A: 1, B: 0, C: 0 }),
  met({ A: 0, B: 0, C: 0 }),
];

test("five people and three questions, worked by hand", () => {
  const [a, b, c] = itemAnalysis(FIVE);
  expect(a).toMatchObject({ item: "A", people: 5, share: 0.6 });
  expect(a?.discrimination).toBeCloseTo(0.3 / Math.sqrt(1.2 * 0.7), 12);
  // Newcombe (1998), method 3, by its formula for 3 of 5.
  expect(a?.interval?.low).toBeCloseTo(0.23072, 4);
  expect(a?.interval?.high).toBeCloseTo(0.88238, 4);
  // Rest of B (mean of A and C): 1, 1/2, 0, 1/2, 0; of C (mean of A and B): 1, 1, 1/2, 1/2, 0.
  expect(b?.discrimination).toBeCloseTo(0.3 / Math.sqrt(1.2 * 0.7), 12);
  expect(c?.discrimination).toBeCloseTo(0.4 / Math.sqrt(0.8 * 0.7), 12);
});

test("the interval of a discrimination, by Fisher's transformation worked with another library's quantile", () => {
  const [a] = itemAnalysis(FIVE);
  const z = jstat.normal.inv(0.975, 0, 1) / Math.sqrt(2);
  const center = 0.5 * Math.log((1 + 0.3273268) / (1 - 0.3273268));
  expect(a?.discriminationInterval?.low).toBeCloseTo(Math.tanh(center - z), 6);
  expect(a?.discriminationInterval?.high).toBeCloseTo(Math.tanh(center + z), 6);
});

test.each([
  { why: "nobody but two", people: [met({ A: 1, B: 0 }), met({ A: 0, B: 1 })] },
  { why: "all the same here", people: [met({ A: 1, B: 0 }), met({ A: 1, B: 1 }), met({ A: 1, B: 0 })] },
  { why: "all the same elsewhere", people: [met({ A: 1, B: 1 }), met({ A: 0, B: 1 }), met({ A: 1, B: 1 })] },
  { why: "no other item", people: [met({ A: 1 }), met({ A: 0 }), met({ A: 1 })] },
])("with $why there is no discrimination", ({ people }) => {
  expect(itemAnalysis(people)[0]?.discrimination).toBeNull();
});

test("an item is told of those who met it alone", () => {
  const people = [met({ A: 1, B: 1 }), met({ A: 0, C: 0 }), met({ B: 0, C: 1 })];
  expect(itemAnalysis(people).map(({ item, people: count, share }) => [item, count, share])).toEqual([
    ["A", 2, 0.5],
    ["B", 2, 0.5],
    ["C", 2, 0.5],
  ]);
});

test("shares of a station have an interval of their mean, never outside of 0 and 1", () => {
  const [station] = itemAnalysis([0.9, 1, 0.8, 1].map((score) => met({ S: score })));
  const scores = [0.9, 1, 0.8, 1];
  const reach = (jstat.studentt.inv(0.975, 3) * jstat.stdev(scores, true)) / 2;
  expect(station?.share).toBeCloseTo(0.925, 12);
  expect(station?.interval?.low).toBeCloseTo(0.925 - reach, 9);
  expect(station?.interval?.high).toBe(1);
  expect(itemAnalysis([met({ S: 0.5 })])[0]?.interval).toBeNull();
});

// Judge: jstat's normal and Student quantiles, mean and standard deviation; and figures worked by hand.

/** The textbook's formula of the point-biserial correlation: by the means of those right and wrong. */
function byMeans(pairs: readonly (readonly [score: number, rest: number])[]): number {
  const rests = pairs.map(([, rest]) => rest);
  const right = pairs.filter(([score]) => score === 1).map(([, rest]) => rest);
  const wrong = pairs.filter(([score]) => score === 0).map(([, rest]) => rest);
  const p = right.length / pairs.length;
  return ((jstat.mean(right) - jstat.mean(wrong)) / jstat.stdev(rests, false)) * Math.sqrt(p * (1 - p));
}

test("of right and wrong it is the point-biserial correlation by its own formula", () => {
  const bit = fc.constantFrom(0, 1);
  const person = fc.tuple(bit, bit, bit, bit);
  fc.assert(
    fc.property(fc.array(person, { minLength: 3, maxLength: 30 }), (people) => {
      const [first] = itemAnalysis(people.map(([A, B, C, D]) => met({ A, B, C, D })));
      if (first?.discrimination === null || first === undefined) return;
      const pairs = people.map(([A, B, C, D]) => [A, (B + C + D) / 3] as const);
      expect(first.discrimination).toBeCloseTo(byMeans(pairs), 9);
    }),
  );
});
