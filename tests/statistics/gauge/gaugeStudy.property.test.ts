import fc from "fast-check";
import { expect, test } from "vitest";
import { contributionShare, distinctCategories } from "../../../src/statistics/gauge/gaugeComponents";
import { gaugeStudy } from "../../../src/statistics/gauge/gaugeStudy";
import { spread } from "../../../src/statistics/sample";
import { StatisticsError } from "../../../src/statistics/statisticsError";

const reading = fc.integer({ min: -640, max: 640 }).map((n) => n / 64);
const list = <T>(item: fc.Arbitrary<T>, length: number) => fc.array(item, { minLength: length, maxLength: length });
const study = fc
  .tuple(fc.integer({ min: 2, max: 6 }), fc.integer({ min: 2, max: 3 }), fc.integer({ min: 2, max: 3 }))
  .chain(([parts, appraisers, trials]) => list(list(list(reading, trials), appraisers), parts))
  .filter((measurements) => spread(measurements.flat(2)) > 0);

test("the lines of the table add up, in squares and in degrees of freedom", () => {
  fc.assert(
    fc.property(study, (measurements) => {
      const { part, appraiser, interaction, equipment, total } = gaugeStudy(measurements).table;
      const parts = [part, appraiser, interaction, equipment];
      expect(parts.reduce((sum, line) => sum + line.sumOfSquares, 0)).toBeCloseTo(total.sumOfSquares, 7);
      expect(parts.reduce((sum, line) => sum + line.degreesOfFreedom, 0)).toBe(total.degreesOfFreedom);
    }),
  );
});

test("contributions add up to the whole, pooled or not", () => {
  fc.assert(
    fc.property(study, fc.constantFrom(0, 0.25, 1), (measurements, poolingLevel) => {
      const { components } = gaugeStudy(measurements, poolingLevel);
      const sum = (["equipment", "appraiser", "interaction", "part"] as const)
        .map((name) => contributionShare(components, name))
        .reduce((a, b) => a + b);
      expect(sum).toBeCloseTo(1, 9);
    }),
  );
});

test("a common offset does not matter", () => {
  fc.assert(
    fc.property(study, fc.integer({ min: -1000, max: 1000 }), (measurements, offset) => {
      fc.pre(spread(measurements.flat(2)) > 1);
      const moved = measurements.map((part) => part.map((cell) => cell.map((value) => value + offset)));
      expect(gaugeStudy(moved, 1).components.total).toBeCloseTo(gaugeStudy(measurements, 1).components.total, 5);
    }),
  );
});

test("a gauge that does not vary tells any number of parts apart", () => {
  const perfect = [1, 2, 3].map((value) => [
    [value, value],
    [value, value],
  ]);
  const { components, interactionRatio } = gaugeStudy(perfect);
  expect(components.gauge).toBe(0);
  expect(interactionRatio).toEqual({ f: 0, p: 1 });
  expect(distinctCategories(components)).toBe(Infinity);
});

const cell = [1, 2];
test.each([
  ["nothing", [], "empty-sample"],
  ["one part", [[cell, cell]], "too-few-values"],
  ["one appraiser", [[cell], [cell]], "too-few-values"],
  [
    "one trial",
    [
      [[1], [2]],
      [[3], [4]],
    ],
    "too-few-values",
  ],
  ["a missing appraiser", [[cell, cell], [cell]], "unbalanced"],
  [
    "a missing trial",
    [
      [cell, cell],
      [cell, [1]],
    ],
    "unbalanced",
  ],
  [
    "a value that is none",
    [
      [cell, cell],
      [cell, [1, Number.NaN]],
    ],
    "not-finite",
  ],
  [
    "equal values",
    [
      [
        [1, 1],
        [1, 1],
      ],
      [
        [1, 1],
        [1, 1],
      ],
    ],
    "no-spread",
  ],
])("%s is no gauge study", (_why, measurements, code) => {
  expect(() => gaugeStudy(measurements)).toThrow(StatisticsError);
  expect(() => gaugeStudy(measurements)).toThrow(expect.objectContaining({ code }));
});
