import * as z from "zod/mini";
import { codeName, flag, must, oneOf, shortList, text } from "../lock/fieldSchemas";
import { doubtsSchema } from "../realdial/sources/dialDoubt";
import { sourcesSchema } from "../realdial/sources/sourceSchema";
import { HELP_LEVELS, noteText, stampFields, tagList } from "./attemptRecord";
import { foreign, id, moment, span } from "./fields";
import type { Skill } from "./skill";

/** What is done to a lock beyond dialing and zeroing it. */
export const JOB_KINDS = ["change", "trouble", "handover", "fitting", "service", "inspection"] as const;

/** A change of combination, a hidden condition found, a lock handed over, a dial fitted, a lock in use served, a fit judged. */
export type JobKind = (typeof JOB_KINDS)[number];

/** Schema of a job. */
export const jobSchema = z.object(
  {
    ...stampFields,
    personId: id,
    startedAt: moment,
    duration_ms: span,
    kind: oneOf(JOB_KINDS),
    profileId: text(80),
    /** The whole profile, where it is none of the shipped ones. */
    ownProfile: z.optional(foreign),
    help: oneOf(HELP_LEVELS),
    /** Whether it was right by the rule that marks a sitting; `jobIsRight` tells it, from what follows. */
    isRight: flag,
    /** Codes of what was missing or wrong, as the layer of its kind names them; a job may be right in spite of one. */
    missed: shortList(codeName(60, "ran-past"), 100),
    /** Drill sheet and sitting that it belongs to. */
    sheetId: z.optional(id),
    sittingId: z.optional(id),
    /** What turned the dial, where that was not the hands on the screen alone. */
    sources: sourcesSchema,
    /** Why its turns may be miscounted: a device lost the hand in it. */
    doubts: doubtsSchema,
    tags: tagList,
    note: z.optional(noteText),
    /** The job itself, as the layer of its kind writes it: never the combination of a lock in use. */
    details: z.optional(foreign),
  },
  must("object"),
);

/** One job at a lock: who, what, and what came of it. */
export type JobRecord = Readonly<z.infer<typeof jobSchema>>;

/** Whether a skill is one of jobs; else it is one of attempts at dialing. */
export function isJobSkill({ exercise }: Pick<Skill, "exercise">): boolean {
  return JOB_KINDS.some((kind) => kind === exercise);
}
