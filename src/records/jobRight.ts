import * as z from "zod/mini";
import {
  isChangeRight,
  isDiagnosisRight,
  isFittingRight,
  isHandoverRight,
  isInspectionRight,
  isServiceRight,
} from "../drill/marking/jobRule";
import { checkSetSchema } from "../fitting/checkSetSchema";
import { FIT_CHECKS } from "../fitting/fitChecks";
import { FIT_FAULTS } from "../fitting/fitFaultCode";
import type { JobKind, JobRecord } from "./jobRecord";

type ByFacts = (details: unknown) => boolean | null;

/** By a rule, or null where the facts that it looks at are not kept. */
const ruled =
  <Facts>(schema: z.ZodMiniType<Facts>, rule: (facts: Facts) => boolean): ByFacts =>
  (details) => {
    const { data } = schema.safeParse(details);
    return data === undefined ? null : rule(data);
  };

/** More than any job has of anything. */
const notMore = z.maxLength(20_000);
const word = z.string().check(z.maxLength(100));
const list = z.array(z.unknown()).check(notMore);
const fitFaults = z.array(z.enum(FIT_FAULTS)).check(notMore);

/** What of a job's details its rule looks at; the rest is for the screens. */
const BY_FACTS: Readonly<Record<JobKind, ByFacts>> = {
  change: ruled(z.object({ outcome: word, proofs: z.number() }), isChangeRight),
  // A guess earns no point; what was looked at earns one for kind and place.
  trouble: ruled(z.object({ isKindRight: z.boolean(), points: z.number() }), ({ isKindRight, points }) =>
    isDiagnosisRight({ isKindRight, isGuess: points === 0 }),
  ),
  handover: ruled(z.object({ isHandedOver: z.boolean(), missing: list, faults: list }), isHandoverRight),
  fitting: ruled(z.object({ declared: z.nullable(word), faults: list }), isFittingRight),
  service: ruled(z.object({ isLeft: z.boolean(), faults: list }), isServiceRight),
  inspection: ruled(
    z.object({
      faults: fitFaults,
      named: z.nullable(fitFaults),
      skipped: z.array(z.enum(FIT_CHECKS)).check(notMore),
      checkSet: checkSetSchema,
    }),
    isInspectionRight,
  ),
};

/** Codes of a job without details that its rule forgives: a size has a mark of its own. */
const FORGIVEN: Readonly<Record<JobKind, readonly string[]>> = {
  change: [],
  trouble: ["size"],
  handover: [],
  fitting: [],
  service: [],
  inspection: [],
};

/** Took longer than its station allows: never right, whatever the kind. */
export const TOO_LATE = "too-late";

/**
 * Whether a job was right, by the facts that are kept of it and by the rule that marks a sitting.
 *
 * Where no facts are kept, what was missed decides.
 */
export function jobIsRight(job: Pick<JobRecord, "kind" | "details" | "missed">): boolean {
  if (job.missed.includes(TOO_LATE)) return false;
  return BY_FACTS[job.kind](job.details) ?? job.missed.every((code) => FORGIVEN[job.kind].includes(code));
}

/** A job from elsewhere, or from an earlier version with another rule: its facts decide, not what it says of itself. */
export const judgedJob = (job: JobRecord): JobRecord => ({ ...job, isRight: jobIsRight(job) });
