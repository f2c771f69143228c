import type { CombinationRules } from "../../src/lock/profile";

/*
 * An oracle for the rules of combinations: the words of the rules file read once more, number by number, on every
 * combination of a dial. It shares no code with src/drill, and takes any time it likes.
 */

const inRanges = (number: number, ranges: readonly (number | readonly [number, number])[]): boolean => {
  for (const range of ranges) {
    if (typeof range === "number" ? range === number : range[0] <= number && number <= range[1]) return true;
  }
  return false;
};

const everyTwo = (numbers: readonly number[], isFine: (a: number, b: number) => boolean): boolean => {
  for (let i = 0; i < numbers.length; i++) {
    for (let j = 0; j < i; j++) if (!isFine(numbers[i] as number, numbers[j] as number)) return false;
  }
  return true;
};

const steps = (numbers: readonly number[], isStep: (from: number, to: number) => boolean): boolean => {
  for (let i = 1; i < numbers.length; i++) if (!isStep(numbers[i - 1] as number, numbers[i] as number)) return false;
  return true;
};

const farEnough = (a: number, b: number, least: number, turn: number | undefined): boolean => {
  const plain = a > b ? a - b : b - a;
  return plain >= least && (turn === undefined || turn - plain >= least);
};

const tensKept = (numbers: readonly number[], reading: CombinationRules["multiplesOfTen"]): boolean => {
  if (reading === "numbers") return numbers.every((number) => number % 10 !== 0);
  return reading !== "differences" || everyTwo(numbers, (a, b) => (a - b) % 10 !== 0);
};

const thirdsKept = (numbers: readonly number[], perTurn: number): boolean => {
  const cuts = [0, perTurn / 3, (2 * perTurn) / 3, perTurn];
  return [0, 1, 2].every((third) =>
    numbers.some((number) => number >= (cuts[third] as number) && number < (cuts[third + 1] as number)),
  );
};

type Rule = (numbers: readonly number[], rules: CombinationRules, perTurn: number) => boolean;

/** Each rule in turn: kept, or broken. */
const RULES: readonly Rule[] = [
  (numbers, { minSeparation = 0, circular }, perTurn) =>
    minSeparation <= 0 ||
    everyTwo(numbers, (a, b) => farEnough(a, b, minSeparation, circular === true ? perTurn : undefined)),
  (numbers, { excludedLast = [] }) => !inRanges(numbers[numbers.length - 1] as number, excludedLast),
  (numbers, { excluded = [] }) => excluded.length === 0 || !numbers.some((number) => inRanges(number, excluded)),
  (numbers, { noStraight }) =>
    noStraight !== true || !(steps(numbers, (a, b) => a < b) || steps(numbers, (a, b) => a > b)),
  (numbers, { notAllEven }) => notAllEven !== true || numbers.some((number) => number % 2 !== 0),
  (numbers, { notAllOdd }) => notAllOdd !== true || numbers.some((number) => number % 2 === 0),
  (numbers, { multiplesOfTen }) => tensKept(numbers, multiplesOfTen),
  (numbers, { oneFromEachThird }, perTurn) => oneFromEachThird !== true || thirdsKept(numbers, perTurn),
];

/** Whether a combination keeps every rule. */
export function keepsRules(numbers: readonly number[], rules: CombinationRules, perTurn: number): boolean {
  for (const rule of RULES) if (!rule(numbers, rules, perTurn)) return false;
  return true;
}

/** Every combination of whole numbers on a dial, in the order of an odometer. */
export function* everyCombination(perTurn: number, wheels: number): Generator<readonly number[]> {
  const numbers = Array.from({ length: wheels }, () => 0);
  for (;;) {
    yield [...numbers];
    let wheel = wheels - 1;
    while (wheel >= 0 && numbers[wheel] === perTurn - 1) numbers[wheel--] = 0;
    if (wheel < 0) return;
    numbers[wheel] = (numbers[wheel] as number) + 1;
  }
}

/** How many combinations keep every rule, by looking at each. */
export function countByListing(rules: CombinationRules, perTurn: number, wheels: number): number {
  let count = 0;
  for (const numbers of everyCombination(perTurn, wheels)) if (keepsRules(numbers, rules, perTurn)) count += 1;
  return count;
}
