import type { Combination } from "../../lock/combination";
import type { Profile } from "../../lock/profile";
import type { Chance } from "../../statistics/chance";
import { shuffled } from "../../statistics/shuffled";
import { combinationDrawer } from "../combinations/drawCombination";
import { drillProblem } from "../drillWords";
import { SheetError } from "../sheetError";
import type { ChangeStation, CombinationPolicy, DialingStation, Order, Sheet, Station } from "./sheet";
import { stationProfile } from "./stationProfile";

/** One try of a sheet: at which station, and which of its repetitions. */
export interface TryPlace {
  /** Index of the station. */
  readonly station: number;
  /** Counted from 1 within the station, in the order of the tries. */
  readonly repetition: number;
}

/** One try. */
export interface PlannedTry extends TryPlace {
  /** What is to be dialed, or set in a change; null where zero is set, and where the exercise brings its own. */
  readonly combination: Combination | null;
}

const blocked = (repetitions: readonly number[]): number[] =>
  repetitions.flatMap((count, station) => Array.from({ length: count }, () => station));

/** One try at each station in turn; a station that is done is passed over. */
const interleaved = (repetitions: readonly number[]): number[] => {
  const rounds = repetitions.reduce((most, count) => Math.max(most, count), 0);
  return Array.from({ length: rounds }, (_, round) =>
    repetitions.flatMap((count, station) => (round < count ? [station] : [])),
  ).flat();
};

/**
 * The order of all tries.
 *
 * @param repetitions - tries of each station
 * @param chance - asked only where the order is random
 */
export function tryOrder(repetitions: readonly number[], order: Order, chance: Chance): TryPlace[] {
  const inTurn = order === "interleaved" ? interleaved(repetitions) : blocked(repetitions);
  const stations = order === "random" ? shuffled(inTurn, chance) : inTurn;
  const done = repetitions.map(() => 0);
  return stations.map((station) => {
    const repetition = (done[station] ?? 0) + 1;
    done[station] = repetition;
    return { station, repetition };
  });
}

/** Draws before one gives up to find a new combination: even of two allowed ones, one fails 2^-60 of the time. */
const MOST_DRAWS = 60;

/** A drawer that never gives the combination the lock has already. */
function newCombinationDrawer(draw: Drawer, asSet: Combination | undefined): Drawer {
  return (chance) => {
    for (let count = 0; count < MOST_DRAWS; count++) {
      const drawn = draw(chance);
      if (drawn.join() !== asSet?.join()) return drawn;
    }
    throw new SheetError(drillProblem("no-other-combination", []));
  };
}

type Drawer = (chance: Chance) => Combination;

function stationDrawer({ kind, combinations }: DialingStation | ChangeStation, profile: Profile): Drawer {
  const draw = combinationDrawer(profile, combinations.policy === "drawn" ? combinations.rules : undefined);
  return kind === "change" ? newCombinationDrawer(draw, profile.asSet) : draw;
}

function policyCombinations(station: DialingStation | ChangeStation, chance: Chance): Combination[] {
  const { repetitions } = station;
  const combinations: CombinationPolicy = station.combinations;
  const profile = stationProfile(station);
  const each = (give: (index: number) => Combination) => Array.from({ length: repetitions }, (_, index) => give(index));
  if (combinations.policy === "as-set") return each(() => profile.asSet ?? []);
  if (combinations.policy === "fixed")
    return each((index) => combinations.list[index % combinations.list.length] ?? []);
  const draw = stationDrawer(station, profile);
  if (combinations.each !== "station") return each(() => draw(chance));
  const one = draw(chance);
  return each(() => one);
}

const stationCombinations = (station: Station, chance: Chance): readonly (Combination | null)[] =>
  station.kind === "dialing" || station.kind === "change"
    ? policyCombinations(station, chance)
    : Array.from({ length: station.repetitions }, () => null);

/**
 * All tries of a sheet in their order, with their combinations: the same for the same chance.
 *
 * @param chance - seeded by the sheet's own seed, or by that of the run
 * @throws {SheetError} `no-combination`
 */
export function planTries(sheet: Sheet, chance: Chance): PlannedTry[] {
  const order = tryOrder(
    sheet.stations.map(({ repetitions }) => repetitions),
    sheet.order,
    chance,
  );
  const combinations = sheet.stations.map((station) => stationCombinations(station, chance));
  return order.map((place) => ({
    ...place,
    combination: combinations[place.station]?.[place.repetition - 1] ?? null,
  }));
}
