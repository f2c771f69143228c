import type { Attempt } from "../../../dialing/attempt";
import type { DialingState } from "../../../dialing/dialingMachine";
import type { Motion } from "../../../dialing/motion";
import type { SourcesSeen } from "../../../realdial/sources/sourcesSeen";

/** An attempt under a hand on this page, as far as a class looks at it. */
export interface HandledAttempt {
  readonly attempt: Attempt;
  readonly chart: {
    readonly getSnapshot: () => { readonly value: DialingState; readonly context: { readonly number: number } };
  };
  readonly turnedBy: Pick<SourcesSeen, "mayKeepMotion" | "forRecord">;
}

/** The dial of the bench. */
interface BenchHere extends HandledAttempt {
  readonly recording: Motion;
  /** How the attempt ended; null while it is under way. */
  readonly outcome: object | null;
}

/** Where the bench says what is dialed on it, for a class, which knows no other screen; null while another page is open. */
export const DIALED_HERE: { bench: BenchHere | null } = { bench: null };
