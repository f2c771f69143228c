import { checkSentences } from "../../records/sitting/checkWords";
import { type Problem, problemsOf, type Words, wordsOf } from "../../wording/problem";

/** What a class server finds of a sitting that it gave out, beside what the record alone tells; each a sentence. */
const FINDING_WORDS = {
  "other-sheet-than-given": "The record's sheet is not the one that the server gave for this sitting.",
  "other-seed-than-given": "The record's seed is {found}; the server gave {given}.",
  "other-origin": "The record does not say that the server gave its seed.",
  "other-extra-time": "The record says {found} % extra time; the server gave {given} %.",
  "other-person": "The record came in for another person than the one who began this sitting.",
  "not-readable": "What came in cannot be read as the record of a sitting: {why}.",
  "try-not-as-sent": "Try {place} is not the one that was sent when it ended.",
  "try-not-in-record": "Try {place} was sent when it ended, but the record does not have it.",
  "more-time-than-passed":
    "The record says that {worked} s were worked, but only {passed} s passed from its beginning until it came in.",
  "sent-late": "It came in after its time was up. It was stored and marked all the same.",
  "tries-with-the-end":
    "{count} of {of:try|tries} came in only with the end. The bench had no network, or its page was closed.",
  "tries-waited": "{count:try|tries} waited at the bench before the network took them, at most {longest} s.",
} as const satisfies Words;

/** Findings about a sitting that a class server gave out. */
export const findingProblem = problemsOf(FINDING_WORDS);

/** What the server found, a sentence each: its own findings and those of the check of the record. */
export const findingSentences = (found: readonly Problem[]): string[] =>
  found.map((one) =>
    one.code in FINDING_WORDS ? wordsOf(one, FINDING_WORDS) : (checkSentences([one])[0] ?? one.code),
  );
