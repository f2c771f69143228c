import { type Followed, followedFilm, setUpByFilm } from "../support/film/ordinaryTrial";
import { randomDoor, randomTurning } from "../support/film/randomOrdinary";
import { seeded } from "../support/seeded";

/*
 * Random films of an ordinary dial inside the envelope (tests/support/film/randomOrdinary), ten for each door that is set up:
 * how many are read as they should be. A figure and no test.
 *
 *   npm run bench:ordinary-films                   100 films
 *   npm run bench:ordinary-films -- 1000 7         so many, from another seed
 *   npm run bench:ordinary-films -- 10 7 2500      only the first door, of this seed
 */

const [, , films = "100", seed = "1", only] = process.argv;
const A_DOOR = 10;

const say = (line: string) => process.stdout.write(`${line}\n`);
const chance = seeded(Number(seed));

const doors = { set: 0, refused: 0, unkind: 0 };
const count = { films: 0, frames: 0, notSure: 0, inDoubt: 0 };
const filmsWith = { wrong: 0, restOver: 0, motionOver: 0, strayed: 0, doubted: 0 };
const worst = { rest: 0, motion: 0 };

const largest = (offs: readonly number[]) => Math.max(0, ...offs.map(Math.abs));

function add(name: string, { frames, sure, atRest, moving, wrong, inDoubt, strayed }: Followed): void {
  const [rest, motion] = [largest(atRest), largest(moving)];
  const findings = [
    wrong > 0 && `${wrong} readings wrong unsaid`,
    rest > 0.1 && `off by ${rest.toFixed(2)} at rest`,
    motion > 0.5 && `off by ${motion.toFixed(2)} in motion`,
    strayed > 0 && `${strayed} readings with turns in doubt off their place`,
  ].filter((one) => one !== false);
  if (findings.length > 0) say(`${name}: ${findings.join(", ")}`);
  count.films += 1;
  count.frames += frames;
  count.notSure += frames - sure;
  count.inDoubt += inDoubt;
  if (wrong > 0) filmsWith.wrong += 1;
  if (rest > 0.1) filmsWith.restOver += 1;
  if (motion > 0.5) filmsWith.motionOver += 1;
  if (strayed > 0) filmsWith.strayed += 1;
  if (inDoubt > 0) filmsWith.doubted += 1;
  worst.rest = Math.max(worst.rest, rest);
  worst.motion = Math.max(worst.motion, motion);
}

while (count.films < Number(films)) {
  const isFirst = doors.set + doors.refused === 0;
  const doorSeed = isFirst && only !== undefined ? Number(only) : Math.floor(chance() * 1e9);
  const door = randomDoor(doorSeed);
  // A slow turn is not blurred: one moment of each exposure draws it.
  const reference = setUpByFilm({ ...door.film, sensor: { ...door.film.sensor, moments: 1 } }, undefined, 6);
  if ("code" in reference) {
    doors.refused += 1;
    say(`door ${doorSeed}: refused: ${JSON.stringify(reference)}`);
    continue;
  }
  doors.set += 1;
  if (door.isUnkind) doors.unkind += 1;
  for (let film = 0; film < A_DOOR; film++) {
    add(`door ${doorSeed}, film ${film}`, followedFilm(reference, randomTurning(door, doorSeed, doorSeed + film + 1)));
  }
  say(JSON.stringify({ doors, ...count, filmsWith, worst }));
}
