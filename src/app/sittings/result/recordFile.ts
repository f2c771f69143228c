import type { Motion } from "../../../dialing/motion";
import { parsedJson, writeHashed } from "../../../records/hashedRecord";
import { readSittingRecord } from "../../../records/sitting/readSittingRecord";
import { type SittingShown, sittingShown } from "../../../records/sitting/sittingShown";
import type { KeptRecord } from "../session/sittingShelf";

/** A record and its hash as a file. */
export const writeRecordFile = ({ record, sha256 }: Omit<KeptRecord, "id">): string => writeHashed({ record, sha256 });

/** Reads a record that was saved. @throws {DrillError} with a sentence that says what is wrong */
export const readRecordFile = (text: string): Omit<KeptRecord, "id"> => readSittingRecord(parsedJson(text));

/**
 * Checks a saved record.
 *
 * @param appVersion - the version that checks
 * @returns what it says, and what checking came to
 * @throws {DrillError} with a sentence, for what cannot be checked
 */
export const checkRecordFile = (text: string, appVersion: string): SittingShown =>
  sittingShown(parsedJson(text), appVersion);

/**
 * Checks a record that was read.
 *
 * @param motions - of its tries as they are saved beside it, for a record that brings none
 * @throws {DrillError} with a sentence, for what cannot be checked
 */
export const checkKept = (
  { record, sha256 }: Omit<KeptRecord, "id">,
  appVersion: string,
  motions: readonly (Motion | null)[],
): SittingShown => sittingShown({ record, sha256 }, appVersion, (index) => motions[index] ?? undefined);
