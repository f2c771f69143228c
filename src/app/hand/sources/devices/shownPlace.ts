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

/** The number that a dial shows, to half a graduation. */
export const halfText = ({ number, perTurn }: Pick<ShownPlace, "number" | "perTurn">): string =>
  String((Math.round(2 * number) / 2) % perTurn);

/** The number that a dial on the screen shows, to half a graduation. */
export function shownNumber(dial: DialInHand): string {
  const place = shownPlace(dial, false);
  return place === null ? "0" : halfText(place);
}
