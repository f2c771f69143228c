import { correlation, correlationInterval } from "../../statistics/correlation";
import { type Interval, USUAL_LEVEL } from "../../statistics/interval";
import { wilsonInterval } from "../../statistics/proportion";
import { mean, sampleSummary } from "../../statistics/sample";
import { studentInterval } from "../../statistics/studentInterval";

/** What one person came to at one item: at a question 0 or 1, at a station the share of its tries that were right. */
export interface ItemScore {
  /** Id of the question, or of the station. */
  readonly item: string;
  /** In [0, 1]. */
  readonly score: number;
}

/** All items that one person met, each at most once. Not everybody meets the same: questions are drawn. */
export type PersonsItems = readonly ItemScore[];

/** How hard an item proved, and how well it tells those who can from those who cannot. */
export interface ItemFigures {
  readonly item: string;
  /** People who met it. */
  readonly people: number;
  /** Mean score, in [0, 1]; of a question, the share of people who answered it right. */
  readonly share: number;
  /** 95 %, of the share; null where too few people met it. */
  readonly interval: Interval | null;
  /**
   * Correlation of the item with the rest, in [-1, 1]: of those who met it, their score here with their mean score at all
   * other items. Null where too few met it, or where all came to the same.
   */
  readonly discrimination: number | null;
  /** 95 %, rough; null where there is no discrimination or too few people. */
  readonly discriminationInterval: Interval | null;
}

/** Fewest people that a correlation says anything about. */
const LEAST_PEOPLE = 3;

/** A score at an item, with the mean score at all others. */
interface ScoreAndRest {
  readonly score: number;
  /** Null where there is no other item. */
  readonly rest: number | null;
}

function restOf(items: PersonsItems, item: string): number | null {
  const others = items.filter((one) => one.item !== item).map(({ score }) => score);
  return others.length === 0 ? null : mean(others);
}

function discriminationOf(
  met: readonly ScoreAndRest[],
): Pick<ItemFigures, "discrimination" | "discriminationInterval"> {
  const pairs = met.flatMap(({ score, rest }) => (rest === null ? [] : [{ score, rest }]));
  const found =
    pairs.length < LEAST_PEOPLE
      ? null
      : correlation(
          pairs.map(({ score }) => score),
          pairs.map(({ rest }) => rest),
        );
  return {
    discrimination: found,
    discriminationInterval: found === null ? null : correlationInterval(found, pairs.length),
  };
}

const isCounted = (scores: readonly number[]) => scores.every((score) => score === 0 || score === 1);

const withinOne = ({ low, high }: Interval): Interval => ({ low: Math.max(0, low), high: Math.min(1, high) });

/** Of right and wrong by Wilson; of shares by Student, for the tries of one hand are not as good as tries of as many. */
function intervalOf(scores: readonly number[]): Interval | null {
  if (isCounted(scores)) {
    return wilsonInterval(scores.filter((score) => score === 1).length, scores.length, USUAL_LEVEL);
  }
  return scores.length < 2 ? null : withinOne(studentInterval(sampleSummary(scores), USUAL_LEVEL));
}

/**
 * Difficulty and discrimination of each item, from one sitting of each person.
 *
 * The discrimination is the corrected one: an item is compared with the mean of all others, never with a sum that it is part
 * of. For a question that is the corrected point-biserial correlation. Source: Henrysson (1963), Psychometrika 28:211-218.
 * A mean in place of a sum, since people meet different items.
 *
 * @param people - each person once: what one person does twice says nothing new about an item
 * @returns in the order in which the items first appear
 */
export function itemAnalysis(people: readonly PersonsItems[]): ItemFigures[] {
  const items = [...new Set(people.flatMap((one) => one.map(({ item }) => item)))];
  return items.map((item) => {
    const met = people.flatMap((one) => {
      const here = one.find((score) => score.item === item);
      return here === undefined ? [] : [{ score: here.score, rest: restOf(one, item) }];
    });
    const scores = met.map(({ score }) => score);
    return { item, people: met.length, share: mean(scores), interval: intervalOf(scores), ...discriminationOf(met) };
  });
}
