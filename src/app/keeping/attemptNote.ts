import type { Motion } from "../../dialing/motion";
import type { AttemptRecord } from "../../records/attemptRecord";

/** An attempt as it was at one moment: the lock goes on changing under the hand. */
export interface AttemptNote {
  /** The record, but for the person, who is looked up later. */
  readonly record: Omit<AttemptRecord, "personId">;
  readonly motion: Motion;
}
