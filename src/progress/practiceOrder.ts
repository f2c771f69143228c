import { HELP_LEVELS, type HelpLevel } from "../records/attemptRecord";

/** How items follow each other: one after the other many times; in turn; by chance. */
export type PracticeOrder = "blocked" | "serial" | "random";

/** Progress from which the order and the help change. Training values: blocked first, then serial, then random. */
const SERIAL_FROM = 1 / 3;
const RANDOM_FROM = 2 / 3;

/**
 * The order that fits a learner.
 *
 * @param progress - towards mastery of the skill that is least far, in [0, 1]
 */
export function practiceOrder(progress: number): PracticeOrder {
  if (progress < SERIAL_FROM) return "blocked";
  return progress < RANDOM_FROM ? "serial" : "random";
}

/** Why that order, in a sentence. */
export const ORDER_REASONS: Readonly<Record<PracticeOrder, string>> = {
  blocked: "One lock many times in a row, until it begins to open.",
  serial: "The locks in turn: a little harder, and you remember it longer.",
  random: "The locks in random order, as in a test.",
};

/**
 * Help that fades as mastery grows: all of it, arrivals counted, nothing.
 *
 * @param progress - towards mastery, in [0, 1]; 1 is shown
 */
export function fadedHelp(progress: number): HelpLevel {
  const place = Math.min(HELP_LEVELS.length - 1, Math.floor(progress * (HELP_LEVELS.length - 1)));
  return HELP_LEVELS[place] ?? "silent";
}
