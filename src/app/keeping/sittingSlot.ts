import type { Motion } from "../../dialing/motion";
import type { TryResult } from "../../drill/marking/tryResult";
import type { Sheet, Station } from "../../drill/sheet/sheet";
import type { SittingFacts } from "../../records/sitting/sittingRecord";
import { Store } from "../parts/page/store";
import type { HandledAttempt } from "./here/dialedHere";

/** A try at dialing. */
interface DialedTry extends HandledAttempt {
  readonly kind: "dialing";
  readonly motion: Motion;
  readonly isEnded: boolean;
}

/** A sitting on this bench, as far as a class looks at it. */
export interface SessionHere {
  readonly id: string;
  readonly sheet: Sheet;
  /** The assignment that a class server gave it for, or null. */
  readonly assignmentId: string | null;
  readonly isOver: boolean;
  readonly results: readonly TryResult[];
  /** The try under the hand; an ended one stays until the next is asked for. */
  readonly inHand: DialedTry | { readonly kind: Exclude<Station["kind"], "dialing"> } | null;
  readonly facts: (appVersion: string) => SittingFacts;
  readonly subscribe: Store["subscribe"];
}

/** A sitting as a class server gives it. */
export interface GivenHere {
  readonly id: string;
  /** As it came; it is read where it is sat. */
  readonly sheet: unknown;
  readonly seed: number;
  readonly seedFrom: "sheet" | "server";
  readonly assignmentId: string;
  readonly extraTime_percent: number;
  readonly person: string;
  readonly personId: string;
}

/** Whatever is sat on this bench: a store. */
export interface SittingHere extends Pick<Store, "subscribe" | "version"> {
  readonly session: SessionHere | null;
  /** Whether it is known yet if a sitting goes on here. */
  readonly isSettled: boolean;
  /** Whether there is none, or one that has not begun. */
  readonly isFree: boolean;
  readonly beginGiven: (given: GivenHere) => void;
  readonly putAway: () => void;
}

/** Where the sittings say what is sat here, for a class, which knows no other screen. */
class SittingSlot extends Store {
  here: SittingHere | null = null;

  show(here: SittingHere): void {
    this.here = here;
    this.changed();
  }
}

/** What is sat in this page; empty until the page of the sittings was opened. */
export const SITTING_SLOT = new SittingSlot();
