import { PrintedDial } from "../../src/realdial/printed/printedDial";
import { type Judged, judged } from "../support/film/judgedFilm";
import { printedFilm } from "../support/film/printedFilm";
import { randomPrinted } from "../support/film/randomPrinted";
import type { Trial } from "./trial";

/*
 * Random films of a printed dial inside the envelope (tests/support/film/randomPrinted): no turn is miscounted without a word,
 * and no reading is off by more than its limit. A film in which turns are told to be in doubt is no failure.
 */

/** Graduations. One frame in motion may be worse than the aim of 0.5 by chance. */
const LIMITS = { rest: 0.2, motion: 0.6 };

function wrongIn({ rest, slow, fast, miscounted }: Judged): string | null {
  if (miscounted > 0) return `${miscounted} readings miscounted without a word`;
  if (rest.largest > LIMITS.rest) return `off by ${rest.largest.toFixed(2)} at rest`;
  const largest = Math.max(slow.largest, fast.largest);
  return largest > LIMITS.motion ? `off by ${largest.toFixed(2)} in motion` : null;
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
