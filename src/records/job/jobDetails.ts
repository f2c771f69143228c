import * as z from "zod/mini";
import { CHANGE_OUTCOMES } from "../../drill/marking/tryResult";
import { checkSetSchema } from "../../fitting/checkSetSchema";
import { FIT_CHECKS } from "../../fitting/fitChecks";
import { FIT_FAULTS } from "../../fitting/fitFault";
import { FIT_STAGES } from "../../fitting/fitStage";
import { TROUBLE_KINDS } from "../../handover/trouble/trouble";
import { visitFaultSchema } from "../../service/visitFaultSchema";
import { CONDITIONS } from "../../service/wrongThing";
import type { JobKind, JobRecord } from "../jobRecord";

const number = z.number();
const count = z.number().check(z.int(), z.gte(0));
const code = z.string().check(z.regex(/^[a-z0-9-]{1,60}$/));

/** A change: how far each number was set from what was meant, never the numbers themselves. */
const changeDetails = z.object({
  outcome: z.enum(CHANGE_OUTCOMES),
  proofs: count,
  /** Of each number, graduations, left positive; null where nothing was set. */
  errors: z.nullable(z.array(number)),
  faults: z.array(z.object({ code, number: count, size: number })),
});

const trouble = z.object({ kind: z.enum(TROUBLE_KINDS), part: z.nullable(z.string()), size: number });

const troubleDetails = z.object({
  seed: number,
  pool: z.array(z.enum(TROUBLE_KINDS)),
  truth: trouble,
  named: trouble,
  isKindRight: z.boolean(),
  sizeError: z.nullable(number),
  isSizeWithin: z.boolean(),
  points: number,
  tries: count,
  measurements: count,
});

/** A handover: nothing of what was written into its record. */
const handoverDetails = z.object({
  isHandedOver: z.boolean(),
  isHandsOff: z.boolean(),
  missing: z.array(code),
  faults: z.array(z.object({ code, step: count, at_ms: number, isUndone: z.boolean() })),
  steps: count,
  undoneSteps: count,
  /** How its lock was fitted at the end; left out where it came on its door. */
  fit: z.optional(
    z.object({ isTogether: z.boolean(), faults: z.array(z.enum(FIT_FAULTS)), skipped: z.array(z.enum(FIT_CHECKS)) }),
  ),
});

/** A fitting: what was wrong with the fit when it was said to be ready. */
const fittingDetails = z.object({
  declared: z.nullable(z.enum(FIT_STAGES)),
  faults: z.array(z.enum(FIT_FAULTS)),
  skipped: z.array(z.enum(FIT_CHECKS)),
  moves: count,
  spindlesUsed: count,
});

/** A service visit: what was wrong with the lock, what its record names, and what the visit left out or did wrong. */
const serviceDetails = z.object({
  /** Of the visit; null where it is not known any more. */
  seed: z.nullable(count),
  isLeft: z.boolean(),
  conditions: z.array(z.enum(CONDITIONS)),
  found: z.array(z.enum(CONDITIONS)),
  faults: z.array(visitFaultSchema),
  acts: count,
});

/** A fit that was judged: what was wrong, and what was named. */
const inspectionDetails = z.object({
  faults: z.array(z.enum(FIT_FAULTS)),
  named: z.nullable(z.array(z.enum(FIT_FAULTS))),
  skipped: z.array(z.enum(FIT_CHECKS)),
  checkSet: checkSetSchema,
});

const SCHEMAS = {
  change: changeDetails,
  trouble: troubleDetails,
  handover: handoverDetails,
  fitting: fittingDetails,
  service: serviceDetails,
  inspection: inspectionDetails,
} as const;

/** What is kept of a change besides how it went. */
export type ChangeDetails = Readonly<z.infer<typeof changeDetails>>;

/** What is kept of a diagnosis. */
export type TroubleDetails = Readonly<z.infer<typeof troubleDetails>>;

/** What is kept of a handover. */
export type HandoverDetails = Readonly<z.infer<typeof handoverDetails>>;

/** What is kept of a fitting. */
export type FittingDetails = Readonly<z.infer<typeof fittingDetails>>;

/** What is kept of a service visit. */
export type ServiceDetails = Readonly<z.infer<typeof serviceDetails>>;

/** What is kept of a fit that was judged. */
export type InspectionDetails = Readonly<z.infer<typeof inspectionDetails>>;

/** What is kept of a job, by its kind. */
export type JobDetails =
  | { readonly kind: "change"; readonly details: ChangeDetails }
  | { readonly kind: "trouble"; readonly details: TroubleDetails }
  | { readonly kind: "handover"; readonly details: HandoverDetails }
  | { readonly kind: "fitting"; readonly details: FittingDetails }
  | { readonly kind: "service"; readonly details: ServiceDetails }
  | { readonly kind: "inspection"; readonly details: InspectionDetails };

/** The details of a job, checked; null where there are none, or another program wrote them otherwise. */
export function detailsOf({ kind, details }: Pick<JobRecord, "kind" | "details">): JobDetails | null {
  const parsed = SCHEMAS[kind satisfies JobKind].safeParse(details);
  return parsed.success ? ({ kind, details: parsed.data } as JobDetails) : null;
}
