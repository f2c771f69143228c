import type { Graduations } from "../../lock/dial";

/** What happened in a change with a key, as the engine reports it and the chart takes it in. */
export type PackChangeFact =
  /** Every gate ring has come to stand at the key port. */
  | { readonly type: "present.stands" }
  | { readonly type: "present.left" }
  | { readonly type: "key.inserted" }
  | { readonly type: "key.turned" }
  /** The key was turned with rings away from the port. */
  | {
      readonly type: "pack.spoiled";
      readonly numbers: readonly number[];
      /** How far each stood from the port, wheel 1 first, graduations. */
      readonly errors: readonly Graduations[];
    }
  /** Every hub stands where the new combination wants it, within its gate's tolerance. */
  | { readonly type: "new.stands" }
  | { readonly type: "new.left" }
  | { readonly type: "key.turnedBack" }
  | { readonly type: "key.withdrawn" }
  /** The hand leaves the proofs to change the combination once more. */
  | { readonly type: "change.again" }
  | ProofFact;

/** What happened in a change on the dial of an encoder lock. */
export type EncoderChangeFact =
  | { readonly type: "present.opened" }
  | { readonly type: "present.refused" }
  /** The bolt went out again before the change button was pressed. */
  | { readonly type: "present.closed" }
  | { readonly type: "button.pressed" }
  | { readonly type: "entry.taken" }
  /** A dialing that the lock cannot take: one number, from 1, had too few turns; or 0, the hand turned about too often. */
  | { readonly type: "entry.refused"; readonly number: number }
  | { readonly type: "entries.agreed" }
  | { readonly type: "entries.differed" }
  | ProofFact;

/** What happened in a change of either kind. */
export type ChangeFact = PackChangeFact | EncoderChangeFact;

/** What happened when the new combination was tried. */
export type ProofFact =
  | { readonly type: "proof.opened" }
  | { readonly type: "proof.refused" }
  | { readonly type: "door.shut" };
