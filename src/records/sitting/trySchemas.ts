import * as z from "zod/mini";
import type { FaultCode } from "../../dialing/fault";
import { FAULT_NAMES } from "../../dialing/faultName";
import {
  CHANGE_OUTCOMES,
  type ChangeTry,
  type DialingTry,
  type HandoverTry,
  type TroubleTry,
  type ZeroingTry,
} from "../../drill/marking/tryResult";
import { REFUSALS } from "../../zeroing/approach";
import { code, count, flag, list, object, oneOf, span, whole, within } from "./schemaParts";

/** A schema for every field of a type: who gives a try another field is sent here by the compiler. */
type FieldsOf<Kept> = Readonly<Record<keyof Kept, z.core.SomeType>>;

/** Larger than any dial: what a hand can be off by, or turn beyond, is far below. */
const graduations = within(-1e9, 1e9, "graduations");
const combination = list(within(0, 1000, "graduations"), 6);

const place = {
  station: whole(0, 39),
  repetition: whole(1, 200),
  time_ms: span,
  isBrokenOff: flag,
};

const FAULT_CODES = Object.keys(FAULT_NAMES) as FaultCode[];

const dialingFault = object(
  {
    code: z.enum(FAULT_CODES, { error: `must be one of ${FAULT_CODES.join(", ")}` }),
    number: whole(1, 6),
    size: within(0, 1e9, "graduations"),
  },
  "a fault of dialing",
);

const dialing = object(
  {
    kind: z.literal("dialing"),
    ...place,
    combination,
    opened: flag,
    stopErrors: list(z.nullable(within(-1000, 1000, "graduations")), 6),
    faults: list(dialingFault, 10_000),
  } satisfies FieldsOf<DialingTry>,
  "a try at dialing",
);

const sideVerdict = z.nullable(oneOf(["accept", "reject", "not shown yet"]));
const sideMean = z.nullable(graduations);

const reading = object(
  { turn: oneOf(["left", "right"]), deviation: graduations, refusal: z.nullable(oneOf(REFUSALS)) },
  "a stop of a zeroing",
);

const zeroing = object(
  {
    kind: z.literal("zeroing"),
    ...place,
    verdicts: object({ left: sideVerdict, right: sideVerdict }, "the verdict of each direction"),
    means: object({ left: sideMean, right: sideMean }, "the mean of each direction"),
    refused: count,
    readings: z.optional(list(reading, 10_000)),
  } satisfies FieldsOf<ZeroingTry>,
  "a try at setting zero",
);

const jobFaults = list(object({ code, size: z.optional(graduations) }, "a fault of a job"), 10_000);

const change = object(
  {
    kind: z.literal("change"),
    ...place,
    combination,
    outcome: oneOf(CHANGE_OUTCOMES),
    proofs: count,
    faults: jobFaults,
  } satisfies FieldsOf<ChangeTry>,
  "a change of a combination",
);

const trouble = object(
  {
    kind: z.literal("trouble"),
    ...place,
    condition: z.nullable(code),
    named: z.nullable(code),
    isNamedRight: flag,
    sizeError: z.nullable(graduations),
    tries: count,
    measurements: count,
  } satisfies FieldsOf<TroubleTry>,
  "a try at finding trouble",
);

const handover = object(
  {
    kind: z.literal("handover"),
    ...place,
    isHandedOver: flag,
    missing: list(code, 100),
    faults: jobFaults,
    undone: count,
  } satisfies FieldsOf<HandoverTry>,
  "a handover",
);

/** One try of a sitting, of whatever kind. */
export const trySchema = z.discriminatedUnion("kind", [dialing, zeroing, change, trouble, handover], {
  error: "must have a kind that this trainer knows: dialing, zeroing, change, trouble or handover",
});
