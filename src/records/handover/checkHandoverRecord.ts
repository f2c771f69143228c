import { canonicalJson } from "../../drill/canonicalJson";
import { isInRange } from "../../handover/run/mountingHeight";
import { REQUIRED_PROOFS } from "../../handover/run/proofs";
import { SHIPPED_PROFILES } from "../../lock/shippedProfiles";
import { CHANGED, isSameHash, readHashed, recordHash } from "../hashedRecord";
import { RecordError } from "../recordError";
import { recordProblem } from "../recordWords";
import { NOTICE } from "../sitting/sittingRecord";
import { type HandoverRecord, parseHandoverRecord } from "./handoverRecord";
import { CHANGE_EVENTS, CHANGE_SOURCE, CHANGE_WORDS_OF_0_2, nextChangeDue } from "./nextChange";
import { recordProblems } from "./recordForm";

/** Name of the format, and what such a record is called. */
export const HANDOVER_RECORD = { format: "gatefall-handover-record", words: "handover record" } as const;

/** What checking a handover record came to. */
export interface HandoverRecordCheck {
  readonly record: HandoverRecord;
  /** Whether the hash is that of the record. */
  readonly isUnchanged: boolean;
  /** What is wrong, in sentences; none for a sound record. */
  readonly problems: readonly string[];
}

const isCount = (value: number) => Number.isInteger(value) && value >= 0;

const codesOf = (proofs: readonly { readonly code: string }[]) => proofs.map(({ code }) => code).join();

/** Fields that a record has and no handover record should: they are lost when it is read. */
function strangeFields(raw: object, record: HandoverRecord): readonly string[] {
  if (canonicalJson(raw) === canonicalJson(record)) return [];
  const names = Object.keys(raw).filter((key) => !(key in record));
  const which = names.length === 0 ? "inside one of its fields" : names.map((name) => `"${name}"`).join(", ");
  return [`The record has fields that no handover record has: ${which}.`];
}

/** What of a record does not follow from the rest of it, in sentences. */
function misfits(record: HandoverRecord): readonly string[] {
  const { date, height_in, faults, undoneFaults, proofs, profileId } = record;
  const due = nextChangeDue(date);
  const isHeightShown = proofs.some(({ code, isShown }) => code === "mounting" && isShown);
  const rules = [record.notice, record.changeSource, ...record.changeWhen].join();
  const findings: readonly (readonly [boolean, string])[] = [
    [record.nextChangeDue === due, `The next change is due on ${record.nextChangeDue}, and by its date on ${due}.`],
    [codesOf(proofs) === codesOf(REQUIRED_PROOFS), "Its list of proofs is not the one that a handover asks for."],
    [
      isCount(faults) && isCount(undoneFaults) && undoneFaults <= faults,
      `Faults on record: ${faults}, of which undone: ${undoneFaults}. That cannot be.`,
    ],
    [Number.isFinite(height_in) && height_in > 0, `The height is ${height_in} inches, and it must be above 0.`],
    [isCount(record.seed), `The seed is ${record.seed}, and it must be a whole number from 0.`],
    [record.duration_ms >= 0, `The duration is ${record.duration_ms} milliseconds, and it must be 0 or more.`],
    [SHIPPED_PROFILES.some(({ id }) => id === profileId), `This version does not have the lock "${profileId}".`],
    [
      [[CHANGE_SOURCE, ...CHANGE_EVENTS], CHANGE_WORDS_OF_0_2].some((words) => rules === [NOTICE, ...words].join()),
      "Its notice, or when the combination is changed, is not as this version writes it.",
    ],
  ];
  const wanting = recordProblems(record, [], isHeightShown && !isInRange(height_in));
  return [...findings.flatMap(([isFine, problem]) => (isFine ? [] : [problem])), ...wanting.map(({ words }) => words)];
}

/**
 * Checks a saved handover record against its hash, and what it says against itself.
 *
 * A hash shows that a record was not changed by accident or by someone who does not change the hash as well; it is no
 * signature.
 *
 * @param value - parsed JSON of the file, record and hash
 * @throws {DrillError} for what is no such file
 * @throws {RunError} naming the field that is wrong
 */
export function checkHandoverRecord(value: unknown): HandoverRecordCheck {
  try {
    return checkFile(value);
  } catch (error) {
    if (error instanceof RangeError) throw new RecordError(recordProblem("record-too-deep", []));
    throw error;
  }
}

function checkFile(value: unknown): HandoverRecordCheck {
  const file = readHashed(value, HANDOVER_RECORD);
  const record = parseHandoverRecord(file.record);
  // Of all that the file holds, known or not: nothing may be added either.
  const isUnchanged = isSameHash(recordHash(file.record), file.sha256);
  const problems = [...(isUnchanged ? [] : [CHANGED]), ...strangeFields(file.record, record), ...misfits(record)];
  return { record, isUnchanged, problems };
}
