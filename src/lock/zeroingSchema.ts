import * as z from "zod/mini";
import { type Finding, failing, type Problem } from "../wording/problem";
import { above, flag, must, rulesOf, turn, whole, within } from "./fieldSchemas";
import { LOCK_WORDS, lockProblem } from "./lockWords";
import type { Range, ZeroingParameters } from "./profile";

const lockRule = rulesOf(LOCK_WORDS);

const rangeWithin = (low: number, high: number, example: Range) => {
  const rule = lockRule("range", { low, high, example });
  const end = z.number(rule).check(z.gte(low, rule), z.lte(high, rule));
  return z.optional(z.tuple([end, end], rule));
};

const aboveZero = z.optional(above(0, "graduations"));
const risk = must("between", { low: 0, high: 0.5 });

const rules = z.object(
  {
    order: z.optional(z.tuple([turn, turn], lockRule("one-of-each"))),
    wanted: z.optional(whole(2, 20)),
    most: z.optional(whole(2, 50)),
    spreadLimit: aboveZero,
    captureWindow: aboveZero,
    approach: aboveZero,
    rest_ms: z.optional(within(0, 10_000, "milliseconds")),
    tolerance: aboveZero,
    risk: z.optional(z.number(risk).check(z.gt(0, risk), z.lt(0.5, risk))),
    consecutive: z.optional(flag),
  },
  must("such-as", { example: { wanted: 3, tolerance: 0.5 } }),
);

/** Schema of the zeroing parameters in a profile. */
export const zeroingSchema = z.object(
  {
    indexOffset: rangeWithin(-5, 5, [-1.5, 1.5]),
    lostMotion: rangeWithin(0, 2, [0.2, 1.6]),
    noise: rangeWithin(0, 1, [0, 0.05]),
    ringCreep: rangeWithin(-2, 2, [-0.2, 0.2]),
    rules: z.optional(rules),
  },
  must("such-as", { example: { lostMotion: [0.2, 1.6] } }),
);

const isBackward = (range: Range | undefined) => range !== undefined && range[0] > range[1];

/**
 * What no single field of the zeroing parameters shows.
 *
 * @param graduations - in one turn of the dial
 * @returns the problem with its place in a profile, or undefined where all fit
 */
export function zeroingMisfit(zeroing: ZeroingParameters | undefined, graduations: number): Problem | undefined {
  if (zeroing === undefined) return undefined;
  const { order, wanted = 0, most = wanted, approach = 0, captureWindow = 0 } = zeroing.rules ?? {};
  const names = ["indexOffset", "lostMotion", "noise", "ringCreep"] as const;
  const rule = (name: string) => ["zeroing", "rules", name];
  const findings: readonly Finding[] = [
    ...names.map((name): Finding => {
      const range = zeroing[name];
      return [!isBackward(range), lockProblem("low-first", ["zeroing", name], { found: range })];
    }),
    [order === undefined || order[0] !== order[1], lockProblem("one-of-each", rule("order"))],
    [most >= wanted, lockProblem("fewer-than-wanted", rule("most"), { wanted, found: most })],
    [approach <= graduations, lockProblem("above-turn", rule("approach"), { graduations, found: approach })],
    [
      captureWindow < graduations / 2,
      lockProblem("half-turn-or-more", rule("captureWindow"), { limit: graduations / 2, found: captureWindow }),
    ],
  ];
  return failing(findings)[0];
}
