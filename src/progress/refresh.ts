import { type Card, createEmptyCard, fsrs, type Grade, generatorParameters, Rating } from "ts-fsrs";
import { isJobSkill } from "../records/jobRecord";
import { triedRight } from "../records/triedRight";
import { countText } from "../wording/amountWords";
import type { Practice } from "./practice";

/** What of a practice counts for its refresh. */
type Reviewed = Pick<Practice, "opened" | "isLate" | "startedAt" | "exercise">;

/** When practice of a skill is due again. */
export interface Refresh {
  /** Beginning of the day it is due on, milliseconds since 1970. */
  readonly dueAt: number;
  /** Days from today until then; 0 or less when it is due. */
  readonly inDays: number;
  readonly isDue: boolean;
  readonly reason: string;
}

const DAY_MS = 86_400_000;
const MINUTE_MS = 60_000;

/** The scheduler models recall over days, not a motor skill within one: no fuzz, no steps of minutes. */
const scheduler = fsrs(generatorParameters({ enable_fuzz: false, enable_short_term: false, request_retention: 0.9 }));

/** Openings in a day from which a day without a miss counts as easy. */
const EASY_FROM = 5;
/** Share of openings below which a day counts as forgotten. */
const FORGOTTEN_BELOW = 0.5;
/** Share of openings below which a day counts as hard. */
const HARD_BELOW = 0.9;

/** One day's practice as one answer to the scheduler; the shares are training values. */
function gradeOf(attempts: readonly Reviewed[]): Grade {
  const share = attempts.filter(triedRight).length / attempts.length;
  if (share < FORGOTTEN_BELOW) return Rating.Again;
  if (share < HARD_BELOW) return Rating.Hard;
  return share === 1 && attempts.length >= EASY_FROM ? Rating.Easy : Rating.Good;
}

/** Attempts by the day they were made on, days counted from 1970, earliest first. */
function byDay(attempts: readonly Reviewed[], dayOf: (moment: number) => number): [number, Reviewed[]][] {
  const days = new Map<number, Reviewed[]>();
  for (const attempt of attempts) {
    const day = dayOf(attempt.startedAt);
    days.set(day, [...(days.get(day) ?? []), attempt]);
  }
  return [...days.entries()].sort(([a], [b]) => a - b);
}

/** The scheduler counts days between dates; midnights of UTC stand for local days. */
const dateOf = (day: number) => new Date(day * DAY_MS);

/** "December 4", "December 4, 2027" where it is not this year. @param day - days since 1970 */
function dateText(day: number, today: number): string {
  const isSameYear = dateOf(day).getUTCFullYear() === dateOf(today).getUTCFullYear();
  return new Intl.DateTimeFormat("en-US", {
    day: "numeric",
    month: "long",
    timeZone: "UTC",
    ...(isSameYear ? {} : { year: "numeric" }),
  }).format(dateOf(day));
}

/** What the interval is worth, for whoever asks how it is worked out. */
export const REFRESH_NOTE =
  "The interval comes from a memory model (FSRS), which was made for recall, not for hands: each day of practice counts as one answer, and the next day is set where recall would fall to 90 %. For a hand skill it is a rule of thumb.";

interface Told {
  /** Days counted from 1970. */
  readonly today: number;
  readonly lastDay: number;
  readonly dueDay: number;
  /** What was practiced on the last day. */
  readonly practiced: readonly Reviewed[];
}

function reasonOf({ today, lastDay, dueDay, practiced }: Told): string {
  const since = today - lastDay;
  const opened = practiced.filter(triedRight).length;
  const last = since === 0 ? "today" : `${countText(since, "day")} ago`;
  const isJob = practiced.some(isJobSkill);
  const [did, right] = isJob ? ["got", " right"] : ["opened", ""];
  const before = `You last practiced this ${last} and ${did} ${opened} of ${practiced.length}${right}.`;
  if (dueDay > today) return `${before} Practice again by ${dateText(dueDay, today)}.`;
  return `${before} Practice again today: a few tries are enough.`;
}

/**
 * When a skill is due for refresh, by spaced repetition in days.
 *
 * Each day of practice is one review. Source: the scheduler FSRS of ts-fsrs, with its usual weights and a wanted
 * retention of 0.9. It models recall, so for a hand skill its days are a rule of thumb (`REFRESH_NOTE`).
 *
 * @param attempts - of one person at one skill, jobs as practices, at least one
 * @param now - milliseconds since 1970
 * @param dayStart - minutes that the local day begins after that of UTC, as `getTimezoneOffset` of a date gives them
 * @returns null without an attempt
 */
export function refresh(attempts: readonly Reviewed[], now: number, dayStart = 0): Refresh | null {
  const shift = dayStart * MINUTE_MS;
  const dayOf = (moment: number) => Math.floor((moment - shift) / DAY_MS);
  const days = byDay(attempts, dayOf);
  const [first, last] = [days[0], days.at(-1)];
  if (first === undefined || last === undefined) return null;
  const card = days.reduce<Card>(
    (before, [day, made]) => scheduler.next(before, dateOf(day), gradeOf(made)).card,
    createEmptyCard(dateOf(first[0])),
  );
  const today = Math.max(dayOf(now), last[0]);
  const dueDay = Math.round(card.due.getTime() / DAY_MS);
  const inDays = dueDay - today;
  return {
    dueAt: dueDay * DAY_MS + shift,
    inDays,
    isDue: inDays <= 0,
    reason: reasonOf({ today, lastDay: last[0], dueDay, practiced: last[1] }),
  };
}
