const MINUTE_MS = 60_000;

const digits = (value: number, count: number) => String(value).padStart(count, "0");

/** A moment as a field of date and time takes it, to the minute, by this device's clock: "2026-11-24T14:05". */
export function localMomentText(moment: number): string {
  const at = new Date(moment);
  const day = [digits(at.getFullYear(), 4), digits(at.getMonth() + 1, 2), digits(at.getDate(), 2)].join("-");
  return `${day}T${digits(at.getHours(), 2)}:${digits(at.getMinutes(), 2)}`;
}

/**
 * The moment that such a field shows, ms since 1970; null where it shows none.
 *
 * @param before - the moment that it was filled in from: left as it was, it is still that one, with its seconds, and in the
 * hour that a change of clocks gives twice
 */
export function momentOfLocalText(text: string, before: number | null = null): number | null {
  if (before !== null && text === localMomentText(before)) return before;
  const moment = /^\d{4}-\d\d-\d\dT\d\d:\d\d/.test(text) ? new Date(text).getTime() : Number.NaN;
  return Number.isNaN(moment) ? null : moment;
}

/** The last full minute. */
export const fullMinute = (moment: number): number => moment - (moment % MINUTE_MS);
