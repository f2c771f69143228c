import type { SpinOff } from "../../dialing/spinOff";
import { countInWords } from "../../wording/amountWords";

const turnsText = (turns: number) => countInWords(turns, "more turn");

const wheelsText = (wheels: readonly number[]): string => {
  const [only] = wheels;
  if (only === undefined) return "No wheel is at the combination now.";
  if (wheels.length === 1) return `Wheel ${only} is still at its number.`;
  return `Wheels ${wheels.slice(0, -1).join(", ")} and ${wheels.at(-1)} are still at their numbers.`;
};

/**
 * The spin-off as it is said aloud: in whole turns, for a sentence that changed with every graduation would never be
 * heard to its end.
 */
export function spokenSpinOff({ turn, turnsLeft, wheelsStanding }: SpinOff, hasWheels: boolean): string {
  const say = `Not secure yet. Keep turning ${turn}, ${turnsText(Math.max(1, Math.ceil(turnsLeft)))}.`;
  return hasWheels ? `${say} ${wheelsText(wheelsStanding)}` : say;
}
