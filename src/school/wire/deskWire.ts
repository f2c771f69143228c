import * as z from "zod/mini";
import { oneOf, strict } from "../../lock/fieldSchemas";
import type { ClassTable, StandingCell } from "../../progress/classTable";
import type { Hand } from "../../realdial/sources/handOf";
import { SOURCE_KINDS } from "../../realdial/sources/sourceKinds";
import { sourcesSchema } from "../../realdial/sources/sourceSchema";
import { attemptSchema } from "../../records/attemptRecord";
import { id } from "../../records/fields";
import { masteryRuleSchema } from "../../records/masteryRule";

const hand = oneOf([...SOURCE_KINDS, "mixed"]);

/** Which desk is asked for: that of a class, with the figures of one hand. */
export const askedDesk = { params: strict({ classId: id }), querystring: strict({ hand: z.optional(hand) }) };

const skill = z.object({ profileId: z.string(), exercise: z.string() });
const interval = z.object({ low: z.number(), high: z.number() });

/** A job as a try at its skill. */
const practice = z.object({
  id: z.string(),
  personId: z.string(),
  startedAt: z.number(),
  duration_ms: z.number(),
  profileId: z.string(),
  exercise: z.string(),
  opened: z.boolean(),
  sources: sourcesSchema,
});

const best = z.object({
  profileId: z.string(),
  exercise: z.string(),
  help: attemptSchema.shape.help,
  hand,
  conditions: z.array(z.string()),
  attempts: z.number(),
  quickest: z.nullable(attemptSchema),
  truest: z.nullable(attemptSchema),
});

const mastery = z.object({
  state: oneOf(["not-yet", "ready", "lapsed"]),
  score: z.number(),
  shownAt: z.optional(z.number()),
  lapse: z.optional(
    z.discriminatedUnion("by", [
      z.object({ by: z.literal("misses"), at: z.number() }),
      z.object({ by: z.literal("time"), days: z.number() }),
    ]),
  ),
  skill,
  rule: masteryRuleSchema,
  attempts: z.number(),
  progress: z.number(),
  isReady: z.boolean(),
  wanted: z.number(),
  message: z.string(),
});

const cell = z.object({
  attempts: z.number(),
  latest: z.union([attemptSchema, practice]),
  bests: z.array(best),
  openings: z.object({ opened: z.number(), trials: z.number(), share: z.number(), interval }),
  stops: z.nullable(
    z.object({
      count: z.number(),
      bias: z.number(),
      biasInterval: z.nullable(interval),
      spread: z.nullable(z.number()),
    }),
  ),
  mastery,
});

const person = z.object({
  id: z.string(),
  name: z.string(),
  part: oneOf(["trainee", "instructor"]),
  createdAt: z.number(),
  updatedAt: z.number(),
});

/** The desk of a class: people by skills with the figures of one hand, by the usual rule of readiness. */
interface DeskAnswer extends ClassTable<StandingCell> {
  /** Every hand that the class turned a dial with, that of the figures first. */
  readonly hands: readonly Hand[];
}

/** Schema of the desk of a class. */
export const deskAnswer: z.ZodMiniType<DeskAnswer> = z.object({
  skills: z.array(skill),
  rows: z.array(z.object({ person, cells: z.array(z.nullable(cell)), isReady: z.boolean() })),
  hand,
  hands: z.array(hand),
});
