import { DRILL_WORDS } from "../drill/drillWords";
import { problemsOf, type Words } from "../wording/problem";
import { MASTERY_WORDS } from "./masteryRule";

/** What keeps a record from being read. */
export const RECORD_WORDS = {
  ...DRILL_WORDS,
  ...MASTERY_WORDS,
  "not-a-record": ": this is not a record: it is not the JSON of a saved {kind}",
  "no-such-record": ": this file holds no {kind}",
  "sitting-elsewhere": ": this file holds no {kind}: it is the record of a sitting, which is checked under Sittings",
  "handover-elsewhere": ": this file holds no {kind}: it is a handover record, which is checked under Handover",
  "no-hash": ": this record comes without its SHA-256",
  "record-too-deep": ": this record is nested too deep to be read",
  "cannot-be-checked": ": this record cannot be checked: {why}",
} as const satisfies Words;

/** Problems of records. */
export const recordProblem = problemsOf(RECORD_WORDS);
