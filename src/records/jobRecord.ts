import * as z from "zod/mini";
import { HELP_LEVELS, stampFields } from "./attemptRecord";
import { flag, foreign, id, listOf, moment, named, shortText, span } from "./fields";
import type { Skill } from "./skill";

/** What is done to a lock beyond dialing and zeroing it. */
export const JOB_KINDS = ["change", "trouble", "handover"] as const;

/** A change of combination, a hidden condition found, a lock handed over. */
export type JobKind = (typeof JOB_KINDS)[number];

const CODE = "must be a code of 1 to 60 small letters, digits and hyphens";

/** Schema of a job. */
export const jobSchema = z.object(
  {
    ...stampFields,
    personId: id,
    startedAt: moment,
    duration_ms: span,
    kind: z.enum(JOB_KINDS, { error: `must be one of ${JOB_KINDS.join(", ")}` }),
    profileId: named(80),
    /** The whole profile, where it is none of the shipped ones. */
    ownProfile: z.optional(foreign),
    help: z.enum(HELP_LEVELS, { error: `must be one of ${HELP_LEVELS.join(", ")}` }),
    /** Whether it was right by the rule that marks a sitting; `jobIsRight` tells it, from what follows. */
    isRight: flag,
    /** Codes of what was missing or wrong, as the handover layer names them; a job may be right in spite of one. */
    missed: listOf(
      z.string({ error: CODE }).check(z.regex(/^[a-z0-9-]{1,60}$/, { error: CODE })),
      100,
      "must be a list of at most 100 codes",
    ),
    /** Drill sheet and sitting that it belongs to. */
    sheetId: z.optional(id),
    sittingId: z.optional(id),
    tags: listOf(named(60), 20, "must be a list of at most 20 tags"),
    note: z.optional(shortText(2000)),
    /** The job itself, as the handover layer writes it: never the combination of a lock in use. */
    details: z.optional(foreign),
  },
  { error: "must be a job" },
);

/** One job at a lock: who, what, and what came of it. */
export type JobRecord = Readonly<z.infer<typeof jobSchema>>;

/** Whether a skill is one of jobs; else it is one of attempts at dialing. */
export function isJobSkill({ exercise }: Pick<Skill, "exercise">): boolean {
  return JOB_KINDS.some((kind) => kind === exercise);
}
