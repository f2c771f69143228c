import { LOCK_WORDS } from "../lock/lockWords";
import { type Problem, problemsOf, type Words, wordsOf } from "../wording/problem";

/** What can be wrong with rules, odds and questions. */
const TASK_WORDS = {
  "no-combination": ": the rules leave no combination for {lock}; ease one of them",
  "no-other-combination": ": the rules leave no combination but the one that is set; ease one of them",
  "not-counted":
    ": counting {numbers} numbers on a dial of {graduations} under all these rules would take too long; ease one of them",
  "unknown-rule": "has {key:json}, which is not a rule; the rules are {known}",
  "bad-bias": "must be a number of graduations",
  "bad-spread": "must be 0 graduations or more",
  "bad-trials": "must be a whole number above 0",
  "index-of-choice": "must be the index of a choice, counted from 0",
  "answer-beyond-choices": "must be below {choices}, its choices",
  "same-choice-twice": "holds the same choice twice",
  "too-few-questions": ": the bank has {there:question|questions} on {topic}, and {count} are asked",
  "unknown-lesson": ": lesson {lesson} names {title:json}, and no sheet has that title",
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

/** What can be wrong with a sheet, or with a link that carries one. */
const SHEET_WORDS = {
  "no-station-kind": "must have a kind that this trainer knows ({known}); a newer one may know more",
  "no-policy": "must be the policy {choices:or}, as in {example:json}",
  "no-profile": "must be the id of a shipped profile, or a whole one",
  "change-without-new": ": a change needs a new combination; give a fixed one or let it be drawn",
  "no-combination-set": ": {lock} comes without a combination; give a fixed one or let it be drawn",
  "asks-too-many": "asks for {count} of {repetitions:try|tries}",
  "allows-too-many": "allows {count} of {repetitions:try|tries}",
  "more-than-numbers": "must be at most {most}, the numbers of {lock}",
  "unchangeable-lock": ": the combination of {lock} cannot be changed; take another lock",
  "nothing-to-change": ": {lock} comes without a combination, so there is none to change from",
  "same-combination": ": {combination:dashes} is what {lock} is set to already; give a new one",
  "only-combination": ": the rules leave only {combination:dashes}, which is set already; ease one of them",
  "named-twice": "names {name} twice",
  "late-condition": "must be at most {repetitions}, the repetitions",
  "pass-mark-too-high": "must be at most {asked}, the questions asked",
  "not-plain": ": a record holds plain JSON only, and not {found:json}",
  "same-id": ": the id {id:json} is there twice",
  "no-place": ": there is no place {place} among {count:station|stations}",
  "link-characters": ": this link is damaged: a character is wrong or missing",
  "link-too-much": ": this link unpacks to far more than a sheet",
  "link-damaged": ": this link is damaged: what it carries cannot be unpacked",
  "link-unknown": ": this link carries no drill sheet of a kind known here",
  "link-too-long": ": this link is longer than {most} characters",
  "sheet-too-large": ": this sheet is too large for a link ({characters} of {most} characters); pass it on as a file",
} as const satisfies Words;

/** What a sound sheet asks and hardly means. */
const DOUBT_WORDS = {
  "claim-needs-more":
    ": cannot be reached: {repetitions} of {repetitions} do not show {rate:percent} with {confidence:percent} confidence. It takes at least {needed:try|tries}",
  "marks-contradict":
    ": the marks contradict each other: {firstTime} of {repetitions} passes here, but does not show {rate:percent} with {confidence:percent} confidence",
  "no-hand-so-exact": ": cannot be reached: no hand stops without any error",
  "one-try-no-interval": ": cannot be reached with 1 try: it takes at least 2 tries",
  "limit-comes-first": ": cannot be missed: a try ends after {limit} s",
  "every-try-faulty": ": cannot be missed: every try may have a fault",
  "no-size-so-exact": ": cannot be reached: no size is measured without any error",
  "full-help-in-test": ": full help in a test is unusual: it shows the next step and every stop error",
  "time-too-short": ": hardly to be done: {limit} s for {tries:try|tries} leave less than {least} s for each",
} as const satisfies Words;

/** Everything that can be wrong with what a drill asks for. */
export const DRILL_WORDS = {
  ...LOCK_WORDS,
  ...TASK_WORDS,
  ...RULE_WORDS,
  ...SHEET_WORDS,
  ...DOUBT_WORDS,
} as const satisfies Words;

/** Problems of rules, sheets, questions and links. */
export const drillProblem = problemsOf(DRILL_WORDS);

/** How a combination breaks a rule, and where the rule comes from. */
export const brokenRuleText = ({ problem, source }: { readonly problem: Problem; readonly source: string }): string =>
  `${wordsOf(problem, DRILL_WORDS)} (${source})`;
