import type { SpinOff } from "../../dialing/spinOff";
import { capital } from "../../dialing/words";
import { agreeing, countInWords, wheelsText } from "../../wording/amountWords";

const standingText = (wheels: readonly number[]): string =>
  wheels.length === 0
    ? "No wheel is at the combination now."
    : `${capital(wheelsText(wheels))} ${agreeing(wheels.length, "is still at its number", "are still at their numbers")}.`;

/**
 * The spin-off as it is said aloud: in whole turns, for a sentence that changed with every graduation would never be
 * heard to its end.
 */
export function spokenSpinOff({ turn, turnsLeft, wheelsStanding }: SpinOff, hasWheels: boolean): string {
  const say = `Not secure yet. Keep turning ${turn}, ${countInWords(Math.max(1, Math.ceil(turnsLeft)), "more turn")}.`;
  return hasWheels ? `${say} ${standingText(wheelsStanding)}` : say;
}
