import fc from "fast-check";
import type { CombinationRules } from "../../src/lock/profile";

const flag = fc.option(fc.boolean(), { nil: undefined });

/** Any rules for a dial, sensible or not. */
export const anyRules = (perTurn: number): fc.Arbitrary<CombinationRules> => {
  const mark = fc.integer({ min: 0, max: perTurn });
  const range = fc.tuple(mark, mark).map(([a, b]): [number, number] => [Math.min(a, b), Math.max(a, b)]);
  return fc.record({
    minSeparation: fc.option(
      fc.integer({ min: 0, max: perTurn }).map((halves) => halves / 2),
      { nil: undefined },
    ),
    circular: flag,
    excludedLast: fc.option(fc.array(range, { maxLength: 2 }), { nil: undefined }),
    noStraight: flag,
    notAllEven: flag,
    notAllOdd: flag,
    multiplesOfTen: fc.constantFrom("numbers", "differences", undefined),
    oneFromEachThird: flag,
    excluded: fc.option(fc.array(fc.oneof(mark, range), { maxLength: 3 }), { nil: undefined }),
  });
};
