import { type Graduations, signOf, type Turn } from "../lock/dial";
import { countWord, sizeText } from "../wording/amountWords";
import { REFUSALS, type Refusal } from "./approach";
import type { ZeroingRules } from "./zeroingRules";
import type { SideResult } from "./zeroResult";

/** What a whole calibration shows of a hand. */
export interface Calibration {
  readonly sides: Readonly<Record<Turn, SideResult>>;
  /** How often each reason for a refusal was given. */
  readonly reasons: Readonly<Record<Refusal, number>>;
}

/** Refusals of one kind from which they are a habit. */
const HABIT = 2;

/** Mean from which a hand is told that it leans one way, part of the tolerance. */
const LEANING = 0.2;

/** Standard deviation from which stops are told to be uneven, part of the largest spread that closes a series. */
const UNEVEN = 0.5;

/** What the hand did, and what to do instead. */
const HABITS: Readonly<Record<Refusal, readonly [string, string]>> = {
  "not-at-rest": ["You recorded too soon", "count to one after the dial has stopped."],
  "same-stop": ["You recorded a stop twice", "each stop needs a turn of its own."],
  "wrong-way": ["You turned the wrong way", "say the direction aloud before you take hold."],
  "came-back": ["You turned back", "once past zero go round again; coming back leaves the play on the other side."],
  "too-short": ["You began your approach too late", "begin the turn a good quarter turn before zero."],
  "off-the-mark": ["You stopped far off", "slow down over the last ten graduations before zero."],
};

const times = (count: number) => (count === 2 ? "twice" : `${countWord(count)} times`);

const habits = (reasons: Calibration["reasons"]): string[] =>
  REFUSALS.filter((reason) => reasons[reason] >= HABIT)
    .sort((a, b) => reasons[b] - reasons[a])
    .map((reason) => `${HABITS[reason][0]}, ${times(reasons[reason])}: ${HABITS[reason][1]}`);

/** Whether a mean is off zero by more than its interval leaves open, and by enough to be worth a word. */
const isLeaning = ({ ci95, mean }: SideResult, { tolerance }: ZeroingRules) =>
  Math.abs(mean) >= LEANING * tolerance && (ci95.low > 0 || ci95.high < 0);

/** A mean along its turn, graduations: positive ran past. */
const along = (turn: Turn, { mean }: SideResult): Graduations => signOf(turn) * mean;

const leaning = (turn: Turn, side: SideResult, rules: ZeroingRules): string[] => {
  if (!isLeaning(side, rules)) return [];
  const where = side.mean > 0 ? "left" : "right";
  const by = `${sizeText(side.mean)} graduations`;
  return along(turn, side) > 0
    ? [`Turning ${turn} you stopped ${where} of zero again and again, ${by} past it on average: begin to slow earlier.`]
    : [
        `Turning ${turn} you stopped ${where} of zero again and again, ${by} short of it on average: let the mark come fully to the index.`,
      ];
};

/** A hand that leans to the same side of the index from both directions looks at it from one side. */
const slant = ({ right, left }: Calibration["sides"], rules: ZeroingRules): string[] => {
  const isSlanted = isLeaning(right, rules) && isLeaning(left, rules) && right.mean * left.mean > 0;
  if (!isSlanted) return [];
  const where = right.mean > 0 ? "left" : "right";
  return [`Turning either way, you stopped ${where} of zero: look at the index straight on, not from one side.`];
};

const unevenness = (turn: Turn, { sd }: SideResult, { spreadLimit }: ZeroingRules): string[] =>
  sd > UNEVEN * spreadLimit
    ? [
        `Turning ${turn} your stops lie ${sizeText(sd)} graduations apart on average: turn more slowly over the last ten graduations.`,
      ]
    : [];

/**
 * What to do better next time, from a whole calibration: what weighs most comes first.
 *
 * @returns one sentence each, at least one
 */
export function zeroLessons({ sides, reasons }: Calibration, rules: ZeroingRules): string[] {
  const slanted = slant(sides, rules);
  const leanings = slanted.length > 0 ? slanted : rules.order.flatMap((turn) => leaning(turn, sides[turn], rules));
  const uneven = rules.order.flatMap((turn) => unevenness(turn, sides[turn], rules));
  const all = [...leanings, ...uneven, ...habits(reasons)];
  if (all.length > 0) return all;
  const isShown = rules.order.every((turn) => sides[turn].verdict === "accept");
  return [
    isShown
      ? "Even stops in both directions. Do it again, and keep the pace."
      : "Your stops lean to neither side: bring them closer together.",
  ];
}
