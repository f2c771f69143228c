import type { DialingState } from "../../../dialing/dialingMachine";
import type { Verdict } from "../../hand/AdviceLine";
import type { Outcome } from "../../replay/outcome";

/** What may take the place of the advice above the dial. */
interface NoteScene {
  readonly outcome: Outcome | null;
  /** Seconds that a lock still waits after wrong tries; 0 where it does not. */
  readonly waiting_s: number;
  /** Whether the lock under the hand is shown, and not a replay. */
  readonly isLive: boolean;
  /** Whether an own estimate is asked for now. */
  readonly isAsked: boolean;
}

const ENDED: Partial<Record<DialingState, Verdict>> = { open: "opened", failed: "failed" };

/** How the attempt ended, for as long as the lock stands as it ended; null while it is under way or spun off. */
export function verdictOf(state: DialingState, outcome: Outcome | null): Verdict | null {
  return outcome === null ? null : (ENDED[state] ?? null);
}

/** The sentence above the dial that takes the place of the advice, or null. */
export function lockNote({ outcome, waiting_s, isLive, isAsked }: NoteScene): string | null {
  if (!isLive) return "Replay. Turn the dial to go back to the lock.";
  const ended = outcome === null ? "" : outcome.opened ? "It opened. " : "It did not open. ";
  if (isAsked) return `${ended}How far off was your worst stop? Enter it to see the result.`;
  return waiting_s > 0 ? `${ended}Wrong-try delay: ${waiting_s} s left.` : null;
}
