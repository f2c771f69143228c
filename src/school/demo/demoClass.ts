import type { DemoHand } from "../../progress/demo/demoAttempt";
import type { Chance } from "../../statistics/chance";
import { shuffled } from "../../statistics/shuffled";

/** The invented school, and who teaches there. */
export const DEMO_SCHOOL = { name: "Underbell Yard Trade School", instructor: "Kessinda", className: "First years" };

/** Names of invented apprentices. They stand for no real person. */
const NAMES = [
  ...["Asterly", "Brimmock", "Caddow", "Dorvik", "Druvane", "Elsprit", "Fennaby", "Garrold"],
  ...["Hesprin", "Illuven", "Jorrel", "Kestaro", "Lumbrey", "Marrowin", "Mibsy", "Nessock"],
  ...["Ondrell", "Orlibet", "Pelline", "Quildra", "Rostwick", "Selvarn", "Tavro", "Ulveda"],
] as const;

/** Most apprentices of the invented class. */
export const DEMO_CLASS = NAMES.length;

/** An invented apprentice. */
export interface Apprentice {
  readonly name: string;
  /** How well they do: 0 for the least of the class, 1 for the best. */
  readonly skill: number;
  readonly hand: DemoHand;
}

/** Stop errors of the least and of the best hand: standard deviation, and largest bias to either side, graduations. */
const SPREAD = { least: 1, best: 0.3 };
const BIAS = { least: 0.6, best: 0.05 };
/** Share of tries in which the least of the class counts a turn too many. */
const MISCOUNTS = 0.2;
/** Slowest and fastest hand, graduations a second; a fast one is not always a good one. */
const SPEED = { least: 22, most: 45 };

const between = (least: number, best: number, skill: number) => least + (best - least) * skill;

function apprentice(name: string, skill: number, chance: Chance): Apprentice {
  const bias = between(BIAS.least, BIAS.best, skill) * (2 * chance() - 1);
  const speed = between(SPEED.least, SPEED.most, chance());
  const spread = between(SPREAD.least, SPREAD.best, skill);
  return { name, skill, hand: { bias, spread, miscounts: MISCOUNTS * (1 - skill) ** 2, speed } };
}

/**
 * An invented class, its skills spread evenly from the least to the best.
 *
 * @param count - of apprentices, 1 to `DEMO_CLASS`
 */
export function demoClass(count: number, chance: Chance): readonly Apprentice[] {
  const names = NAMES.slice(0, count);
  const skills = shuffled(
    names.map((_, k) => (count === 1 ? 1 : k / (count - 1))),
    chance,
  );
  return names.map((name, k) => apprentice(name, skills[k] ?? 0, chance));
}
