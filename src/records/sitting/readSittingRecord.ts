import { DrillError } from "../../drill/drillError";
import { parseSheet } from "../../drill/sheet/parseSheet";
import { fieldProblem } from "../../lock/fieldProblem";
import { type Problem, under } from "../../wording/problem";
import { type HashedRecord, readHashed } from "../hashedRecord";
import { RecordError } from "../recordError";
import { recordProblem } from "../recordWords";
import { recordSchema } from "./recordSchema";
import type { SittingRecord } from "./sittingRecord";

const SITTING = { format: "gatefall-sitting", words: "sitting" };

/** A problem of a record, in its place of the file. */
const bad = (problem: Problem) => new RecordError(under(["record"], problem));

/** The sheet of a record. */
function sheetOf(value: unknown) {
  try {
    return parseSheet(value);
  } catch (error) {
    throw bad(under(["sheet"], error instanceof DrillError ? error.problem : fieldProblem([], value)));
  }
}

/**
 * Reads a sitting's record with its hash from anywhere outside: every field is looked at, none that is unknown is taken.
 *
 * Whether what it says is possible, and follows from the rest, `checkRecord` looks at.
 *
 * @param value - parsed JSON
 * @throws {DrillError} naming the field; nothing else, whatever the value
 */
export function readSittingRecord(value: unknown): HashedRecord<SittingRecord> {
  try {
    const { record: found, sha256 } = readHashed(value, SITTING);
    const parsed = recordSchema.safeParse(found);
    if (!parsed.success) throw bad(fieldProblem(parsed.error.issues, found));
    sheetOf(parsed.data.sheet);
    // As it came, not as it was read: the hash is made of what is in the file.
    return { record: found as SittingRecord, sha256 };
  } catch (error) {
    if (error instanceof DrillError) throw error;
    throw new RecordError(recordProblem("record-too-deep", []));
  }
}
