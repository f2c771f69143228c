import { canonicalJson } from "../../drill/canonicalJson";
import { isInRange } from "../../handover/run/rules/mountingHeight";
import { drawScene } from "../../handover/run/scene";
import { SHIPPED_PROFILES } from "../../lock/shippedProfiles";
import { turningMisfit } from "../../realdial/sources/sourcesMisfit";
import { seededChance } from "../../statistics/chance";
import { type Finding, failing, type Problem } from "../../wording/problem";
import { isSameHash, readHashed, recordHash } from "../hashedRecord";
import { RecordError } from "../recordError";
import { recordProblem } from "../recordWords";
import { NOTICE } from "../sitting/sittingRecord";
import { handoverProblem } from "./handoverCheckWords";
import { type HandoverRecord, parseHandoverRecord, proofsWanted } from "./handoverRecord";
import { CHANGE_SENTENCES, CHANGE_SOURCE, CHANGE_WORDS_OF_0_2, nextChangeDue } from "./nextChange";
import { recordProblems } from "./recordForm";

/** Name of the format, and what such a record is called. */
export const HANDOVER_RECORD = { format: "gatefall-handover-record", words: "handover record" } as const;

/** What checking a handover record came to. */
export interface HandoverRecordCheck {
  readonly record: HandoverRecord;
  /** Whether the hash is that of the record. */
  readonly isUnchanged: boolean;
  /** What is wrong; none for a sound record. */
  readonly problems: readonly Problem[];
  /** What was made before a record promised it; it does not speak against it. */
  readonly unheld: readonly Problem[];
}

const isCount = (value: number) => Number.isInteger(value) && value >= 0;

const codesOf = (proofs: readonly { readonly code: string }[]) => proofs.map(({ code }) => code).join();

/** Fields that a record has and no handover record should: they are lost when it is read. */
function strangeFields(raw: object, record: HandoverRecord): readonly Problem[] {
  if (canonicalJson(raw) === canonicalJson(record)) return [];
  const names = Object.keys(raw).filter((key) => !(key in record));
  return [
    names.length === 0
      ? handoverProblem("strange-inside", [])
      : handoverProblem("strange-fields", [], { names: names.map((name) => `"${name}"`) }),
  ];
}

/** A height that is not that of the door which the seed draws; a code of its own where the record makes no promise of it. */
function otherDoor({ seed, height_in: height, drawnBy }: HandoverRecord): readonly Problem[] {
  const drawn = drawScene(seededChance(seed)).height_in;
  if (height === drawn) return [];
  return [handoverProblem(drawnBy === undefined ? "own-door" : "other-height", [], { height, seed, drawn })];
}

/** What the record says turned the dial, and the doubts of its turns, cannot have been. */
function turnedAmiss(record: HandoverRecord): readonly Problem[] {
  const misfit = turningMisfit(record);
  return misfit === null ? [] : [handoverProblem("sources", [], { misfit: handoverProblem(misfit, []) })];
}

/** What of a record does not follow from the rest of it. */
function misfits(record: HandoverRecord): readonly Problem[] {
  const { date, height_in, faults, undoneFaults, proofs, profileId, fit } = record;
  const due = nextChangeDue(date);
  const isHeightShown = proofs.some(({ code, isShown }) => code === "mounting" && isShown);
  const rules = [record.notice, record.changeSource, ...record.changeWhen].join();
  const findings: readonly Finding[] = [
    [record.nextChangeDue === due, handoverProblem("other-due", [], { said: record.nextChangeDue, due })],
    [codesOf(proofs) === codesOf(proofsWanted(fit !== undefined)), handoverProblem("other-proofs", [])],
    [
      isCount(faults) && isCount(undoneFaults) && undoneFaults <= faults,
      handoverProblem("fault-counts", [], { faults, undone: undoneFaults }),
    ],
    [Number.isFinite(height_in) && height_in > 0, handoverProblem("no-height", [], { height: height_in })],
    [isCount(record.seed), handoverProblem("no-seed", [], { seed: record.seed })],
    [record.duration_ms >= 0, handoverProblem("no-duration", [], { duration: record.duration_ms })],
    [SHIPPED_PROFILES.some(({ id }) => id === profileId), handoverProblem("unknown-lock", [], { lock: profileId })],
    [
      [[CHANGE_SOURCE, ...CHANGE_SENTENCES], CHANGE_WORDS_OF_0_2].some((words) => rules === [NOTICE, ...words].join()),
      handoverProblem("other-notice", []),
    ],
  ];
  const wanting = recordProblems(record, [], isHeightShown && !isInRange(height_in));
  return [...failing(findings), ...turnedAmiss(record), ...wanting];
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
  const problems = [
    ...(isUnchanged ? [] : [handoverProblem("changed", [])]),
    ...strangeFields(file.record, record),
    ...misfits(record),
    ...(record.drawnBy === undefined ? [] : otherDoor(record)),
  ];
  return { record, isUnchanged, problems, unheld: record.drawnBy === undefined ? otherDoor(record) : [] };
}
