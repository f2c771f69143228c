import { DrillError } from "../drill/drillError";
import { RunError } from "../handover/run/rules/runError";
import { readLogbookValue } from "../records/file/logbookFile";
import { replayedLogbook } from "../records/file/replayedAttempts";
import { FileError, fileSentences } from "../records/fileWords";
import { checkHandoverRecord, HANDOVER_RECORD } from "../records/handover/checkHandoverRecord";
import { handoverSentences } from "../records/handover/handoverCheckWords";
import type { HandoverRecord } from "../records/handover/handoverRecord";
import type { LogbookContents } from "../records/logbookContents";
import { checkedSitting } from "../records/sitting/checkedSitting";
import { checkSentences } from "../records/sitting/checkWords";
import { OUTCOME_WORDS, soundnessWords } from "../records/sitting/shownWords";
import { type SittingShown, sittingShown } from "../records/sitting/sittingShown";

import type { Problem } from "../wording/problem";
/** What checking one record came to. What is not known of it is null. */
export interface CheckedRecord {
  readonly file: string;
  readonly kind: "sitting" | "handover" | "logbook" | "unknown";
  /** Title of a drill sheet; the door of a handover; what a logbook holds. */
  readonly title: string | null;
  readonly person: string | null;
  /** ISO 8601; a handover has the day alone. */
  readonly date: string | null;
  /** Null where the record does not check, for then it shows nothing. */
  readonly result: string | null;
  /** What the check came to, in a few words. */
  readonly standing: string;
  /** Of the drill sheet, short form. */
  readonly fingerprint: string | null;
  /** Tries that were replayed from their recordings, and all of them. */
  readonly replayed: number | null;
  readonly tries: number | null;
  /** What does not fit, in sentences; none for a sound record. */
  readonly problems: readonly string[];
  /** What was not checked, or may be due to another version, in sentences: it speaks not against the record. */
  readonly remarks: readonly string[];
}

const standingOf = (problems: readonly string[]) => (problems.length > 0 ? "fails its check" : "sound");

const NOTHING = {
  title: null,
  person: null,
  date: null,
  result: null,
  fingerprint: null,
  replayed: null,
  tries: null,
  problems: [],
  remarks: [],
} as const;

/** @param why - a sentence */
const unreadable = (file: string, kind: CheckedRecord["kind"], why: string): CheckedRecord => ({
  ...NOTHING,
  file,
  kind,
  standing: "cannot be read",
  problems: [`It cannot be read: ${why}`],
});

function ofSitting(file: string, shown: SittingShown): CheckedRecord {
  const { check, differs } = shown;
  return {
    file,
    kind: "sitting",
    title: shown.title,
    person: shown.person,
    date: shown.startedAt,
    result: shown.outcome && OUTCOME_WORDS[shown.outcome],
    standing: soundnessWords(shown),
    fingerprint: shown.fingerprint,
    replayed: check.replayed,
    tries: shown.tries,
    problems: checkSentences([...check.problems, ...differs]),
    remarks: checkSentences([...check.unheld, ...check.unchecked]),
  };
}

function handover(file: string, value: unknown): CheckedRecord {
  try {
    const { record, problems: found } = checkHandoverRecord(value);
    const problems = handoverSentences(found);
    return {
      ...NOTHING,
      file,
      kind: "handover",
      title: record.door,
      person: record.technician,
      date: record.date,
      result: problems.length > 0 ? null : handoverResult(record),
      standing: standingOf(problems),
      problems,
    };
  } catch (error) {
    if (error instanceof DrillError || error instanceof RunError)
      return unreadable(file, "handover", `${error.message}.`);
    throw error;
  }
}

function handoverResult({ proofs, faults, undoneFaults }: HandoverRecord): string {
  const missing = proofs.filter(({ isShown }) => !isShown).length;
  const shown = missing === 0 ? "every proof shown" : `${missing} of ${proofs.length} proofs not shown`;
  return `${shown}, faults ${faults}, of which undone ${undoneFaults}`;
}

/** The sittings of a logbook, each as its own record tells it. */
function* sittingsOf(file: string, { records, traces }: LogbookContents, version: string): Generator<CheckedRecord> {
  const names = new Map(records.people.map(({ id, name }) => [id, name]));
  for (const sitting of records.sittings) {
    const found = checkedSitting(sitting, { appVersion: version, person: names.get(sitting.personId), traces });
    if (found.kind === "ended") yield ofSitting(file, found.shown);
    if (found.kind === "unreadable") yield unreadable(file, "sitting", `${found.problem}.`);
  }
}

/** Whether a remark speaks against a logbook. Of what a job came to an earlier version had another rule, in good faith. */
const isAgainst = ({ code }: Problem) => code !== "jobs-judged";

/** What a logbook holds, how far it bears itself out, and its sittings. */
function* logbook({ file, characters, value }: FileToCheck, version: string, take: Take): Generator<CheckedRecord> {
  try {
    const { remarks, ...contents } = readLogbookValue(value, characters);
    take(contents);
    const { attempts, sittings, people } = contents.records;
    const running = sittings.filter(({ state }) => state === "running").length;
    const problems = fileSentences([...remarks.filter(isAgainst), ...replayedLogbook(contents).leftOut]);
    const judged = fileSentences(remarks.filter((one) => !isAgainst(one)));
    const goesOn = running === 0 ? [] : [`Sittings that go on, which have no result yet: ${running}.`];
    yield {
      ...NOTHING,
      file,
      kind: "logbook",
      title: `people ${people.length}, attempts ${attempts.length}, sittings ${sittings.length}`,
      standing: standingOf(problems),
      problems,
      remarks: [...judged, ...goesOn],
    };
    yield* sittingsOf(file, contents, version);
  } catch (error) {
    if (!(error instanceof FileError)) throw error;
    yield unreadable(file, "logbook", error.message);
  }
}

/** Hears of every logbook that was read. */
type Take = (contents: LogbookContents) => void;

const formatOf = (value: unknown): unknown => {
  if (typeof value !== "object" || value === null) return undefined;
  if ("format" in value) return value.format;
  return "record" in value ? formatOf(value.record) : undefined;
};

/** A file to check. */
export interface FileToCheck {
  readonly file: string;
  /** Length of its text. */
  readonly characters: number;
  /** Parsed from the text. */
  readonly value: unknown;
}

/**
 * Checks whatever records a file holds: the record of a sitting, a handover record, or a logbook with all its sittings.
 *
 * @param version - the version that checks
 * @param take - hears of a logbook before its sittings are checked
 */
export function* checkedFile(one: FileToCheck, version: string, take: Take): Generator<CheckedRecord> {
  const { file, value } = one;
  switch (formatOf(value)) {
    case "gatefall-logbook":
      yield* logbook(one, version, take);
      return;
    case HANDOVER_RECORD.format:
      yield handover(file, value);
      return;
    case "gatefall-sitting":
      try {
        yield ofSitting(file, sittingShown(value, version));
      } catch (error) {
        if (!(error instanceof DrillError)) throw error;
        yield unreadable(file, "sitting", `${error.message}.`);
      }
      return;
    default:
      yield unreadable(file, "unknown", "it is no sitting's record, no handover record and no logbook.");
  }
}
