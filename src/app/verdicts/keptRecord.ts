import type { SittingRecord } from "../../records/sitting/sittingRecord";

/** A record with its hash, as it is kept and passed on. */
export interface KeptRecord {
  readonly id: string;
  readonly record: SittingRecord;
  readonly sha256: string;
}
