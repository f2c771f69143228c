import { motionOf } from "../support/film/handMotion";
import { dialedLegs, ordinaryFilm } from "../support/film/ordinaryFilm";
import { ORDINARY_ROWS, USUAL } from "../support/film/ordinaryRows";
import { followedFilm, setUpByFilm } from "../support/film/ordinaryTrial";
import { randomDoor, randomTurning } from "../support/film/randomOrdinary";
import { seeded } from "../support/seeded";
import type { Trial } from "./trial";

/*
 * An ordinary dial before a camera, filmed: one that has the worst of all at once is learned from its slow turn and read; then films
 * that were once read wrong, then random doors (tests/support/film/randomOrdinary), a turning each. No graduation, numeral or turn is
 * taken for another without a word.
 */

/** A reading so far off took one graduation for another, graduations. */
const ANOTHER = 0.75;
/** Doors, and films of each, in which a numeral was once taken for another. */
const ONCE_WRONG: readonly (readonly [door: number, ...films: number[]])[] = [
  // Found where it had not been seen before: bright fingers outshone its print.
  [809101698, 1, 4],
  [26272429, 4],
  // Followed through two pictures that fitted elsewhere as well.
  [179081670, 1],
];
/** The slow turn of a set-up, seconds. */
const TURN_s = 6;

function worstAtOnce(): string | null {
  const film = { ...USUAL, ...ORDINARY_ROWS["worst at once"]?.film };
  const reference = setUpByFilm({ ...film, chance: seeded(1) }, undefined, TURN_s);
  if ("code" in reference) return `refused: ${JSON.stringify(reference)}`;
  const shooting = ordinaryFilm({ ...film, motion: motionOf(dialedLegs(seeded(2), 1, 200)), chance: seeded(1) });
  const { sure, atRest, moving } = followedFilm(reference, shooting);
  return sure === 0 ? "never read" : farOff([...atRest, ...moving]);
}

const farOff = (offs: readonly number[]): string | null => {
  const most = Math.max(0, ...offs.map(Math.abs));
  return most > ANOTHER ? `off by ${most.toFixed(2)} without a word` : null;
};

/** Films of a random door, each with what is wrong in it; none where the door is refused, with a word. */
function* readAt(
  seed: number,
  films: readonly number[],
): Generator<{ readonly name: string; readonly wrong: string | null }> {
  const door = randomDoor(seed);
  const reference = setUpByFilm({ ...door.film, sensor: { ...door.film.sensor, moments: 1 } }, undefined, TURN_s);
  if ("code" in reference) return;
  for (const film of films) {
    const { atRest, moving } = followedFilm(reference, randomTurning(door, seed, seed + film + 1));
    yield { name: `door ${seed}, film ${film}`, wrong: farOff([...atRest, ...moving]) };
  }
}

export const trial: Trial = {
  name: "films of an ordinary dial",
  run: async ({ chance, hasTime, pass, fail }) => {
    const tell = (name: string, wrong: string | null) => (wrong === null ? pass() : fail(`${name}: ${wrong}`));
    tell("worst at once", worstAtOnce());
    const look = (seed: number, films: readonly number[]) => {
      const read = [...readAt(seed, films)];
      for (const { name, wrong } of read) tell(name, wrong);
      return read.length;
    };
    for (const [seed, ...films] of ONCE_WRONG) if (look(seed, films) === 0) fail(`door ${seed}: refused`);
    while (hasTime()) look(Math.floor(chance() * 1e9), [0]);
  },
};
