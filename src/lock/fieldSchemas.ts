import type { core } from "zod/mini";
import * as z from "zod/mini";
import type { ValuesFor, Words } from "../wording/problem";
import { FIELD_WORDS } from "./fieldWords";

/**
 * Makes the rules of a topic as a schema carries them, in the one place it has: its message. `fieldProblem` takes them
 * out again, and the words are made where they are shown.
 */
export const rulesOf =
  <const Table extends Words>(_words: Table) =>
  <Code extends keyof Table & string>(code: Code, ...[values]: ValuesFor<Table[Code]>): { readonly error: string } => ({
    error: JSON.stringify({ code, values }),
  });

/** The rules that a field of any file may have. */
export const must = rulesOf(FIELD_WORDS);

/** Any number. */
export const number = z.number(must("number"));

/** A number of at least `low`. @param unit - "graduations" */
export const atLeast = (low: number, unit: string) => {
  const rule = must("at-least", { unit, low });
  return z.number(rule).check(z.gte(low, rule));
};

/** A number from `low` to `high`, both included. @param unit - "graduations" */
export const within = (low: number, high: number, unit: string) => {
  const rule = must("within", { unit, low, high });
  return z.number(rule).check(z.gte(low, rule), z.lte(high, rule));
};

/** A number above `low`. @param unit - "graduations" */
export const above = (low: number, unit: string) => {
  const rule = must("above", { unit, low });
  return z.number(rule).check(z.gt(low, rule));
};

/** A whole number from `low` to `high`, both included. */
export const whole = (low: number, high: number) => {
  const rule = must("whole", { low, high });
  return z.number(rule).check(z.int(rule), z.gte(low, rule), z.lte(high, rule));
};

/** A share of one, from `low` to `high`, both included. */
export const share = (low: number, high: number) => {
  const rule = must("share", { low, high });
  return z.number(rule).check(z.gte(low, rule), z.lte(high, rule));
};

/** A text that is not empty. */
export const text = (most: number, least = 1) => {
  const rule = must("text", { least, most });
  return z.string(rule).check(z.minLength(least, rule), z.maxLength(most, rule));
};

/** Longer than anything that a person or this trainer writes in one place, letters. */
const LONGEST = 10_000;
const notLonger = z.maxLength(LONGEST, must("short-text", { most: LONGEST }));

/** A text that is not empty, of any length that somebody writes. */
export const filled = z.string(must("filled")).check(z.minLength(1, must("filled")), notLonger);

/** A text of any length that somebody writes; it may be empty. */
export const anyText = z.string(must("any-text")).check(notLonger);

/** A text that may be empty. */
export const shortText = (most: number) => {
  const rule = must("short-text", { most });
  return z.string(rule).check(z.maxLength(most, rule));
};

/** A text of a form. */
export const matching = (form: RegExp, rule: ReturnType<typeof must>) => z.string(rule).check(z.regex(form, rule));

/** A name in small letters, digits and hyphens, as faults and defects have. @param example - "ran-past" */
export const codeName = (most: number, example: string) =>
  matching(new RegExp(`^[a-z0-9-]{1,${most}}$`), must("code", { example }));

/** True or false. */
export const flag = z.boolean(must("flag"));

/** One of some words. */
export const oneOf = <const Choices extends readonly string[]>(choices: Choices) =>
  z.enum(choices, must("one-of", { choices }));

/** A list of so many. */
export const list = <Item extends core.SomeType>(item: Item, least: number, most: number) => {
  const rule = must("list", { least, most });
  return z.array(item, rule).check(z.minLength(least, rule), z.maxLength(most, rule));
};

/** A list that is not too long. */
export const shortList = <Item extends core.SomeType>(item: Item, most: number) => {
  const rule = must("short-list", { most });
  return z.array(item, rule).check(z.maxLength(most, rule));
};

/** An object with these fields, and no other. */
export const strict = <Shape extends core.$ZodLooseShape>(shape: Shape) => z.strictObject(shape, must("object"));

/** A direction of turning. */
export const turn = oneOf(["left", "right"]);
