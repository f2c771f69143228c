import * as z from "zod/mini";
import type { FaultCode } from "../../dialing/fault";
import { FAULT_NAMES } from "../../dialing/faultName";
import { DRILL_WORDS } from "../../drill/drillWords";
import { MOST_BEGUN_AGAIN } from "../../drill/marking/lostSight";
import {
  CHANGE_OUTCOMES,
  type ChangeTry,
  type DialingTry,
  type FittingTry,
  type HandoverFit,
  type HandoverTry,
  type InspectionTry,
  type ServiceTry,
  type TroubleTry,
  type ZeroingTry,
} from "../../drill/marking/tryResult";
import { STATION_KINDS } from "../../drill/sheet/stationKinds";
import { checkSetSchema } from "../../fitting/checkSetSchema";
import { FIT_CHECKS } from "../../fitting/fitChecks";
import { FIT_FAULTS } from "../../fitting/fitFaultCode";
import { FIT_STAGES } from "../../fitting/fitStage";
import { fittingActSchema } from "../../fitting/fittingActSchema";
import { FITTING } from "../../fitting/trainingValues";
import { flag, oneOf, rulesOf, shortList, strict, turn, whole, within } from "../../lock/fieldSchemas";
import { doubtsSchema } from "../../realdial/sources/dialDoubt";
import { sourcesSchema } from "../../realdial/sources/sourceSchema";
import { visitFaultSchema } from "../../service/visitFaultSchema";
import { CONDITIONS } from "../../service/wrongThing";
import { REFUSALS } from "../../zeroing/approach";
import { code, count, span } from "./schemaParts";

/** A schema for every field of a type: who gives a try another field is sent here by the compiler. */
type FieldsOf<Kept> = Readonly<Record<keyof Kept, z.core.SomeType>>;

/** Larger than any dial: what a hand can be off by, or turn beyond, is far below. */
const graduations = within(-1e9, 1e9, "graduations");
const combination = shortList(within(0, 1000, "graduations"), 6);

const place = {
  station: whole(0, 39),
  repetition: whole(1, 200),
  time_ms: span,
  isBrokenOff: flag,
};

/** What turned the dial of a try, and how surely. */
const turned = { sources: sourcesSchema, doubts: doubtsSchema };

/** How a try at the dial itself was turned: such a one may be begun again. */
const turning = { ...turned, begunAgain: z.optional(whole(1, MOST_BEGUN_AGAIN)) };

const FAULT_CODES = Object.keys(FAULT_NAMES) as FaultCode[];

const dialingFault = strict({
  code: oneOf(FAULT_CODES),
  number: whole(1, 6),
  size: within(0, 1e9, "graduations"),
});

const dialing = strict({
  kind: z.literal("dialing"),
  ...place,
  combination,
  opened: flag,
  stopErrors: shortList(z.nullable(within(-1000, 1000, "graduations")), 6),
  faults: shortList(dialingFault, 10_000),
  ...turning,
} satisfies FieldsOf<DialingTry>);

const sideVerdict = z.nullable(oneOf(["accept", "reject", "not shown yet"]));
const sideMean = z.nullable(graduations);

const reading = strict({
  turn,
  deviation: graduations,
  refusal: z.nullable(oneOf(REFUSALS)),
});

const zeroing = strict({
  kind: z.literal("zeroing"),
  ...place,
  verdicts: strict({ left: sideVerdict, right: sideVerdict }),
  means: strict({ left: sideMean, right: sideMean }),
  refused: count,
  readings: z.optional(shortList(reading, 10_000)),
  ...turning,
} satisfies FieldsOf<ZeroingTry>);

const jobFaults = shortList(strict({ code, size: z.optional(graduations) }), 10_000);

const change = strict({
  kind: z.literal("change"),
  ...place,
  combination,
  outcome: oneOf(CHANGE_OUTCOMES),
  proofs: count,
  faults: jobFaults,
  ...turned,
} satisfies FieldsOf<ChangeTry>);

const trouble = strict({
  kind: z.literal("trouble"),
  ...place,
  condition: z.nullable(code),
  named: z.nullable(code),
  isNamedRight: flag,
  sizeError: z.nullable(graduations),
  tries: count,
  measurements: count,
  ...turned,
} satisfies FieldsOf<TroubleTry>);

const handoverFit = strict({
  isTogether: flag,
  faults: shortList(oneOf(FIT_FAULTS), FIT_FAULTS.length),
  skipped: shortList(oneOf(FIT_CHECKS), FIT_CHECKS.length),
  partsReplaced: count,
  acts: shortList(fittingActSchema, 10_000),
  checks: shortList(oneOf(FIT_CHECKS), 100),
} satisfies FieldsOf<HandoverFit>);

const handover = strict({
  kind: z.literal("handover"),
  ...place,
  isHandedOver: flag,
  missing: shortList(code, 100),
  faults: jobFaults,
  undone: count,
  fit: z.optional(handoverFit),
  ...turned,
} satisfies FieldsOf<HandoverTry>);

const fitting = strict({
  kind: z.literal("fitting"),
  ...place,
  declared: z.nullable(oneOf(FIT_STAGES)),
  faults: shortList(strict({ code: oneOf(FIT_FAULTS) }), FIT_FAULTS.length),
  skipped: shortList(oneOf(FIT_CHECKS), FIT_CHECKS.length),
  moves: count,
  spindlesUsed: whole(0, FITTING.spares),
} satisfies FieldsOf<FittingTry>);

const conditions = shortList(oneOf(CONDITIONS), CONDITIONS.length);

const service = strict({
  kind: z.literal("service"),
  ...place,
  isLeft: flag,
  conditions,
  found: conditions,
  faults: shortList(visitFaultSchema, 100),
  acts: count,
} satisfies FieldsOf<ServiceTry>);

const fitFaultList = shortList(oneOf(FIT_FAULTS), FIT_FAULTS.length);

const inspection = strict({
  kind: z.literal("inspection"),
  ...place,
  faults: fitFaultList,
  named: z.nullable(fitFaultList),
  skipped: shortList(oneOf(FIT_CHECKS), FIT_CHECKS.length),
  checkSet: checkSetSchema,
} satisfies FieldsOf<InspectionTry>);

/** One try of a sitting, of whatever kind. */
export const trySchema = z.discriminatedUnion(
  "kind",
  [dialing, zeroing, change, trouble, handover, fitting, service, inspection],
  rulesOf(DRILL_WORDS)("no-station-kind", { known: STATION_KINDS }),
);
