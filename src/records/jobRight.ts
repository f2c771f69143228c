import * as z from "zod/mini";
import { isChangeRight, isDiagnosisRight, isFittingRight, isHandoverRight } from "../drill/marking/jobRule";
import type { JobKind, JobRecord } from "./jobRecord";

/** What of a job's details its rule looks at; the rest is for the screens. */
const FACTS = {
  change: z.object({ outcome: z.string(), proofs: z.number() }),
  trouble: z.object({ isKindRight: z.boolean(), points: z.number() }),
  fitting: z.object({ declared: z.nullable(z.string()), faults: z.array(z.unknown()) }),
  handover: z.object({ isHandedOver: z.boolean(), missing: z.array(z.unknown()), faults: z.array(z.unknown()) }),
} as const;

/** Codes of a job without details that its rule forgives: a size has a mark of its own. */
const FORGIVEN: Readonly<Record<JobKind, readonly string[]>> = {
  change: [],
  trouble: ["size"],
  handover: [],
  fitting: [],
};

/** Took longer than its station allows: never right, whatever the kind. */
export const TOO_LATE = "too-late";

/** By its rule, or null where the facts it looks at are not kept. */
function byFacts({ kind, details }: Pick<JobRecord, "kind" | "details">): boolean | null {
  if (kind === "change") {
    const { data } = FACTS.change.safeParse(details);
    return data === undefined ? null : isChangeRight(data);
  }
  if (kind === "trouble") {
    const { data } = FACTS.trouble.safeParse(details);
    // A guess earns no point; what was looked at earns one for kind and place.
    return data === undefined ? null : isDiagnosisRight({ ...data, isGuess: data.points === 0 });
  }
  if (kind === "fitting") {
    const { data } = FACTS.fitting.safeParse(details);
    return data === undefined ? null : isFittingRight(data);
  }
  const { data } = FACTS.handover.safeParse(details);
  return data === undefined ? null : isHandoverRight(data);
}

/**
 * Whether a job was right, by the facts that are kept of it and by the rule that marks a sitting.
 *
 * Where no facts are kept, what was missed decides.
 */
export function jobIsRight(job: Pick<JobRecord, "kind" | "details" | "missed">): boolean {
  if (job.missed.includes(TOO_LATE)) return false;
  return byFacts(job) ?? job.missed.every((code) => FORGIVEN[job.kind].includes(code));
}

/** A job from elsewhere, or from an earlier version with another rule: its facts decide, not what it says of itself. */
export const judgedJob = (job: JobRecord): JobRecord => ({ ...job, isRight: jobIsRight(job) });
