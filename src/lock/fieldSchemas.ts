import * as z from "zod/mini";

/** A number of at least `low`. @param words - what the field must be, "must be ..." */
export const atLeast = (low: number, words: string) => z.number({ error: words }).check(z.gte(low, { error: words }));

/** A number from `low` to `high`, both included. @param words - as in `atLeast` */
export const within = (low: number, high: number, words: string) =>
  atLeast(low, words).check(z.lte(high, { error: words }));

/** A whole number from `low` to `high`, both included. @param words - as in `atLeast` */
export const whole = (low: number, high: number, words: string) =>
  z
    .number({ error: words })
    .check(z.int({ error: words }), z.gte(low, { error: words }), z.lte(high, { error: words }));

/** A number above `low`. @param words - as in `atLeast` */
export const above = (low: number, words: string) => z.number({ error: words }).check(z.gt(low, { error: words }));

/** A direction of turning. */
export const turn = z.enum(["left", "right"], { error: 'must be "left" or "right"' });
