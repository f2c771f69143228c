import { PrintedDial } from "../../src/realdial/printed/printedDial";
import { seededChance } from "../../src/statistics/chance";
import { judged } from "../support/film/judgedFilm";
import { printedFilm } from "../support/film/printedFilm";
import { randomPrinted } from "../support/film/randomPrinted";

/*
 * Random films of a printed dial inside the envelope (tests/support/film/randomPrinted): how many are read as they should be.
 * A figure and no test: some films miss the aim of 0.1 at rest by a little, and a test that fails by chance proves nothing.
 *
 *   npm run bench:films                   100 films
 *   npm run bench:films -- 1000 7         so many, from another seed
 */

const [, , films = "100", seed = "1"] = process.argv;

const say = (line: string) => process.stdout.write(`${line}\n`);
const chance = seededChance(Number(seed));

const count = { films: 0, miscounted: 0, restOver: 0, edgeOver: 0, motionOver: 0, doubted: 0, lost: 0 };
const largest = { rest: 0, motion: 0 };
for (; count.films < Number(films); count.films++) {
  const film = Math.floor(chance() * 1e9);
  const dial = new PrintedDial(100);
  const { rest, edge, slow, fast, miscounted, doubted, without } = judged(
    printedFilm(randomPrinted(film), film),
    ({ picture, at }) => dial.follow(picture, at),
  );
  const motion = Math.max(slow.largest, fast.largest);
  const findings = [
    miscounted > 0 && `${miscounted} readings miscounted unsaid`,
    rest.largest > 0.1 && `off by ${rest.largest.toFixed(2)} at rest`,
    edge.largest > 0.1 && `off by ${edge.largest.toFixed(2)} where a turn began or ended within the frame`,
    motion > 0.5 && `off by ${motion.toFixed(2)} in motion`,
  ].filter((one) => one !== false);
  if (findings.length > 0) say(`film ${film}: ${findings.join(", ")}`);
  if (miscounted > 0) count.miscounted += 1;
  if (rest.largest > 0.1) count.restOver += 1;
  if (edge.largest > 0.1) count.edgeOver += 1;
  largest.rest = Math.max(largest.rest, rest.largest);
  largest.motion = Math.max(largest.motion, motion);
  if (motion > 0.5) count.motionOver += 1;
  if (doubted > 0) count.doubted += 1;
  if (Object.keys(without).length > 0) count.lost += 1;
}
say(
  `${count.films} films: ${count.miscounted} with a turn miscounted unsaid, ${count.restOver} off by more than 0.1 at rest, ` +
    `${count.edgeOver} in a frame in which a turn began or ended, ` +
    `${count.motionOver} by more than 0.5 in motion, ${count.doubted} with turns told to be in doubt, ${count.lost} with frames not read; ` +
    `at most ${largest.rest.toFixed(2)} at rest, ${largest.motion.toFixed(2)} in motion`,
);
