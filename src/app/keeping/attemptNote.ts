import type { AttemptRecord } from "../../records/attemptRecord";
import type { Motion } from "../../records/motion/traceCodec";

/** An attempt as it was at one moment: the lock goes on changing under the hand. */
export interface AttemptNote {
  /** The record, but for the person, who is looked up later. */
  readonly record: Omit<AttemptRecord, "personId">;
  readonly motion: Motion;
}
