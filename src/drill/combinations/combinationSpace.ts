import type { Combination } from "../../lock/combination";
import type { CombinationRules } from "../../lock/profile";
import type { Chance } from "../../statistics/chance";
import { shuffled } from "../../statistics/shuffled";
import { AscendingSets } from "./ascendingSets";
import { explain, straightWay } from "./combinationRules";
import { FreeSequences } from "./freeSequences";
import { type NumberField, numberField } from "./numberField";

/** All whole-number combinations that rules allow on a dial, counted exactly and drawn without looking for them. */
export interface CombinationSpace {
  /** How many there are; exact, since 200^6 is below 2^53. */
  readonly count: number;
  /** One of them, each as likely as any other. Only where there is one. */
  draw(chance: Chance): Combination;
}

const factorial = (n: number): number => (n <= 1 ? 1 : n * factorial(n - 1));

const rankBelow = (count: number, chance: Chance) => Math.min(count - 1, Math.floor(chance() * count));

/** Orders that go straight up or down: one up for a set whose highest may come last, one down for its lowest. */
const straightOnes = (field: NumberField) =>
  new AscendingSets(field, "highest").count + new AscendingSets(field, "lowest").count;

/** Draws until a combination does not go straight. Of three numbers and more at least every other one does not. */
function drawCrooked(draw: () => Combination): Combination {
  for (;;) {
    const numbers = draw();
    if (straightWay(numbers) === undefined) return numbers;
  }
}

function distinctSpace(field: NumberField, isCrooked: boolean): CombinationSpace {
  const sets = new AscendingSets(field, "any");
  const count = sets.count * factorial(field.wheels - 1) - (isCrooked ? straightOnes(field) : 0);
  const drawAny = (chance: Chance): Combination => {
    const { others, last } = sets.at(rankBelow(sets.count, chance));
    return [...shuffled(others, chance), last];
  };
  return { count, draw: (chance) => (isCrooked ? drawCrooked(() => drawAny(chance)) : drawAny(chance)) };
}

function freeSpace(field: NumberField, isCrooked: boolean): CombinationSpace {
  const sequences = new FreeSequences(field);
  const drawAny = (chance: Chance): Combination => sequences.at(rankBelow(sequences.count, chance));
  return {
    count: sequences.count - (isCrooked ? straightOnes(field) : 0),
    draw: (chance) => (isCrooked ? drawCrooked(() => drawAny(chance)) : drawAny(chance)),
  };
}

/** Two numbers make at most 40,000 pairs: they are listed. Two different ones always go straight, so few may be left. */
function pairSpace(rules: CombinationRules, perTurn: number): CombinationSpace {
  const marks = Array.from({ length: perTurn }, (_, mark) => mark);
  const pairs = marks.flatMap((a) =>
    marks.map((b) => [a, b]).filter((pair) => explain(pair, rules, perTurn).length === 0),
  );
  return { count: pairs.length, draw: (chance) => pairs[rankBelow(pairs.length, chance)] ?? [] };
}

/** How often the table of ascending sets is filled: once for each bound of the highest number, and for each order. */
const fillings = ({ isCircular, separation }: NumberField, isCrooked: boolean) =>
  (isCircular ? separation + 1 : 1) * (isCrooked ? 3 : 1);

/**
 * How much work it is to count the combinations that rules allow: steps of some 20 to 50 nanoseconds, told before any
 * is made.
 */
export function countingWork(rules: CombinationRules, perTurn: number, wheels: number): number {
  if (wheels === 2) return perTurn ** 2;
  const field = numberField(rules, perTurn, wheels);
  const isCrooked = rules.noStraight === true;
  return perTurn * field.memory.states * (field.separation > 0 ? fillings(field, isCrooked) : wheels);
}

/**
 * The space of combinations under rules.
 *
 * By dynamic programming, not by listing: numbers that must differ are counted as ascending sets with a named last
 * number, times the orders of the others; numbers that may come twice are counted place by place; straight orders are
 * taken off.
 *
 * @param perTurn - graduations in one turn of the dial, an integer in [10, 200]
 * @param wheels - numbers of a combination, an integer in [2, 6]
 */
export function combinationSpace(rules: CombinationRules, perTurn: number, wheels: number): CombinationSpace {
  if (wheels === 2) return pairSpace(rules, perTurn);
  const field = numberField(rules, perTurn, wheels);
  const isCrooked = rules.noStraight === true;
  return field.separation > 0 ? distinctSpace(field, isCrooked) : freeSpace(field, isCrooked);
}
