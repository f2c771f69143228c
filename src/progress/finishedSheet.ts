import { DrillError } from "../drill/drillError";
import { sheetSha256 } from "../drill/sheet/sheetFingerprint";
import type { SittingRecord } from "../records/records";
import { readSittingRecord } from "../records/sitting/readSittingRecord";
import type { SatSheet } from "./courseProgress";

/** The sheet of a sitting that was finished, by its own record; null where it was not, or where no record can be read. */
export function finishedSheet({ state, body, startedAt }: SittingRecord): SatSheet | null {
  if (state !== "finished") return null;
  try {
    const { sheet } = readSittingRecord(body).record;
    return { title: sheet.title, sheetSha256: sheetSha256(sheet), startedAt };
  } catch (error) {
    if (error instanceof DrillError) return null;
    throw error;
  }
}
