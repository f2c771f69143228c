import { opposite } from "../lock/dial";
import { spinOffRule } from "../lock/spinOffRule";
import { wheelsText } from "../wording/amountWords";
import type { Advice, Scene } from "./adviceScene";

const turnsLeftText = (left: number) => {
  // While anything is left it is not nothing.
  const tenths = Math.max(0.1, left).toFixed(1);
  return `${tenths} turn${tenths === "1.0" ? "" : "s"} to go`;
};

const standingText = (wheels: readonly number[]) => {
  if (wheels.length === 0) return "no wheel is at its number now";
  return wheels.length === 1
    ? `${wheelsText(wheels)} is still at its number`
    : `${wheelsText(wheels)} are still at their numbers`;
};

/** How far a lock whose bolt is thrown must still be spun off. */
export const spinningOff = ({ attempt, profile }: Scene): Advice => {
  const { turns } = spinOffRule(profile);
  const spun = attempt.spinOff ?? null;
  const turn = spun?.turn ?? opposite(profile.draw.turn);
  const left = turnsLeftText(spun?.turnsLeft ?? turns);
  return attempt.pack === null
    ? { turn, say: `The bolt is thrown. Keep turning ${turn}: ${left}.`, detail: "" }
    : {
        turn,
        say: `Not secure yet. Spin off: keep turning ${turn}, ${left}.`,
        detail: standingText(spun?.wheelsStanding ?? []),
      };
};
