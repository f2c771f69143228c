import { motionOf } from "../support/film/handMotion";
import { dialedLegs, ordinaryFilm } from "../support/film/ordinaryFilm";
import { ORDINARY_ROWS, type OrdinaryRow, USUAL } from "../support/film/ordinaryRows";
import { type Followed, followedFilm, setUpByFilm } from "../support/film/ordinaryTrial";
import { seeded } from "../support/seeded";

/*
 * The table of an ordinary dial, set up and followed through films: errors of sure readings in graduations, at rest and in motion.
 *
 *   npm run bench:ordinary             all rows: a minute or two each
 *   npm run bench:ordinary -- tilt     only rows with that in their name
 *   npm run bench:ordinary -- "" 7     with other doors, hands and noise: the films of seed 0 were looked at while the follower was made
 */

const [, , only = "", seedText = "0"] = process.argv;
const seed = Number(seedText);

const say = (line: string) => process.stdout.write(`${line}\n`);

function inWords(offs: readonly number[]): string {
  if (offs.length === 0) return "none";
  const mean = offs.reduce((sum, off) => sum + off, 0) / offs.length;
  const sd = Math.sqrt(offs.reduce((sum, off) => sum + (off - mean) ** 2, 0) / offs.length);
  return `${mean.toFixed(3)} ± ${sd.toFixed(3)} (${Math.max(...offs.map(Math.abs)).toFixed(2)})`;
}

/** Time of the processor, ms. */
function spent(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

const row = (name: string, { atRest, moving, frames, sure, wrong, inDoubt, msPerFrame }: Followed) =>
  `| ${name} | ${inWords(atRest)} | ${inWords(moving)} | ${frames - sure} of ${frames} | ${wrong} | ${inDoubt} | ${msPerFrame.toFixed(1)} |`;

function followedRow({ film = {}, later = {}, fastest = 200 }: OrdinaryRow): Followed | string {
  const reference = setUpByFilm({ ...USUAL, ...film, chance: seeded(1 + 2 * seed) }, undefined, 6);
  if ("code" in reference) return JSON.stringify(reference);
  const motion = motionOf(dialedLegs(seeded(2 + 2 * seed), 3, fastest));
  // The door is the same: it is drawn by the same chance.
  const shooting = ordinaryFilm({ ...USUAL, ...film, ...later, motion, chance: seeded(1 + 2 * seed) });
  return followedFilm(reference, shooting, spent);
}

say("| film | at rest: bias ± SD (max) | in motion | not sure | wrong unsaid | in doubt | ms a frame |");
say("| --- | --- | --- | --- | --- | --- | --- |");
for (const [name, conditions] of Object.entries(ORDINARY_ROWS)) {
  if (!name.includes(only)) continue;
  const came = followedRow(conditions);
  say(typeof came === "string" ? `| ${name} | refused: ${came} |` : row(name, came));
}
