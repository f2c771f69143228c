import { faceText } from "../../dialing/words";
import type { CombinationPolicy, Condition, Order, Sheet, SittingRules, Station } from "../../drill/sheet/sheet";
import { stationProfile } from "../../drill/sheet/stationProfile";
import type { Combination } from "../../lock/combination";
import { LockError } from "../../lock/lockError";
import type { Profile } from "../../lock/profile";

/** "1 try", "3 tries". */
export function countText(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** What a station is called: its title, or its place. */
export function stationName({ title }: Station, index: number): string {
  return title === undefined || title === "" ? `Station ${index + 1}` : title;
}

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
  blocked: "Blocked: one station after another",
  interleaved: "Interleaved: one try at each station in turn",
  random: "Random: all tries shuffled",
};

export const HELP_WORDS: Readonly<Record<Station["help"], string>> = {
  full: "full help",
  counts: "arrivals counted, no distances",
  silent: "no help until the end",
};

const policyWords = (policy: CombinationPolicy): string => {
  if (policy.policy === "as-set") return "the combination the lock comes with";
  if (policy.policy === "fixed") return countText(policy.list.length, "given combination");
  return policy.each === "station" ? "one drawn combination" : "a new drawn combination each try";
};

const CONDITION_NAMES: Readonly<Record<Condition["kind"], string>> = {
  "index-offset": "the opening index stands off",
  "lost-motion": "the dial has play",
  noise: "readings scatter",
  "heavy-dial": "the dial turns heavily",
  "light-dial": "the dial turns lightly",
  "no-cutaway": "no cutaway",
};

/** Conditions that the trainee is to find out. */
const HIDDEN: readonly Condition["kind"][] = ["index-offset", "lost-motion", "noise"];

/** A condition in words, with its size. */
export function conditionWords(condition: Condition): string {
  const { kind, from = 1 } = condition;
  const size = "size" in condition ? ` by ${Math.abs(condition.size)}` : "";
  const since = from > 1 ? ` from try ${from} on` : "";
  return `${CONDITION_NAMES[kind]}${size}${since}`;
}

const HAND_WORDS = { real: "dialing by hand", simulated: "a simulated hand dials" } as const;

const exerciseWords = (station: Station): string => {
  switch (station.kind) {
    case "dialing":
      return policyWords(station.combinations);
    case "zeroing":
      return "zero from both directions";
    case "change":
      return `a change to ${policyWords(station.combinations)}`;
    case "trouble":
      return "one hidden condition each try";
    case "handover":
      return `a whole handover, ${HAND_WORDS[station.hand]}`;
  }
};

/** How a try at a job begins and ends, for whoever is to make it; nothing to tell of a try at a dial alone. */
export function jobNote(station: Station): string | null {
  const profile = knownProfile(station);
  switch (station.kind) {
    case "change":
      return `The lock comes set to ${combinationText(profile?.asSet ?? [], profile)}. A try ends with the door shut, or when you say so.`;
    case "trouble":
      return "Dial it and measure it, then name the condition and its size: a diagnosis that stands ends a try.";
    case "handover":
      return "Every step is yours to choose; your signature ends a try.";
    default:
      return null;
  }
}

/** Who reads: a trainee is not told of hidden trouble. */
export type Reader = "trainee" | "instructor";

/** What a station asks, in a line: lock, tries, help, and what else there is. */
export function stationLine(station: Station, reader: Reader): string {
  const { repetitions, help, timeLimit_s, conditions = [] } = station;
  const told = conditions.filter(({ kind }) => reader === "instructor" || !HIDDEN.includes(kind));
  const parts = [
    knownProfile(station)?.title ?? "unknown lock",
    countText(repetitions, "try", "tries"),
    exerciseWords(station),
    HELP_WORDS[help],
    ...(timeLimit_s === undefined ? [] : [`at most ${spanText(timeLimit_s)} a try`]),
    ...told.map(conditionWords),
  ];
  return parts.join(" · ");
}

/** Trouble that a station hides from the trainee, as sentences without their end. */
export function hiddenTrouble(station: Station): string[] {
  if (station.kind === "trouble") return [`drawn from ${(station.pool ?? ["all that the lock can have"]).join(", ")}`];
  const { conditions = [] } = station;
  return conditions.filter(({ kind }) => HIDDEN.includes(kind)).map(conditionWords);
}

/** The rules of a sitting as sentences. */
export function sittingSentences({ pauseAllowed, onReload, clockHideable, timeLimit_s }: SittingRules): string[] {
  return [
    pauseAllowed ? "You may pause between tries." : "There is no pause.",
    onReload === "resume"
      ? "If the page is closed or reloaded, the try under way is lost and the sitting goes on."
      : "If the page is closed or reloaded, the sitting is over and recorded as broken off.",
    clockHideable ? "You may hide the clock." : "The clock stays in view.",
    ...(timeLimit_s === undefined
      ? []
      : [`The whole time is at most ${spanText(timeLimit_s)}; what is missing then counts as missed.`]),
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
    ...(sitting === undefined ? [] : ["sat as a test"]),
  ].join(" · ");
}
