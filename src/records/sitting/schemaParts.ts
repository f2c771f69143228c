import * as z from "zod/mini";

/** A text of a record; long enough for any sentence that a trainer writes. */
export const text = (most: number) => {
  const words = `must be a text of at most ${most} characters`;
  return z.string({ error: words }).check(z.maxLength(most, { error: words }));
};

/** A name in small letters, as faults and conditions have: "ran-past". */
export const code = z
  .string({ error: 'must be a name in small letters, such as "ran-past"' })
  .check(z.regex(/^[a-z0-9-]{1,80}$/, { error: 'must be a name in small letters, such as "ran-past"' }));

/** 64 hexadecimal digits. */
export const hash = z
  .string({ error: "must be 64 hexadecimal digits" })
  .check(z.regex(/^[0-9a-f]{64}$/, { error: "must be 64 hexadecimal digits" }));

/** A whole number within limits. */
export const whole = (low: number, high: number) => {
  const words = `must be a whole number from ${low} to ${high}`;
  return z
    .number({ error: words })
    .check(z.int({ error: words }), z.gte(low, { error: words }), z.lte(high, { error: words }));
};

/** A number within limits. */
export const within = (low: number, high: number, unit: string) => {
  const words = `must be a number of ${unit} from ${low} to ${high}`;
  return z.number({ error: words }).check(z.gte(low, { error: words }), z.lte(high, { error: words }));
};

/** A span of time, milliseconds; no sitting lasts a year. */
export const span = within(0, 366 * 86_400_000, "milliseconds");

/** How many of something there are. */
export const count = whole(0, 1_000_000);

/** A yes or no. */
export const flag = z.boolean({ error: "must be true or false" });

/** One of some words. */
export const oneOf = <const Words extends readonly [string, ...string[]]>(words: Words) =>
  z.enum(words, { error: `must be one of ${words.join(", ")}` });

/** A list that is not too long. */
export const list = <Item extends z.core.SomeType>(item: Item, most: number) => {
  const words = `must be a list of at most ${most}`;
  return z.array(item, { error: words }).check(z.maxLength(most, { error: words }));
};

/** An object with these fields and no other. */
export const object = <Shape extends z.core.$ZodLooseShape>(shape: Shape, what: string) =>
  z.strictObject(shape, { error: `must be ${what}` });
