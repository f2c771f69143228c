import type { ZeroingRecord } from "../../records/records";

/** A zeroing that was set, or not, taken down at that moment. */
export type ZeroingNote = Omit<ZeroingRecord, "personId">;
