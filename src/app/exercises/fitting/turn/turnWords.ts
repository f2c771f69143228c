import type { Assembly } from "../../../../fitting/assembly";
import { gapOf, keywayAt, type LockToFit } from "../../../../fitting/fittedLock";
import type { TurnedParts } from "../../../../fitting/teaching/turnedParts";
import { wrap } from "../../../../lock/dial";
import { graduationsText } from "../../../../wording/amountWords";

/** Where the dial's zero is. */
function zeroText({ dial }: TurnedParts, perTurn: number): string {
  const off = wrap(dial, perTurn);
  const size = Math.abs(off).toFixed(1);
  if (size === "0.0") return "The dial's zero is at the top.";
  return `The dial's zero is ${graduationsText(size)} to the ${off > 0 ? "left" : "right"} of the top.`;
}

/** How far an eye tells the dial from the ring, millimeters. */
function closeText(gap_mm: number): string {
  if (gap_mm === 0) return "It is on the ring.";
  if (gap_mm < 1) return "It is close to the ring.";
  return `It is some ${Math.round(gap_mm)} mm from the ring.`;
}

/** What an eye sees of a dial without a key, as it is screwed in. */
function screwedText(assembly: Assembly, lock: LockToFit): string {
  const { dialIn, spindle } = assembly;
  if (dialIn === null) return "The dial is in the tray.";
  const keyway = keywayAt(lock, dialIn);
  const slot =
    keyway === null ? "No keyway lines up with the spindle's slot." : "A keyway lines up with the spindle's slot.";
  return `${closeText(gapOf(lock, spindle.length_mm, dialIn))} ${slot}`;
}

/** What an eye sees of the lever as the cam turns. */
function leverText({ noseIn, lift_mm }: TurnedParts, isElectronic: boolean): string {
  if (lift_mm > 0) return `The key lifts the lever ${lift_mm.toFixed(1)} mm.`;
  if (noseIn === 1) return "The nose is in the gate.";
  if (noseIn > 0) return "The nose is at the edge of the gate.";
  return isElectronic ? "The lever is free of the key." : "The nose rides on the cam.";
}

/** What an eye sees of a lock as it is turned, in a few sentences. */
export function turnedText(assembly: Assembly, lock: LockToFit, turned: TurnedParts): string {
  const seen = assembly.key === null ? screwedText(assembly, lock) : leverText(turned, lock.isElectronic);
  return assembly.dialIn === null ? seen : `${zeroText(turned, lock.perTurn)} ${seen}`;
}
