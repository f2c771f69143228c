import { PackChange } from "../../../../handover/change/packChange";
import { Cutaway } from "../../../pictures/cutaway/Cutaway";
import type { CutawayKey, CutawayLock } from "../../../pictures/cutaway/cutawayView";
import { PackInside } from "../../../pictures/cutaway/PackInside";
import type { ChangeSession } from "./changeSession";
import "../../../pictures/cutaway/cutaway.css";

/** What the cutaway shows of a pack that is being changed: its gates where the key holds them, and the key. */
function packLock(change: PackChange): { readonly lock: CutawayLock; readonly changeKey: CutawayKey } {
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

/** The inside of a lock while its combination is changed. */
export function ChangeInside({ session }: { readonly session: ChangeSession }) {
  const { change, version } = session;
  if (!(change instanceof PackChange)) return <Cutaway attempt={change.attempt} version={version} />;
  const { lock, changeKey } = packLock(change);
  return <PackInside attempt={lock} version={version} changeKey={changeKey} />;
}
