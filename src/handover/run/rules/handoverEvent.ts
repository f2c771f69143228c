import type { FitCheck } from "../../../fitting/fitCheck";
import type { CheckSet } from "../../../fitting/fitChecks";
import type { FittingAct } from "../../../fitting/fittingAct";
import type { Graduations, Turn } from "../../../lock/dial";

/** Who dials. */
export type Dialer = "trainee" | "second";

/**
 * What a change of the combination came to: it opens as written; it opens, but not as written; it opens no more.
 */
export type ChangeOutcome = "true" | "off" | "spoiled";

/** How a door was opened: from the corridor, by whoever is inside, or by force and hours of work. */
export type OpenedBy = "outside" | "inside" | "emergency";

/** What the handover's chart takes in: finished facts about door, lock, people and paper. */
export type HandoverEvent =
  /** The word that the lock is fitted, with all that was done to its parts since it came, or was last taken apart. */
  | {
      readonly type: "lock.fitted";
      readonly acts: readonly FittingAct[];
      /** Made since a part was last moved. */
      readonly checks: readonly FitCheck[];
      /** Which checks there were; left out for the first set. */
      readonly checkSet?: CheckSet;
      readonly isChecked: boolean;
      readonly isFaultless: boolean;
    }
  | { readonly type: "lock.takenApart" }
  /**
   * Spoiled parts gave way to new ones, with keyways of their own and a straight spindle. `acts` spoiled them, since they
   * came, or the lock was last taken apart; an earlier version left them out.
   */
  | { readonly type: "parts.replaced"; readonly slotAt: Graduations; readonly acts?: readonly FittingAct[] | undefined }
  /** Height of the dial's middle above the floor, inches. */
  | { readonly type: "mounting.measured"; readonly height_in: number }
  | { readonly type: "authorization.asked" }
  | { readonly type: "ring.aligned" }
  | { readonly type: "ring.loosened" }
  | { readonly type: "zero.set"; readonly side: Turn }
  /** Whatever combination is meant to be in the lock was dialed; `opened` tells whether the bolt came. */
  | { readonly type: "combination.dialed"; readonly by: Dialer; readonly opened: boolean }
  | { readonly type: "combination.changed"; readonly outcome: ChangeOutcome; readonly isAllowed: boolean }
  /** A spoiled pack was taken apart and put together again, with the combination it came with. */
  | { readonly type: "pack.rebuilt" }
  | { readonly type: "bolt.thrown" }
  /** The dial was turned on and the bolt came back, although no number was dialed: the wheels were still in line. */
  | { readonly type: "bolt.drawnAgain" }
  | { readonly type: "lock.spunOff" }
  | { readonly type: "holdback.set" }
  | { readonly type: "holdback.released" }
  | { readonly type: "observer.entered"; readonly canOpen: boolean }
  | { readonly type: "observer.left" }
  | { readonly type: "wayOut.checked"; readonly isFree: boolean }
  | { readonly type: "wayOut.cleared" }
  /** Whoever is inside pulled the release, and it did not move. */
  | { readonly type: "release.failed" }
  | { readonly type: "door.shut" }
  | { readonly type: "door.opened"; readonly by: OpenedBy }
  | { readonly type: "record.written" }
  /** The form refused a record with the combination in clear. */
  | { readonly type: "record.refused" }
  | { readonly type: "duty.signed" };

/** Every type of event. */
export const EVENT_TYPES: { readonly [Type in HandoverEvent["type"]]: Type } = {
  "lock.fitted": "lock.fitted",
  "lock.takenApart": "lock.takenApart",
  "parts.replaced": "parts.replaced",
  "mounting.measured": "mounting.measured",
  "authorization.asked": "authorization.asked",
  "ring.aligned": "ring.aligned",
  "ring.loosened": "ring.loosened",
  "zero.set": "zero.set",
  "combination.dialed": "combination.dialed",
  "combination.changed": "combination.changed",
  "pack.rebuilt": "pack.rebuilt",
  "bolt.thrown": "bolt.thrown",
  "bolt.drawnAgain": "bolt.drawnAgain",
  "lock.spunOff": "lock.spunOff",
  "holdback.set": "holdback.set",
  "holdback.released": "holdback.released",
  "observer.entered": "observer.entered",
  "observer.left": "observer.left",
  "wayOut.checked": "wayOut.checked",
  "wayOut.cleared": "wayOut.cleared",
  "release.failed": "release.failed",
  "door.shut": "door.shut",
  "door.opened": "door.opened",
  "record.written": "record.written",
  "record.refused": "record.refused",
  "duty.signed": "duty.signed",
};

/** What an event must carry; a field left out may be anything. */
export type Given = Readonly<Record<string, string | boolean>>;

/** Whether an event carries what is given. */
export function carries(event: HandoverEvent, given: Given = {}): boolean {
  const fields = new Map<string, unknown>(Object.entries(event));
  return Object.entries(given).every(([key, value]) => fields.get(key) === value);
}
