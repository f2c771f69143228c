import { DrillError } from "../../drill/drillError";
import { parseSheet } from "../../drill/sheet/parseSheet";
import { fieldProblem } from "../../lock/fieldProblem";
import { type HashedRecord, readHashed } from "../hashedRecord";
import { recordSchema } from "./recordSchema";
import type { SittingRecord } from "./sittingRecord";

const SITTING = { format: "gatefall-sitting", words: "sitting" };

const bad = (problem: string) => new DrillError("bad-record", problem);

type Issues = Parameters<typeof fieldProblem>[0];

const placeText = (path: readonly PropertyKey[]) =>
  path.map((key) => (typeof key === "number" ? `[${key}]` : `.${String(key)}`)).join("");

/** What is wrong with a record, named by its place in the file; an unknown field by its own name. */
function problemOf(issues: Issues, value: object): string {
  const [issue] = issues;
  if (issue?.code !== "unrecognized_keys") return `record.${fieldProblem(issues, value)}`;
  return `record${placeText(issue.path)} has a field "${issue.keys[0]}", which no record of a sitting has there`;
}

/** The sheet of a record. */
function sheetOf(value: unknown) {
  try {
    return parseSheet(value);
  } catch (error) {
    throw bad(`record.${error instanceof DrillError ? error.message : "sheet cannot be read"}`);
  }
}

/**
 * Reads a sitting's record with its hash from anywhere outside: every field is looked at, none that is unknown is taken.
 *
 * Whether what it says is possible, and follows from the rest, `checkRecord` looks at.
 *
 * @param value - parsed JSON
 * @throws {DrillError} `bad-record` with a sentence without its period that names the field; nothing else, whatever the value
 */
export function readSittingRecord(value: unknown): HashedRecord<SittingRecord> {
  try {
    const { record: found, sha256 } = readHashed(value, SITTING);
    const parsed = recordSchema.safeParse(found);
    if (!parsed.success) throw bad(problemOf(parsed.error.issues, found));
    sheetOf(parsed.data.sheet);
    // As it came, not as it was read: the hash is made of what is in the file.
    return { record: found as SittingRecord, sha256 };
  } catch (error) {
    if (error instanceof DrillError) throw error;
    throw bad("this record is nested too deep to be read");
  }
}
