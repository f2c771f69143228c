import { problemsOf, type Words } from "../wording/problem";
import { COMBINATION_WORDS } from "./combinationWords";

/** What can be wrong with questions and lessons. */
const LEARNING_WORDS = {
  "index-of-choice": "must be the index of a choice, counted from 0",
  "answer-beyond-choices": "must be below {choices}, its choices",
  "same-choice-twice": "holds the same choice twice",
  "too-few-questions": ": the bank has {there:question|questions} on {topic}, and {count} are asked",
  "unknown-lesson": ": lesson {lesson} names {title:json}, and no sheet has that title",
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
  ...COMBINATION_WORDS,
  ...LEARNING_WORDS,
  ...SHEET_WORDS,
  ...DOUBT_WORDS,
} as const satisfies Words;

/** Problems of rules, sheets, questions and links. */
export const drillProblem = problemsOf(DRILL_WORDS);
