import { checkRecord, type RecordCheck } from "../../drill/checkRecord";
import { parsedJson, readHashed, writeHashed } from "../../drill/hashedRecord";
import { sha256Hex } from "../../drill/sha256";
import { parseSheet } from "../../drill/sheet/parseSheet";
import type { Sha256, SittingRecord } from "../../drill/sittingRecord";
import type { KeptRecord } from "./sittingShelf";

/** SHA-256 that every page can make, whatever its address. */
export const browserSha256: Sha256 = async (text) => sha256Hex(text);

/** A record and its hash as a file. */
export const writeRecordFile = ({ record, sha256 }: Omit<KeptRecord, "id">): string => writeHashed({ record, sha256 });

const SITTING = { format: "gatefall-sitting", words: "sitting" };

/**
 * Reads a record with its hash from anywhere outside.
 *
 * @throws {Error} with a sentence that says what is wrong
 */
export function readRecord(value: unknown): Omit<KeptRecord, "id"> {
  const { record: found, sha256 } = readHashed(value, SITTING);
  const record = found as SittingRecord;
  if (!(Array.isArray(record.tries) && Array.isArray(record.answers))) {
    throw new Error("this record has no tries or no answers");
  }
  parseSheet(record.sheet);
  return { record, sha256 };
}

/** Reads a record that was saved. @throws {Error} with a sentence that says what is wrong */
export const readRecordFile = (text: string): Omit<KeptRecord, "id"> => readRecord(parsedJson(text));

/**
 * Checks a saved record.
 *
 * @param appVersion - the version that checks
 * @returns what checking came to
 * @throws {Error} with a sentence, for what cannot be checked
 */
export async function checkRecordFile(text: string, sha256: Sha256, appVersion: string): Promise<RecordCheck> {
  return checkKept(readRecordFile(text), sha256, appVersion);
}

/**
 * Checks a record that was read.
 *
 * @param appVersion - the version that checks
 * @returns what checking came to
 * @throws {Error} with a sentence, for what cannot be checked
 */
export async function checkKept(
  kept: Omit<KeptRecord, "id">,
  sha256: Sha256,
  appVersion: string,
): Promise<RecordCheck> {
  try {
    return await checkRecord(kept.record, kept.sha256, sha256, appVersion);
  } catch (error) {
    if (error instanceof TypeError) throw new Error("this record is damaged: a part of it is missing");
    throw error;
  }
}
