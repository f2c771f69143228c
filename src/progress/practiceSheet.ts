import { parseSheet } from "../drill/sheet/parseSheet";
import type { DialingStation, Order, Sheet } from "../drill/sheet/sheet";
import { isOfSheet } from "../records/attemptConditions";
import type { AttemptRecord } from "../records/attemptRecord";
import { conditionsOfCodes } from "../records/conditionCode";
import { firstNumbersOf } from "../records/exercise";
import { ORDER_REASONS, type PracticeOrder } from "./practiceOrder";
import type { Suggestion } from "./whatNext";

/** Tries at each skill in one run of practice: few enough to be made at a sitting. A training value. */
const TRIES_EACH = 4;

/** Stations that a sheet takes. */
const MOST_STATIONS = 40;

/** How a sheet calls each order of practice. */
const SHEET_ORDERS: Readonly<Record<PracticeOrder, Order>> = {
  blocked: "blocked",
  serial: "interleaved",
  random: "random",
};

/** A station that practices an exercise; null for an exercise that is not known here. */
function stationFor(
  exercise: string,
  rest: Omit<DialingStation, "kind" | "passMarks" | "upTo">,
): DialingStation | null {
  const upTo = firstNumbersOf(exercise);
  if (upTo === undefined) return null;
  return { kind: "dialing", ...rest, ...(upTo !== null && { upTo }), passMarks: {} };
}

function sheetOf(head: Pick<Sheet, "title" | "purpose" | "order">, stations: readonly DialingStation[]): Sheet {
  return { format: "gatefall-sheet", version: 1, ...head, stations };
}

/** Whether a sheet takes the station: its lock may not be known here. */
function isSound(station: DialingStation): boolean {
  try {
    parseSheet(sheetOf({ title: "One", purpose: "One.", order: "blocked" }, [station]));
    return true;
  } catch {
    return false;
  }
}

/** The sound ones of some stations as a sheet; null of none. */
function soundSheet(
  head: Pick<Sheet, "title" | "purpose" | "order">,
  stations: readonly (DialingStation | null)[],
): Sheet | null {
  const sound = stations.filter((one) => one !== null).filter(isSound);
  return sound.length === 0 ? null : sheetOf(head, sound.slice(0, MOST_STATIONS));
}

function missStation(miss: AttemptRecord, index: number): DialingStation | null {
  const conditions = conditionsOfCodes(miss.conditions);
  if (!conditions?.every(isOfSheet)) return null;
  return stationFor(miss.exercise, {
    id: `miss-${index + 1}`,
    title: `Miss ${index + 1}`,
    // A sheet checks a whole profile as it checks one from a file.
    profile: (miss.ownProfile as DialingStation["profile"] | undefined) ?? miss.profileId,
    combinations: { policy: "fixed", list: [miss.combination] },
    help: miss.help,
    repetitions: 1,
    ...(conditions.length > 0 && { conditions }),
  });
}

/**
 * A sheet that asks for misses again and for nothing else, each once under the very settings it was missed under.
 *
 * @param misses - in the order they are to be redone
 * @returns null where none of them can be set up here
 */
export function redoSheet(misses: readonly AttemptRecord[]): Sheet | null {
  return soundSheet(
    { title: "Only the misses", purpose: "Open what you missed, each once, as it was.", order: "blocked" },
    misses.map(missStation),
  );
}

/**
 * A sheet of what is not shown yet or due for refresh, in the order and with the help that fit the learner.
 *
 * @param suggestions - as `whatNext` gives them; misses are left to `redoSheet`
 * @returns null where nothing is to be practiced, or none of it can be set up here
 */
export function practiceSheet(suggestions: readonly Suggestion[], order: PracticeOrder): Sheet | null {
  const stations = suggestions
    .filter(({ kind }) => kind !== "redo-misses")
    .map(({ skill, help }, index) =>
      stationFor(skill.exercise, {
        id: `skill-${index + 1}`,
        profile: skill.profileId,
        // One lock many times over keeps its numbers; later every try brings new ones.
        combinations: { policy: "drawn", each: order === "blocked" ? "station" : "try" },
        help,
        repetitions: TRIES_EACH,
      }),
    );
  return soundSheet({ title: "Practice run", purpose: ORDER_REASONS[order], order: SHEET_ORDERS[order] }, stations);
}
