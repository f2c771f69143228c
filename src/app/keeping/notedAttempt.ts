import type { Motion } from "../../dialing/motion";
import type { AttemptNote } from "../../records/attempt/attemptNote";

/** An attempt as it was at one moment: the lock goes on changing under the hand. */
export interface NotedAttempt {
  readonly record: AttemptNote;
  readonly motion: Motion;
}
