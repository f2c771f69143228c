import type { Combination } from "../../lock/combination";
import { type Graduations, wrap } from "../../lock/dial";
import type { CombinationRules } from "../../lock/profile";
import type { Problem } from "../../wording/problem";
import { combinationProblem } from "../combinationWords";

/** A rule that a combination breaks, and how. */
export interface BrokenRule {
  readonly rule: keyof CombinationRules;
  readonly problem: Problem;
  readonly source: string;
}

const HANDBOOK = "MIL-HDBK-1013/8 (1989), section 2";
const COMMON = "common practice, no source";

const SOURCES: Readonly<Record<keyof CombinationRules, string>> = {
  minSeparation: `${HANDBOOK}, item e.1`,
  circular: COMMON,
  excludedLast: `${HANDBOOK}, item e.2`,
  noStraight: `${HANDBOOK}, item e.3`,
  notAllEven: `${HANDBOOK}, item e.4`,
  notAllOdd: `${HANDBOOK}, item e.5`,
  multiplesOfTen: `${HANDBOOK}, item e.1`,
  oneFromEachThird: 'NAVEDTRA 14244, "Securing a Security Container"',
  excluded: "own rule of this lock or drill, no source",
};

type Pair = readonly [Graduations, Graduations];

const pairs = (numbers: Combination): Pair[] =>
  numbers.flatMap((one, i) => numbers.slice(i + 1).map((other): Pair => [one, other]));

const apart = ([a, b]: Pair, perTurn: number, circular: boolean) =>
  circular ? Math.abs(wrap(a - b, perTurn)) : Math.abs(a - b);

const isMultipleOfTen = (value: number) => Math.abs(value) % 10 === 0;

/** A rule's check: what is wrong with the numbers, or undefined. */
type Check = (numbers: Combination, rules: CombinationRules, perTurn: number) => Problem | undefined;

const separation: Check = (numbers, { minSeparation = 0, circular = false }, perTurn) => {
  const pair = pairs(numbers).find((one) => apart(one, perTurn, circular) < minSeparation);
  if (pair === undefined) return undefined;
  const [one, other] = pair;
  return combinationProblem("too-close", [], {
    one,
    other,
    apart: apart(pair, perTurn, circular),
    least: minSeparation,
  });
};

/** Whether a number is one of those excluded, or lies in a closed range of them. */
export function isAmong(number: Graduations, excluded: NonNullable<CombinationRules["excluded"]>): boolean {
  return excluded.some((one) => (typeof one === "number" ? number === one : number >= one[0] && number <= one[1]));
}

const ownExclusions: Check = (numbers, { excluded = [] }) => {
  const number = numbers.find((one) => isAmong(one, excluded));
  return number === undefined ? undefined : combinationProblem("excluded", [], { number });
};

const lastNumber: Check = (numbers, { excludedLast = [] }) => {
  const last = numbers.at(-1);
  const range = excludedLast.find(([low, high]) => last !== undefined && last >= low && last <= high);
  return range && combinationProblem("excluded-last", [], { last, low: range[0], high: range[1] });
};

/**
 * Which way numbers go that ascend or descend strictly throughout.
 *
 * @returns "up", "down", or undefined where they turn about or stay
 */
export function straightWay(numbers: Combination): "up" | "down" | undefined {
  const steps = numbers.slice(1).map((number, k) => Math.sign(number - (numbers[k] ?? number)));
  const isStraight = steps.length > 0 && steps[0] !== 0 && steps.every((step) => step === steps[0]);
  return isStraight ? (steps[0] === 1 ? "up" : "down") : undefined;
}

const straight: Check = (numbers, { noStraight }) => {
  const way = noStraight === true ? straightWay(numbers) : undefined;
  return way && combinationProblem("straight", [], { way });
};

const allEven: Check = (numbers, { notAllEven }) =>
  notAllEven === true && numbers.every((number) => number % 2 === 0) ? combinationProblem("all-even", []) : undefined;

const allOdd: Check = (numbers, { notAllOdd }) =>
  notAllOdd === true && numbers.every((number) => number % 2 === 1) ? combinationProblem("all-odd", []) : undefined;

const tens: Check = (numbers, { multiplesOfTen }) => {
  if (multiplesOfTen === "numbers") {
    const number = numbers.find(isMultipleOfTen);
    return number === undefined ? undefined : combinationProblem("multiple-of-ten", [], { number });
  }
  if (multiplesOfTen !== "differences") return undefined;
  const pair = pairs(numbers).find(([a, b]) => isMultipleOfTen(a - b));
  return pair && combinationProblem("tens-apart", [], { one: pair[0], other: pair[1] });
};

/** Which third of the dial a number lies in: 0, 1 or 2. */
export function thirdOf(number: Graduations, perTurn: number): number {
  return Math.floor((3 * number) / perTurn);
}

const thirds: Check = (numbers, { oneFromEachThird }, perTurn) => {
  if (oneFromEachThird !== true) return undefined;
  const taken = new Set(numbers.map((number) => thirdOf(number, perTurn)));
  return taken.size < 3 ? combinationProblem("thirds-missing", []) : undefined;
};

const CHECKS: readonly (readonly [keyof CombinationRules, Check])[] = [
  ["minSeparation", separation],
  ["excludedLast", lastNumber],
  ["noStraight", straight],
  ["notAllEven", allEven],
  ["notAllOdd", allOdd],
  ["multiplesOfTen", tens],
  ["oneFromEachThird", thirds],
  ["excluded", ownExclusions],
];

/**
 * Every rule that a combination breaks, with its source.
 *
 * @param numbers - readings in dialing order
 * @param perTurn - graduations in one turn of the dial
 */
export function explain(numbers: Combination, rules: CombinationRules, perTurn: number): BrokenRule[] {
  return CHECKS.flatMap(([rule, check]) => {
    const problem = check(numbers, rules, perTurn);
    return problem === undefined ? [] : [{ rule, problem, source: SOURCES[rule] }];
  });
}
