import { LOCK_WORDS } from "../lock/lockWords";
import { type Problem, problemsOf, type Words, wordsOf } from "../wording/problem";

/** What can be wrong with rules and odds. */
const TASK_WORDS = {
  "no-combination": ": the rules leave no combination for {lock}; ease one of them",
  "no-other-combination": ": the rules leave no combination but the one that is set; ease one of them",
  "not-counted":
    ": counting {numbers} numbers on a dial of {graduations} under all these rules would take too long; ease one of them",
  "unknown-rule": "has {key:json}, which is not a rule; the rules are {known}",
  "bad-bias": "must be a number of graduations",
  "bad-spread": "must be 0 graduations or more",
  "bad-trials": "must be a whole number above 0",
} as const satisfies Words;

/** Rules that a combination breaks. */
const RULE_WORDS = {
  "too-close": ": {one} and {other} are {apart:graduation|graduations} apart; at least {least} is needed",
  "excluded-last": ": the last number, {last}, is in {low} to {high}, where the draw turns",
  straight: ": the numbers go straight {way}",
  "all-even": ": all numbers are even",
  "all-odd": ": all numbers are odd",
  "multiple-of-ten": ": {number} is a multiple of ten",
  "tens-apart": ": {one} and {other} are a multiple of ten apart",
  "thirds-missing": ": no number from each third of the dial",
  excluded: ": {number} is a number that is allowed nowhere in this combination",
  "broken-rule": ": {combination:dashes}: {rule} ({source})",
} as const satisfies Words;

/** Everything that can be wrong with a combination and its rules: the bench needs no more, and is drawn the sooner. */
export const COMBINATION_WORDS = { ...LOCK_WORDS, ...TASK_WORDS, ...RULE_WORDS } as const satisfies Words;

/** Problems of combinations and rules. */
export const combinationProblem = problemsOf(COMBINATION_WORDS);

/** How a combination breaks a rule, and where the rule comes from. */
export const brokenRuleText = ({ problem, source }: { readonly problem: Problem; readonly source: string }): string =>
  `${wordsOf(problem, COMBINATION_WORDS)} (${source})`;
