import type { DialInHand } from "../../../src/app/hand/sources/deviceSlot";
import type { DrawnDial, TurnDial } from "../../../src/app/hand/sources/dialSource";

/** A dial on the screen for tests of devices: each move is told, and it stands where it is said to. */
export function dialInHand(
  turn: TurnDial,
  drawn: Partial<DrawnDial> = {},
  perTurn = 100,
): DialInHand & { readonly now: { -readonly [Key in keyof DrawnDial]: DrawnDial[Key] }; screenMoved: () => void } {
  let moves = 0;
  const now = { position: 0, seen: 0, acts: [], isReplay: false, onDoubt: () => false, ...drawn };
  return {
    perTurn,
    turn,
    now,
    drawn: () => now,
    screenMoves: () => moves,
    screenMoved: () => {
      moves += 1;
    },
  };
}
