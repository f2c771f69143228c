import { reading } from "../../../../lock/dial";
import type { DialInHand } from "../deviceSlot";
import type { ShownPlace } from "./dialDevice";

/**
 * Where a dial on the screen is for a device, whose turns may count the other way. A dial in the hand has an index of its own,
 * which stands for the one that is drawn: so it is what that one reads.
 */
export function shownPlace(dial: DialInHand | undefined, isReversed: boolean): ShownPlace | null {
  if (dial === undefined) return null;
  const { seen: position, keepsMoves = false } = dial.drawn();
  const turns = position / dial.perTurn;
  return {
    turns: isReversed ? -turns : turns,
    number: reading(position, dial.perTurn),
    perTurn: dial.perTurn,
    keepsMoves,
  };
}

/** A number of a dial, to half a graduation. */
export const halfText = (number: number): string => String(Math.round(2 * number) / 2);

/** The number that a dial on the screen shows, to half a graduation. */
export const shownNumber = (dial: DialInHand): string => halfText(shownPlace(dial, false)?.number ?? 0);
