import * as z from "zod/mini";
import { FARTHEST } from "../lock/wheelPackState";

/** A whole number within limits. */
export const whole = (low: number, high: number, words: string) =>
  z
    .number({ error: words })
    .check(z.int({ error: words }), z.gte(low, { error: words }), z.lte(high, { error: words }));

/** A finite number within limits. */
export const within = (low: number, high: number, words: string) =>
  z.number({ error: words }).check(z.gte(low, { error: words }), z.lte(high, { error: words }));

/** Last moment that a date can hold, milliseconds since 1970. */
const LAST_MOMENT = 8.64e15;

/** A moment, milliseconds since 1970. */
export const moment = whole(0, LAST_MOMENT, "must be a time in whole milliseconds since 1970");

/** A span of time, milliseconds. */
export const span = within(0, LAST_MOMENT, "must be a number of milliseconds, 0 or more");

const ID_WORDS = "must be an id of 1 to 1200 letters, digits, or -_.:|";

/** What tells a record from every other on every machine; a uuid where nothing better names it. */
export const id = z.string({ error: ID_WORDS }).check(z.regex(/^[\w.:|-]{1,1200}$/, { error: ID_WORDS }));

/** A short text; may be empty. */
export const shortText = (longest: number) => {
  const words = `must be a text of at most ${longest} characters`;
  return z.string({ error: words }).check(z.maxLength(longest, { error: words }));
};

/** A name; may not be empty. */
export const named = (longest: number) => {
  const words = `must be a name of 1 to ${longest} characters`;
  return z.string({ error: words }).check(z.minLength(1, { error: words }), z.maxLength(longest, { error: words }));
};

/** True or false. */
export const flag = z.boolean({ error: "must be true or false" });

/** Graduations, within what the mechanics resolve. */
export const graduations = within(-FARTHEST, FARTHEST, "must be a number of graduations within 1e9 of 0");

/** A direction of turning. */
export const turn = z.enum(["left", "right"], { error: 'must be "left" or "right"' });

/** A list with a longest length. */
export const listOf = <Item extends z.core.SomeType>(item: Item, longest: number, words: string) =>
  z.array(item, { error: words }).check(z.maxLength(longest, { error: words }));

const DEEPEST = 40;

/** Whether a value, parsed from JSON, has no more levels than a browser's database stores without trouble. */
function isShallow(value: unknown): boolean {
  let level: unknown[] = [value];
  for (let depth = 0; level.length > 0; depth++) {
    if (depth > DEEPEST) return false;
    level = level.flatMap((one) => (typeof one === "object" && one !== null ? Object.values(one) : []));
  }
  return true;
}

/** What another layer keeps here and checks itself when it reads it back: any JSON, not too deep. */
export const foreign = z
  .unknown()
  .check(z.refine((value) => value !== undefined && isShallow(value), { error: "must be JSON of at most 40 levels" }));
