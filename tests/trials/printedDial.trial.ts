import { PrintedDial } from "../../src/realdial/printed/printedDial";
import { type Judged, judged } from "../support/film/judgedFilm";
import { printedFilm } from "../support/film/printedFilm";
import { randomPrinted } from "../support/film/randomPrinted";
import type { Trial } from "./trial";

/*
 * Random films of a printed dial inside the envelope (tests/support/film/randomPrinted): no turn is miscounted without a word,
 * and no reading is off by more than its limit. A film in which turns are told to be in doubt is no failure.
 */

/** Graduations: at rest and below 0.7 turns/s, and faster. */
const LIMITS = { slow: 0.3, fast: 0.6 };

function wrongIn({ slow, fast, miscounted }: Judged): string | null {
  if (miscounted > 0) return `${miscounted} readings miscounted without a word`;
  if (slow.largest > LIMITS.slow) return `off by ${slow.largest.toFixed(2)} when slow`;
  return fast.largest > LIMITS.fast ? `off by ${fast.largest.toFixed(2)} when fast` : null;
}

export const trial: Trial = {
  name: "random films of a printed dial",
  run: async ({ chance, hasTime, pass, fail }) => {
    for (let round = 0; round === 0 || hasTime(); round++) {
      const seed = Math.floor(chance() * 1e9);
      const dial = new PrintedDial(100);
      const film = printedFilm(randomPrinted(seed), seed);
      const wrong = wrongIn(judged(film, ({ picture, at }) => dial.follow(picture, at)));
      if (wrong === null) pass();
      else fail(`film ${seed}: ${wrong}`);
    }
  },
};
