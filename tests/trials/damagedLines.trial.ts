import { readDamaged } from "../support/board/falseMotion";
import type { Trial } from "./trial";

/*
 * An encoder's lines, damaged on their way: whatever is made of them, undamaged lines would say it too.
 */

const ROUND = 2000;

export const trial: Trial = {
  name: "damaged lines of an encoder",
  run: async ({ chance, hasTime, pass, fail }) => {
    for (let round = 1; round === 1 || hasTime(); round++) {
      let moves = 0;
      for (let k = 0; k < ROUND; k++) {
        const read = readDamaged(chance);
        moves += read.moves;
        if (read.falseMotion !== null) fail(`round ${round}, sequence ${k}: ${read.falseMotion}`);
      }
      // Most of what is damaged leaves sound lines; where none is left, nothing was tried.
      if (moves > ROUND) pass();
      else fail(`round ${round}: only ${moves} moves in ${ROUND} sequences`);
    }
  },
};
