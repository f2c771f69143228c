import { type Problem, problemsOf, type Words, wordsOf } from "../../wording/problem";
import { CHANGED } from "../hashedRecord";
import { SOURCES_WORDS } from "../sourcesWords";
import { FORM_WORDS } from "./formWords";

/** What a handover record says that cannot be, or that does not follow from the rest of it; each a sentence. */
const WORDS = {
  ...FORM_WORDS,
  ...SOURCES_WORDS,
  sources: "The record {misfit}.",
  changed: CHANGED,
  "strange-inside": "The record has fields that no handover record has. They are inside one of its other fields.",
  "strange-fields": "The record has fields that no handover record has: {names}.",
  "other-due": "The next change is due on {said} by the record, but on {due} by its date.",
  "other-proofs": "Its list of proofs is not the one that a handover asks for.",
  "fault-counts": "Faults on record: {faults}, of which undone: {undone}. These numbers cannot be right.",
  "no-height": "The height is {height} inches, and it must be above 0.",
  "no-seed": "The seed is {seed}, and it must be a whole number from 0.",
  "other-height": "The height is {height} inches, but the door that seed {seed} draws has {drawn} inches.",
  "own-door":
    "The record is older than the rule that its door follows from its seed: nothing shows that the door was not chosen. The height is {height} inches; seed {seed} draws {drawn} inches today.",
  "no-duration": "The duration is {duration} milliseconds, and it must be 0 or more.",
  "unknown-lock": 'This version does not have the lock "{lock}".',
  "other-notice": "Its notice, or when the combination is changed, is not as this version writes it.",
} as const satisfies Words;

/** Findings of a check of a handover record. */
export const handoverProblem = problemsOf(WORDS);

/** What a check of a handover record found, a sentence each. */
export const handoverSentences = (found: readonly Problem[]): string[] => found.map((one) => wordsOf(one, WORDS));
