import type { RecordKind, RecordOf } from "../../records/records";

/** A record of any kind. */
export type AnyRecord = {
  readonly [Kind in RecordKind]: { readonly kind: Kind; readonly record: RecordOf[Kind] };
}[RecordKind];

/** How long a zeroing that broke off is held back, ms: within a day at the bench it may be resumed and get its result. */
const HELD_MS = 12 * 3600 * 1000;

/**
 * From when on a bench may send a record to its class, milliseconds since 1970; 0 where at once. What is sent never changes
 * on the server, so nothing that still goes on is sent.
 *
 * @returns null for what goes on, and for what stays on the bench
 */
export function sendableFrom(one: AnyRecord): number | null {
  switch (one.kind) {
    case "attempts":
      return one.record.isUnfinished === true ? null : 0;
    case "sittings":
      return one.record.state === "running" ? null : 0;
    case "zeroings":
      return one.record.outcome === "broken-off" ? one.record.updatedAt + HELD_MS : 0;
    case "jobs":
    case "declarations":
      return 0;
    default:
      return null;
  }
}
