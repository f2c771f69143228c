import * as z from "zod/mini";
import { must, rulesOf, share, whole } from "../lock/fieldSchemas";
import { LOCK_WORDS } from "../lock/lockWords";
import type { Words } from "../wording/problem";

/** What can be wrong with a rule beyond its fields. */
export const MASTERY_WORDS = {
  ...LOCK_WORDS,
  "rates-swapped": "must have the inadequate rate above the adequate one",
} as const satisfies Words;

const masteryRule = rulesOf(MASTERY_WORDS);

const rate = share(0.01, 0.9);

/** Limits of what an instructor may choose. */
export const RULE_LIMITS = { attempts: 500, days: 730 } as const;

/** Schema of a rule that was stored or came in a file. */
export const masteryRuleSchema = z
  .object(
    {
      /** Share of misses of someone who is ready, p0. */
      adequateFailureRate: rate,
      /** Share of misses that is not to pass, p1, above the other. */
      inadequateFailureRate: rate,
      /** Attempts, or jobs, before which nobody counts as ready. */
      minimumAttempts: whole(1, RULE_LIMITS.attempts),
      /** Days without practice after which readiness lapses; null for never. */
      lapseDays: z.nullable(whole(1, RULE_LIMITS.days)),
    },
    must("object"),
  )
  .check(z.refine(({ adequateFailureRate: p0, inadequateFailureRate: p1 }) => p1 > p0, masteryRule("rates-swapped")));

/** When someone counts as ready at a skill, and when no longer. */
export type MasteryRule = Readonly<z.infer<typeof masteryRuleSchema>>;

/**
 * The usual rule: 1 miss in 10 is good enough, 3 in 10 is not. The rates, the limits of the scores and the days are
 * training values of ours; how often they err is worked out in `masteryCharacteristic`.
 */
export const MASTERY_RULE: MasteryRule = {
  adequateFailureRate: 0.1,
  inadequateFailureRate: 0.3,
  minimumAttempts: 12,
  lapseDays: 90,
};

/** Score of the learning CUSUM that shows a skill: its attempts are then e^3, 20 times, likelier at the adequate rate. */
export const READY_SCORE = 3;

/** Score of the CUSUM for deterioration at which readiness lapses. */
export const LAPSE_SCORE = 4;

/** A rule as one text: declarations are kept for the rule they were made by. */
export const ruleKey = ({ adequateFailureRate, inadequateFailureRate, minimumAttempts }: MasteryRule): string =>
  [adequateFailureRate, inadequateFailureRate, minimumAttempts].join("-");
