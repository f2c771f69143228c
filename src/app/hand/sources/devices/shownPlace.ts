import type { DialInHand } from "../deviceSlot";
import type { ShownPlace } from "./dialDevice";

/** Where a dial on the screen is for a device, whose turns may count the other way. */
export function shownPlace(dial: DialInHand | undefined, isReversed: boolean): ShownPlace | null {
  if (dial === undefined) return null;
  const position = dial.position();
  const turns = position / dial.perTurn;
  return { turns: isReversed ? -turns : turns, number: position - dial.perTurn * Math.floor(position / dial.perTurn) };
}
