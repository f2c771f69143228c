import * as z from "zod/mini";
import { above, turn, whole, within } from "./fieldSchemas";
import type { Range, ZeroingParameters } from "./profile";

const rangeWithin = (low: number, high: number, example: string) => {
  const words = `must be a pair of graduations from ${low} to ${high} such as ${example}`;
  const end = within(low, high, words);
  return z.optional(z.tuple([end, end], { error: words }));
};

const aboveZero = z.optional(above(0, "must be a number of graduations above 0"));
const order = 'must be ["right", "left"] or ["left", "right"]';
const risk = "must be a number above 0 and below 0.5";

const rules = z.object(
  {
    order: z.optional(z.tuple([turn, turn], { error: order })),
    wanted: z.optional(whole(2, 20, "must be a whole number from 2 to 20")),
    most: z.optional(whole(2, 50, "must be a whole number from 2 to 50")),
    spreadLimit: aboveZero,
    captureWindow: aboveZero,
    approach: aboveZero,
    rest_ms: z.optional(within(0, 10_000, "must be a number of milliseconds from 0 to 10000")),
    tolerance: aboveZero,
    risk: z.optional(z.number({ error: risk }).check(z.gt(0, { error: risk }), z.lt(0.5, { error: risk }))),
    consecutive: z.optional(z.boolean({ error: "must be true or false" })),
  },
  { error: 'must be an object such as {"wanted":3,"tolerance":0.5}' },
);

/** Schema of the zeroing parameters in a profile. */
export const zeroingSchema = z.object(
  {
    indexOffset: rangeWithin(-5, 5, "[-1.5, 1.5]"),
    lostMotion: rangeWithin(0, 2, "[0.2, 1.6]"),
    noise: rangeWithin(0, 1, "[0, 0.05]"),
    ringCreep: rangeWithin(-2, 2, "[-0.2, 0.2]"),
    rules: z.optional(rules),
  },
  { error: 'must be an object such as {"lostMotion":[0.2,1.6],"rules":{"wanted":3}}' },
);

type Problem = string | undefined;

const isBackward = (range: Range | undefined) => range !== undefined && range[0] > range[1];

const backwardRange = (zeroing: ZeroingParameters): Problem => {
  const names = ["indexOffset", "lostMotion", "noise", "ringCreep"] as const;
  const name = names.find((one) => isBackward(zeroing[one]));
  return name === undefined
    ? undefined
    : `zeroing.${name} must have its low end first, not ${zeroing[name]?.join(", ")}`;
};

/**
 * What no single field of the zeroing parameters shows.
 *
 * @param graduations - in one turn of the dial
 * @returns a sentence that names the field, or undefined where all fit
 */
export function zeroingMisfit(zeroing: ZeroingParameters | undefined, graduations: number): Problem {
  if (zeroing === undefined) return undefined;
  const { order: sides, wanted, most, approach, captureWindow } = zeroing.rules ?? {};
  const problems: Problem[] = [
    backwardRange(zeroing),
    sides !== undefined && sides[0] === sides[1] ? `zeroing.rules.order ${order}` : undefined,
    wanted !== undefined && most !== undefined && most < wanted
      ? `zeroing.rules.most must be at least as many as wanted (${wanted}), not ${most}`
      : undefined,
    approach !== undefined && approach > graduations
      ? `zeroing.rules.approach must be at most one turn (${graduations}), not ${approach}`
      : undefined,
    captureWindow !== undefined && captureWindow >= graduations / 2
      ? `zeroing.rules.captureWindow must be below half a turn (${graduations / 2}), not ${captureWindow}`
      : undefined,
  ];
  return problems.find((problem) => problem !== undefined);
}
