import { capital } from "../../dialing/words";

/** Events after which a combination is changed, in words that fit a sentence. Source: 5 CFR 1312.25 (rev. 1 Jan 2001); local rules decide. */
export const CHANGE_EVENTS: readonly string[] = [
  "the lock is placed in use",
  "someone who holds the combination no longer needs access",
  "the combination may have become known",
  "the lock is taken out of service",
  "a year has passed",
];

/** The same as a record has them, each a sentence. */
export const CHANGE_SENTENCES: readonly string[] = CHANGE_EVENTS.map((event) => `${capital(event)}.`);

/** Where `CHANGE_EVENTS` and the yearly rule come from. */
export const CHANGE_SOURCE =
  "5 CFR 1312.25 (rev. 1 Jan 2001), the rule of one federal office, as an example; local rules decide";

/** How version 0.2.0 wrote both into a record. */
export const CHANGE_WORDS_OF_0_2: readonly string[] = [
  "5 CFR 1312.25 (rev. 1 Jan 2001), as an example; local rules decide",
  "The lock is placed in use.",
  "Somebody who holds the combination no longer needs access.",
  "The combination may have become known.",
  "The lock is taken out of service.",
  "A year has passed.",
];

const DAYS_IN_FEBRUARY = 28;

/** Whether a text is a calendar date that exists, as YYYY-MM-DD. */
export function isCalendarDate(text: string): boolean {
  const [, year = "", month = "", day = ""] = /^(\d{4})-(\d\d)-(\d\d)$/.exec(text) ?? [];
  const last = daysIn(Number(year), Number(month));
  return year !== "" && Number(day) >= 1 && Number(day) <= last;
}

const isLeap = (year: number) => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;

function daysIn(year: number, month: number): number {
  if (month === 2) return DAYS_IN_FEBRUARY + (isLeap(year) ? 1 : 0);
  if ([4, 6, 9, 11].includes(month)) return 30;
  return month >= 1 && month <= 12 ? 31 : 0;
}

/**
 * The day on which a combination is due to be changed again: a year later, and not a day more, so that 29 February is
 * followed by 28 February. Source: 5 CFR 1312.25 (rev. 1 Jan 2001), at least yearly.
 *
 * @param date - of the change, a calendar date as YYYY-MM-DD
 */
export function nextChangeDue(date: string): string {
  const [year = "", month = "", day = ""] = date.split("-");
  const due = Number(year) + 1;
  const lastDay = Math.min(Number(day), daysIn(due, Number(month)));
  return `${String(due).padStart(4, "0")}-${month}-${String(lastDay).padStart(2, "0")}`;
}
