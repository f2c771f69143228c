import { errorsOf, type Problem, problemsOf, problemText, type Words } from "../wording/problem";
import { MOTION_WORDS, MotionError } from "./motionError";
import { RECORD_WORDS } from "./recordWords";
import { SOURCES_WORDS } from "./sourcesWords";

/** What can be wrong with a file of records, with a motion in it, and with the records themselves; full sentences. */
const FILE_WORDS = {
  ...RECORD_WORDS,
  ...MOTION_WORDS,
  ...SOURCES_WORDS,
  "not-json": ": This file is not a logbook: it is not one whole JSON value.",
  "other-format": ': This file is not a logbook: its "format" is not "{format}".',
  "later-version":
    ": This logbook is of version {version}, and this version of Gatefall reads up to {latest}: open it with the newer version.",
  "no-version": ': This logbook names no version that exists; "version" must be 1 to {latest}.',
  "too-many":
    ": This logbook has more than {most} {kind}, and no more can be read. Export it in parts, one person at a time.",
  "too-deep": ": This logbook cannot be read: it is nested too deep, or too large for this browser.",
  "too-large":
    ": This file is larger than 512 MB, too large to be read here: export the logbook in parts, one person at a time.",
  "file-moved": ": This file cannot be read: it was moved, changed or locked since you chose it, so choose it again.",
  "reader-not-started": ": This browser could not read the file beside the page: reload the page and try again.",
  "reader-failed": ": {why}",

  "no-export-time": ": The file does not say when it was exported.",
  "owner-missing":
    ': The file has records of a person with the id "{id}" but not that person. They are saved under the name "{name}"; if a person with this id is here already, that name stays.',
  "list-left-out": "is left out: it must be a list.",
  "left-out": "is left out: {why:placed}.",
  "left-out-by-id": "(id {id}) is left out: {why:placed}.",
  "jobs-judged":
    ": {count:job is|jobs are} recorded as right or wrong against the facts in the record: the facts count.",
  "jobs-other-defect":
    ": {count:diagnosis has|diagnoses have} another defect than lock and seed lead to: taken as recorded.",
  "same-id": 'has the same id as another record, "{id}": the later one is taken.',
  "turned-impossibly": "(id {id}) {why}: taken as recorded.",
  "motion-against-choice": ": Its record says that none is kept.",
  "without-motion": "(id {id}) is taken without its motion. {why:placed}",
  "more-remarks": ": And {count} more.",
  "attempts-left-out": ": {count:attempt|attempts} of {name} left out: {why:placed}.",
  "no-recording": ": no recording",
  "motion-not-kept": ": no recording, since the hand chose to keep none: not replayed",
  "opens-not": ": recorded as opened, but the recording does not open the lock",
  "opens-after-all": ": recorded as missed, but the recording opens the lock",
  "other-time": ": its time is not that of its recording",
  "other-stops": ": its stop errors are not those of its recording",
  "impossible-sources": ": what they say turned the dial cannot have been",
  "not-replayed": ": a lock that is not known here, or a recording that its lock cannot follow",
} as const satisfies Words;

/** Problems of a file of records. */
export const fileProblem = problemsOf(FILE_WORDS);

/** What was repaired or left out of a file, a sentence each. */
export const fileSentences = (problems: readonly Problem[]): string[] =>
  problems.map((problem) => problemText(problem, FILE_WORDS));

/** A file of records that cannot be read. */
export class FileError extends MotionError {
  override readonly name = "FileError";
  protected override readonly words = FILE_WORDS;
}

/** Makes the errors of a file of records. */
export const fileError = errorsOf(FILE_WORDS, FileError);
