const MINUTE = 60;
const HOUR = 3600;

const two = (value: number) => String(value).padStart(2, "0");

/** Seconds as a clock shows them: "1:30", "1:05:00". @param seconds - below a minute too: "0:45" */
export function timeText(seconds: number): string {
  const whole = Math.floor(seconds);
  const part = seconds - whole;
  const fraction = part === 0 ? "" : String(Math.round(part * 1000) / 1000).slice(1);
  const [hours, minutes, rest] = [Math.floor(whole / HOUR), Math.floor((whole % HOUR) / MINUTE), whole % MINUTE];
  const clock = hours > 0 ? `${hours}:${two(minutes)}:${two(rest)}` : `${minutes}:${two(rest)}`;
  return `${clock}${fraction}`;
}

/** "14.2 s". */
export const secondsText = (time_ms: number): string => `${(time_ms / 1000).toFixed(1)} s`;

const CLOCK = /^(?:(\d{1,2}):)?(\d{1,3}):([0-5]\d(?:[.,]\d{1,3})?)$/;
const SECONDS = /^(\d{1,6}(?:[.,]\d{1,3})?)\s*s?$/;
const MINUTES = /^(\d{1,4}(?:[.,]\d{1,3})?)\s*min$/;

const number = (text: string) => Number(text.replace(",", "."));

/**
 * Seconds of a typed time: "1:30", "1:05:00", "90", "90 s" or "2 min".
 *
 * @returns seconds; undefined for nothing typed, NaN for what is no time
 */
export function timeOf(text: string): number | undefined {
  const typed = text.trim();
  if (typed === "") return undefined;
  const clock = CLOCK.exec(typed);
  if (clock !== null) return number(clock[1] ?? "0") * HOUR + number(clock[2] ?? "") * MINUTE + number(clock[3] ?? "");
  const seconds = SECONDS.exec(typed);
  if (seconds !== null) return number(seconds[1] ?? "");
  return number(MINUTES.exec(typed)?.[1] ?? "NaN") * MINUTE;
}
