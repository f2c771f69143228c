import type { z } from "zod/mini";
import { parseSheet } from "../../../src/drill/sheet/parseSheet";
import { recordHash } from "../../../src/records/hashedRecord";
import { sittingNote } from "../../../src/records/sitting/sittingNote";
import type { SittingRecord } from "../../../src/records/sitting/sittingRecord";
import type { givenSitting } from "../../../src/school/wire/assignmentsWire";
import { satRecord, VERSION } from "../../support/satRecord";

/** The sheet that invented hands sit in tests of the server: four tries at three stations. */
export const SAT_SHEET = satRecord().sheet;

/** No try stops outside its lock's tolerance. */
const CLEAN = [[0.25, 0, 0.25], [0, 0.25, 0], [0.5, 0, 0.25], []];

/** A sitting by an invented hand, of what a server gave: its record, all right or with a miss. */
export function satAs(
  given: z.infer<typeof givenSitting>,
  isClean = true,
  other: Partial<SittingRecord> = {},
): SittingRecord {
  const record = isClean ? satRecord(CLEAN, given.seed) : satRecord(undefined, given.seed);
  return {
    ...record,
    sheet: parseSheet(given.sheet),
    seedFrom: given.seedFrom,
    ...(given.extraTime > 0 && { extraTime_percent: given.extraTime }),
    appVersion: VERSION,
    ...other,
  };
}

/** A record as a bench sends it when its sitting has ended. */
export const sentSitting = (id: string, personId: string, record: SittingRecord) => ({
  kind: "sittings",
  record: { ...sittingNote({ id, now_ms: Date.parse(record.startedAt) + 1000 }, record, recordHash(record)), personId },
});

/** Tries of a record as a bench sends them while it goes on. */
export const sentTriesOf = ({ tries, motions }: SittingRecord, waited_ms = 100) =>
  tries.map((result, index) => ({ index, result, motion: motions?.[index] ?? null, waited_ms }));
