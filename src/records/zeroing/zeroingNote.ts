import type { ZeroingRecord } from "../records";

/** A zeroing as it is kept, but for the person, who is looked up later. */
export type ZeroingNote = Omit<ZeroingRecord, "personId">;

/** Readings that a record takes. */
const MOST_READINGS = 500;

/** A zeroing as it is kept: the latest of its readings, and its details as plain data. */
export const zeroingNote = ({ readings, details, ...frame }: ZeroingNote): ZeroingNote => ({
  ...frame,
  startedAt: Math.round(frame.startedAt),
  readings: readings.slice(-MOST_READINGS),
  details: JSON.parse(JSON.stringify(details)),
});
