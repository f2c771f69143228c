import type { PackChange } from "../../../../handover/change/packChange";
import type { CutawayKey, CutawayLock } from "../../../pictures/cutaway/cutawayView";

/** What the cutaway shows of a pack that is being changed: its gates where the key holds them, and the key. */
export function packLock(change: PackChange): { readonly lock: CutawayLock; readonly changeKey: CutawayKey } {
  const { keyed, proof, profile, hand } = change;
  // In a proof the try has the wheels.
  const pack = proof?.attempt.pack ?? keyed.pack;
  const port = profile.changing.index;
  const errors = proof === null ? keyed.gateErrors() : pack.errors();
  const isForNew = keyed.key === "turned" || change.record.newHand !== null;
  const lock: CutawayLock = {
    profile,
    dial: change.dial,
    isCoupled: pack.engagedAt !== null,
    retraction: change.retraction,
    reader: hand.reader,
    pack: {
      profile,
      combination: isForNew ? change.wanted : pack.combination,
      stands: () => pack.stands(),
      errors: () => errors,
      slack: () => pack.slack(),
    },
  };
  return { lock, changeKey: { place: keyed.key, errors: errors.map((error) => error - port), port } };
}
