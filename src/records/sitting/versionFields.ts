import type { Problem } from "../../wording/problem";
import { checkProblem } from "./checkWords";
import type { SittingRecord } from "./sittingRecord";

/** What every record has since version 0.3.0, and how a person would name it. Recordings that are not there are told apart. */
const SINCE_0_3: readonly (readonly [field: keyof SittingRecord, words: string])[] = [
  ["sheetSha256", "fingerprint of the sheet"],
  ["seedFrom", "word on the origin of its seed"],
  ["breaks", "list of pauses and reloads"],
  ["clockJumps", "list of clock jumps"],
];

/** Whether a version is 0.3.0 or later. @param version - three whole numbers with periods, as the schema asks */
function isSince0_3(version: string): boolean {
  const [major = 0, minor = 0] = version.split(".").map(Number);
  return major > 0 || minor >= 3;
}

/** What a record lacks that its version writes in every record: somebody took it out. */
export function versionMisfits(record: SittingRecord): readonly Problem[] {
  if (!isSince0_3(record.appVersion)) return [];
  return SINCE_0_3.flatMap(([field, words]) =>
    record[field] === undefined
      ? [checkProblem("field-taken-out", [], { field: words, version: record.appVersion })]
      : [],
  );
}
