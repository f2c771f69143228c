import type { Motion } from "../../dialing/motion";
import type { AttemptNote } from "../../records/attempt/attemptNote";

/** An attempt as it was at one moment: the lock goes on changing under the hand. */
export interface NotedAttempt {
  readonly record: AttemptNote;
  /** Null where the hand chose that no motion is kept. */
  readonly motion: Motion | null;
}
