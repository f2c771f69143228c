import { faceText } from "../../dialing/words";
import { lostSightRule } from "../../drill/marking/lostSight";
import type { CombinationPolicy, Condition, Order, Sheet, SittingRules, Station } from "../../drill/sheet/sheet";
import { stationProfile } from "../../drill/sheet/stationProfile";
import { TROUBLE_KINDS } from "../../handover/trouble/trouble";
import { TROUBLE_GUIDE } from "../../handover/trouble/troubleGuide";
import type { Combination } from "../../lock/combination";
import { LockError } from "../../lock/lockError";
import type { Profile } from "../../lock/profile";
import { countText } from "../../wording/amountWords";
import { LOST_SIGHT_WORDS } from "./doubtWords";
import { ADMISSION_WORDS } from "./sourceWords";

/** What is said of a try that is over. */
export const TRY_ENDED = "This try has ended.";

/** The lock of a station, or null where the sheet names one that is not known. */
export function knownProfile(station: Station): Profile | null {
  try {
    return stationProfile(station);
  } catch (error) {
    if (error instanceof LockError) return null;
    throw error;
  }
}

/** A span of time as one says it: "90 s", "15 min", "1 h 30 min". */
export function spanText(seconds: number): string {
  if (seconds < 120 || seconds % 60 !== 0) return `${seconds} s`;
  const minutes = seconds / 60;
  const hours = Math.floor(minutes / 60);
  const rest = [hours > 0 && `${hours} h`, minutes % 60 > 0 && `${minutes % 60} min`];
  return rest.filter(Boolean).join(" ");
}

/** A combination as the face of its lock shows it. */
export function combinationText(combination: Combination, profile: Profile | null): string {
  return combination.map((number) => (profile === null ? String(number) : faceText(number, profile))).join("–");
}

export const ORDER_WORDS: Readonly<Record<Order, string>> = {
  blocked: "Blocked: all tries of a station, then the next station",
  interleaved: "In turn: one try at each station, again and again",
  random: "Random: all tries in random order",
};

const HELP_WORDS: Readonly<Record<Station["help"], string>> = {
  full: "full help",
  counts: "arrivals counted, no distances",
  silent: "no help until the end",
};

/** What counts as help where no arrivals are counted. */
const COUNTS: Partial<Record<Station["kind"], string>> = {
  fitting: "gauges without limits",
  service: "a count of what is left to inspect",
  inspection: "a good fit to compare with",
};

/** The help of a station. @param words - for what a dial shows */
export const stationHelp = ({ kind, help }: Station, words: Readonly<Record<Station["help"], string>>): string =>
  (help === "counts" ? COUNTS[kind] : undefined) ?? words[help];

const policyWords = (policy: CombinationPolicy): string => {
  if (policy.policy === "as-set") return "the combination the lock comes with";
  if (policy.policy === "fixed") return countText(policy.list.length, "set combination");
  return policy.each === "station" ? "one random combination" : "a new random combination for each try";
};

const CONDITION_NAMES: Readonly<Record<Condition["kind"], string>> = {
  "index-offset": "the opening index is off",
  "lost-motion": "the dial has play",
  noise: "the readings scatter",
  "heavy-dial": "the dial turns heavily",
  "light-dial": "the dial turns lightly",
  "no-cutaway": "no cutaway",
};

/** Conditions that the trainee is to find out. */
const HIDDEN: readonly Condition["kind"][] = ["index-offset", "lost-motion", "noise"];

/** A condition in words, with its size. */
export function conditionWords(condition: Condition): string {
  const { kind, from = 1 } = condition;
  const size = "size" in condition ? `: ${countText(Math.abs(condition.size), "graduation")}` : "";
  const since = from > 1 ? `${size === "" ? "" : ","} from try ${from} on` : "";
  return `${CONDITION_NAMES[kind]}${size}${since}`;
}

const HAND_WORDS = { real: "you dial", simulated: "a simulated hand dials" } as const;

/** What a station has its trainee do, in a few words. */
export const exerciseWords = (station: Station): string => {
  switch (station.kind) {
    case "dialing":
      return policyWords(station.combinations);
    case "zeroing":
      return "zero set turning right and turning left";
    case "change":
      return `a change to ${policyWords(station.combinations)}`;
    case "trouble":
      return "one hidden defect in each try";
    case "handover":
      return `a whole handover${station.fit === "first" ? " that begins with its fitting" : ""}, ${HAND_WORDS[station.hand]}`;
    case "fitting":
      return "a dial to fit, all parts in the tray";
    case "service":
      return "a service visit, with the papers of each lock";
    case "inspection":
      return "a fit to judge, with some faults or none in each try";
  }
};

/** How a try at a job begins and ends, for whoever is to make it; nothing to tell of a try at a dial alone. */
export function jobNote(station: Station): string | null {
  const profile = knownProfile(station);
  switch (station.kind) {
    case "change":
      return `The lock is set to ${combinationText(profile?.asSet ?? [], profile)}. A try ends when you shut the door or press the button that ends it.`;
    case "trouble":
      return "Dial and measure the lock, then name the defect and its size. The named defect ends the try.";
    case "handover":
      return station.fit === "first"
        ? "All parts of the lock are in the tray. Fit and check the lock, then hand it over. You choose every step. Your signature ends the try."
        : "You choose every step. Your signature ends the try.";
    case "fitting":
      return "Put the parts together in any order, and check the fit. The try ends when you say that the dial is fitted.";
    case "service":
      return "Ask, read, look, measure, and change what the papers of this lock say. The try ends when you leave the site.";
    case "inspection":
      return "Check the lock that somebody else has fitted, then name all that is wrong with it, or say that nothing is. Your answer ends the try.";
    default:
      return null;
  }
}

/** Who reads: a trainee is not told of hidden trouble. */
export type Reader = "trainee" | "instructor";

/** What a station asks, in a line: lock, tries, help, and what else there is. */
export function stationLine(station: Station, reader: Reader): string {
  const { repetitions, timeLimit_s, conditions = [] } = station;
  const told = conditions.filter(({ kind }) => reader === "instructor" || !HIDDEN.includes(kind));
  const parts = [
    knownProfile(station)?.title ?? "unknown lock",
    // In the editor a number may still be missing.
    ...(Number.isNaN(repetitions) ? [] : [countText(repetitions, "try", "tries")]),
    exerciseWords(station),
    stationHelp(station, HELP_WORDS),
    ...(timeLimit_s === undefined || Number.isNaN(timeLimit_s) ? [] : [`at most ${spanText(timeLimit_s)} for a try`]),
    ...("turnedBy" in station && station.turnedBy !== undefined && station.turnedBy !== "any"
      ? [ADMISSION_WORDS[station.turnedBy].toLowerCase()]
      : []),
    ...(lostSightRule(station) === "counts"
      ? []
      : [`hand lost: ${LOST_SIGHT_WORDS[lostSightRule(station)].toLowerCase()}`]),
    ...told.map(conditionWords),
  ];
  return parts.join(" · ");
}

const poolWords = (pool: readonly string[] | undefined): string =>
  pool === undefined
    ? "all defects that the lock can have"
    : pool
        .map((id) => TROUBLE_KINDS.find((kind) => kind === id))
        .map((kind, k) => (kind === undefined ? pool[k] : TROUBLE_GUIDE[kind].title))
        .join(", ");

/** Trouble that a station hides from the trainee, as sentences without their end. */
export function hiddenTrouble(station: Station): string[] {
  if (station.kind === "trouble") return [`drawn from ${poolWords(station.pool)}`];
  const { conditions = [] } = station;
  return conditions.filter(({ kind }) => HIDDEN.includes(kind)).map(conditionWords);
}

/** The rules of a sitting as sentences. */
export function sittingSentences({ pauseAllowed, onReload, clockHideable, timeLimit_s }: SittingRules): string[] {
  return [
    pauseAllowed ? "You may pause between tries." : "There is no pause.",
    onReload === "resume"
      ? "If you close or reload the page, you lose the try under way and the sitting continues."
      : "If you close or reload the page, the sitting ends and is recorded as broken off.",
    clockHideable ? "You may hide the clock." : "The clock is always shown.",
    ...(timeLimit_s === undefined
      ? []
      : [`You have ${spanText(timeLimit_s)} for the whole sitting. Tries not done by then count as missed.`]),
  ];
}

/** A sheet in a line of the shelf. */
export function sheetLine({ stations, sitting }: Sheet): string {
  const tries = stations.reduce((sum, { repetitions }) => sum + (repetitions || 0), 0);
  const questions = (sitting?.questions?.topics ?? []).reduce((sum, { count }) => sum + count, 0);
  return [
    countText(stations.length, "station"),
    countText(tries, "try", "tries"),
    ...(questions > 0 ? [countText(questions, "question")] : []),
    ...(sitting === undefined ? [] : ["a test"]),
  ].join(" · ");
}
