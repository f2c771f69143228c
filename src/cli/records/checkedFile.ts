import { DrillError } from "../../drill/drillError";
import { RunError } from "../../handover/run/rules/runError";
import { FORMAT } from "../../records/file/logbookReading";
import { FileError, fileSentences } from "../../records/fileWords";
import { checkHandoverRecord, HANDOVER_RECORD } from "../../records/handover/checkHandoverRecord";
import { handoverSentences } from "../../records/handover/handoverCheckWords";
import type { HandoverRecord } from "../../records/handover/handoverRecord";
import type { RecordingCopies } from "../../records/motion/sameRecordings";
import { checkSentences } from "../../records/sitting/checkWords";
import { OUTCOME_WORDS, soundnessWords } from "../../records/sitting/shownWords";
import { type SittingShown, sittingShown } from "../../records/sitting/sittingShown";
import type { Terminal } from "../terminal/command";
import { type CheckedSignature, checkedSignature } from "./checkedSignature";
import { LogbookCheck } from "./logbookCheck";
import { StreamedFile } from "./streamedFile";

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
  /** What a school's server states of the record; null where the file has no signature, or none that holds. */
  readonly signed: string | null;
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

const standingOf = (problems: readonly unknown[]) => (problems.length > 0 ? "fails its check" : "sound");

const NOTHING = {
  title: null,
  person: null,
  date: null,
  result: null,
  fingerprint: null,
  replayed: null,
  tries: null,
  signed: null,
  problems: [],
  remarks: [],
} as const;

const UNSIGNED: CheckedSignature = { signed: null, problems: [], remarks: [] };

/** What files are checked by. */
export interface Checking {
  /** The version that checks. */
  readonly version: string;
  /** Fingerprints of the keys that a signature may be made with; null where none are at hand. */
  readonly trusted: readonly string[] | null;
  /** Hears of every recording of a logbook. */
  readonly copies: RecordingCopies;
}

/** @param why - a sentence */
const unreadable = (file: string, kind: CheckedRecord["kind"], why: string): CheckedRecord => ({
  ...NOTHING,
  file,
  kind,
  standing: "cannot be read",
  problems: [`It cannot be read: ${why}`],
});

function ofSitting(file: string, shown: SittingShown, signature: CheckedSignature = UNSIGNED): CheckedRecord {
  const { check, differs } = shown;
  const isForged = signature.problems.length > 0;
  return {
    file,
    kind: "sitting",
    title: shown.title,
    person: shown.person,
    date: shown.startedAt,
    result: isForged ? null : shown.outcome && OUTCOME_WORDS[shown.outcome],
    standing: isForged ? standingOf(signature.problems) : soundnessWords(shown),
    fingerprint: shown.fingerprint,
    replayed: check.replayed,
    tries: shown.tries,
    signed: signature.signed,
    problems: [...checkSentences([...check.problems, ...differs]), ...signature.problems],
    remarks: [...checkSentences([...check.unheld, ...check.unchecked]), ...signature.remarks],
  };
}

function handover(file: string, value: unknown): CheckedRecord {
  try {
    const { record, problems: found, unheld } = checkHandoverRecord(value);
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
      remarks: handoverSentences(unheld),
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

const formatOf = (value: unknown): unknown => {
  if (typeof value !== "object" || value === null) return undefined;
  if ("format" in value) return value.format;
  return "record" in value ? formatOf(value.record) : undefined;
};

function sitting(file: string, value: unknown, { version, trusted }: Checking): CheckedRecord {
  try {
    return ofSitting(file, sittingShown(value, version), checkedSignature(value, trusted));
  } catch (error) {
    if (error instanceof DrillError) return unreadable(file, "sitting", `${error.message}.`);
    throw error;
  }
}

function logbook(file: string, check: LogbookCheck, head: unknown): CheckedRecord[] {
  try {
    const { people, attempts, sittings, running, problems, remarks, checked } = check.end(head);
    const goesOn = running === 0 ? [] : [`Sittings that go on, which have no result yet: ${running}.`];
    const whole: CheckedRecord = {
      ...NOTHING,
      file,
      kind: "logbook",
      title: `people ${people}, attempts ${attempts}, sittings ${sittings}`,
      standing: standingOf(problems),
      problems: fileSentences(problems),
      remarks: [...fileSentences(remarks), ...goesOn],
    };
    const each = checked.flatMap((found) => {
      if (found.kind === "ended") return [ofSitting(file, found.shown)];
      return found.kind === "unreadable" ? [unreadable(file, "sitting", `${found.problem}.`)] : [];
    });
    return [whole, ...each];
  } catch (error) {
    if (error instanceof FileError) return [unreadable(file, "logbook", error.message)];
    throw error;
  }
}

/**
 * Checks whatever records a file holds: the record of a sitting, a handover record, or a logbook with all its sittings.
 *
 * @throws {UsageError} for a file that cannot be read, or is no JSON
 */
export async function checkedFile(
  file: string,
  terminal: Terminal,
  checking: Checking,
): Promise<readonly CheckedRecord[]> {
  const source = new StreamedFile(file);
  const check = new LogbookCheck(() => source.bytes, checking.version, checking.copies);
  const value = await source.read(terminal, check);
  switch (formatOf(value)) {
    case FORMAT:
      return logbook(file, check, value);
    case HANDOVER_RECORD.format:
      return [handover(file, value)];
    case "gatefall-sitting":
      return [sitting(file, value, checking)];
    default:
      return [unreadable(file, "unknown", "it is no sitting's record, no handover record and no logbook.")];
  }
}
