import type { core } from "zod/mini";
import * as z from "zod/mini";
import { CHANGE_OUTCOMES } from "../../drill/marking/tryResult";
import { checkSetSchema } from "../../fitting/checkSetSchema";
import { FIT_CHECKS } from "../../fitting/fitChecks";
import { FIT_FAULTS } from "../../fitting/fitFaultCode";
import { FIT_STAGES } from "../../fitting/fitStage";
import { TROUBLE_KINDS } from "../../handover/trouble/trouble";
import { visitFaultSchema } from "../../service/visitFaultSchema";
import { CONDITIONS } from "../../service/wrongThing";
import type { JobKind, JobRecord } from "../jobRecord";

/** No job has more of anything: a list that is longer was not written here. */
const MOST = 1000;
/** Of the faults of a handover: each step of it may make some. */
const MOST_MADE = 20_000;
const listOf = <Item extends core.SomeType>(item: Item, most = MOST) => z.array(item).check(z.maxLength(most));

const number = z.number();
const count = z.number().check(z.int(), z.gte(0));
const code = z.string().check(z.regex(/^[a-z0-9-]{1,60}$/));

/** A change: how far each number was set from what was meant, never the numbers themselves. */
const changeDetails = z.object({
  outcome: z.enum(CHANGE_OUTCOMES),
  proofs: count,
  /** Of each number, graduations, left positive; null where nothing was set. */
  errors: z.nullable(listOf(number)),
  faults: listOf(z.object({ code, number: count, size: number })),
});

const trouble = z.object({
  kind: z.enum(TROUBLE_KINDS),
  part: z.nullable(z.string().check(z.maxLength(80))),
  size: number,
});

const troubleDetails = z.object({
  seed: number,
  pool: listOf(z.enum(TROUBLE_KINDS)),
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
  missing: listOf(code),
  faults: listOf(z.object({ code, step: count, at_ms: number, isUndone: z.boolean() }), MOST_MADE),
  steps: count,
  undoneSteps: count,
  /** How its lock was fitted at the end; left out where it came on its door. */
  fit: z.optional(
    z.object({ isTogether: z.boolean(), faults: listOf(z.enum(FIT_FAULTS)), skipped: listOf(z.enum(FIT_CHECKS)) }),
  ),
});

/** A fitting: what was wrong with the fit when it was said to be ready. */
const fittingDetails = z.object({
  declared: z.nullable(z.enum(FIT_STAGES)),
  faults: listOf(z.enum(FIT_FAULTS)),
  skipped: listOf(z.enum(FIT_CHECKS)),
  moves: count,
  spindlesUsed: count,
});

/** A service visit: what was wrong with the lock, what its record names, and what the visit left out or did wrong. */
const serviceDetails = z.object({
  /** Of the visit; null where it is not known any more. */
  seed: z.nullable(count),
  isLeft: z.boolean(),
  conditions: listOf(z.enum(CONDITIONS)),
  found: listOf(z.enum(CONDITIONS)),
  faults: listOf(visitFaultSchema),
  acts: count,
});

/** A fit that was judged: what was wrong, and what was named. */
const inspectionDetails = z.object({
  faults: listOf(z.enum(FIT_FAULTS)),
  named: z.nullable(listOf(z.enum(FIT_FAULTS))),
  skipped: listOf(z.enum(FIT_CHECKS)),
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
