import type { Chance } from "../../statistics/chance";

/** What a run finds at the door. */
export interface HandoverScene {
  /** Where the door is, in words. */
  readonly door: string;
  /** How the lock is called on its plate; invented. */
  readonly lock: string;
  /** Height of the dial's middle above the floor, inches. */
  readonly height_in: number;
  /** Whether something is in the way of the inside release, which only a check shows. */
  readonly isReleaseBlocked: boolean;
  /** The second person, and the one who can stay inside. */
  readonly second: string;
  readonly observer: string;
}

const DOORS = ["Tool crib, door 2", "Records room, north door", "Coin room, ground floor", "Sample store, door 5"];
const PEOPLE = ["R. Tarn", "M. Quill", "O. Brandreth", "E. Sallow", "J. Pike", "N. Harrow"];
const HEIGHTS_IN = [38, 41, 44, 46, 47.5, 50, 52];

const pick = <Item>(items: readonly Item[], chance: Chance, fallback: Item): Item =>
  items[Math.floor(chance() * items.length)] ?? fallback;

/** How often the release of a training door is blocked. */
const BLOCKED = 0.25;

/** The scene of a seed's run: the same chance gives the same scene. All of it is invented. */
export function drawScene(chance: Chance): HandoverScene {
  const door = pick(DOORS, chance, "Tool crib, door 2");
  const lock = `Lock ${100 + Math.floor(chance() * 900)}`;
  const height_in = pick(HEIGHTS_IN, chance, 44);
  const isReleaseBlocked = chance() < BLOCKED;
  const second = pick(PEOPLE, chance, "R. Tarn");
  const observer = pick(
    PEOPLE.filter((name) => name !== second),
    chance,
    "M. Quill",
  );
  return { door, lock, height_in, isReleaseBlocked, second, observer };
}
