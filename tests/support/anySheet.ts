import fc from "fast-check";
import type {
  ChangeStation,
  Condition,
  DialingStation,
  FittingStation,
  HandoverStation,
  InspectionStation,
  ServiceStation,
  Sheet,
  Station,
  TroubleStation,
  ZeroingStation,
} from "../../src/drill/sheet/sheet";
import { SHIPPED_PROFILES } from "../../src/lock/shippedProfiles";

const text = fc.string({ minLength: 1, maxLength: 40, unit: "grapheme" }).filter((one) => one.length <= 40);
const sixtyFourths = (low: number, high: number) =>
  fc.integer({ min: low * 64, max: high * 64 }).map((count) => count / 64);

const condition: fc.Arbitrary<Condition> = fc.oneof(
  fc.record({ kind: fc.constant("index-offset" as const), size: sixtyFourths(-5, 5) }),
  fc.record({ kind: fc.constant("lost-motion" as const), size: sixtyFourths(0, 2), from: fc.constant(1) }),
  fc.record({ kind: fc.constantFrom("heavy-dial" as const, "light-dial" as const, "no-cutaway" as const) }),
);

const anyStation = {
  id: text,
  help: fc.constantFrom("full" as const, "counts" as const, "silent" as const),
  repetitions: fc.integer({ min: 1, max: 12 }),
  conditions: fc.array(condition, { maxLength: 3 }),
};

const dialing: fc.Arbitrary<DialingStation> = fc.constantFrom(...SHIPPED_PROFILES).chain((profile) =>
  fc.record({
    kind: fc.constant("dialing" as const),
    ...anyStation,
    profile: fc.constantFrom(profile.id, profile),
    combinations: fc.oneof(
      fc.constant({ policy: "as-set" as const }),
      fc.constant({ policy: "drawn" as const, each: "station" as const }),
      fc.record({
        policy: fc.constant("fixed" as const),
        list: fc.array(fc.tuple(...profile.procedure.map(() => fc.integer({ min: 0, max: profile.graduations - 1 }))), {
          minLength: 1,
          maxLength: 4,
        }),
      }),
    ),
    passMarks: fc.record({ firstTime: fc.constant(1), stopErrorBias: sixtyFourths(0, 5) }, { requiredKeys: [] }),
  }),
);

const zeroing: fc.Arbitrary<ZeroingStation> = fc.record({
  kind: fc.constant("zeroing" as const),
  ...anyStation,
  profile: fc.constant("dial-encoder"),
  passMarks: fc.record({ zeroed: fc.constant(1) }, { requiredKeys: [] }),
});

const { conditions: _, ...anyJob } = anyStation;

const change: fc.Arbitrary<ChangeStation> = fc.record({
  kind: fc.constant("change" as const),
  ...anyJob,
  profile: fc.constantFrom("three-wheel", "two-wheel", "dial-encoder"),
  combinations: fc.constant({ policy: "drawn" as const }),
  passMarks: fc.record({ right: fc.constant(1), faultyTries: fc.constant(0) }, { requiredKeys: [] }),
});

const trouble: fc.Arbitrary<TroubleStation> = fc.record(
  {
    kind: fc.constant("trouble" as const),
    ...anyJob,
    profile: fc.constantFrom(...SHIPPED_PROFILES.map(({ id }) => id)),
    pool: fc.subarray(["index-slipped", "lost-motion", "wheel-off"], { minLength: 1 }),
    passMarks: fc.record({ right: fc.constant(1), sizeError: sixtyFourths(0, 5) }, { requiredKeys: [] }),
  },
  { requiredKeys: ["kind", "id", "help", "repetitions", "profile", "passMarks"] },
);

const handover: fc.Arbitrary<HandoverStation> = fc.record({
  kind: fc.constant("handover" as const),
  ...anyJob,
  profile: fc.constantFrom(...SHIPPED_PROFILES.map(({ id }) => id)),
  hand: fc.constantFrom("real" as const, "simulated" as const),
  passMarks: fc.record({ clean: fc.constant(1) }, { requiredKeys: [] }),
});

const fitting: fc.Arbitrary<FittingStation> = fc.record({
  kind: fc.constant("fitting" as const),
  ...anyJob,
  profile: fc.constantFrom(...SHIPPED_PROFILES.map(({ id }) => id)),
  passMarks: fc.record({ right: fc.constant(1), faults: fc.constant(0) }, { requiredKeys: [] }),
});

const service: fc.Arbitrary<ServiceStation> = fc.record({
  kind: fc.constant("service" as const),
  ...anyJob,
  profile: fc.constantFrom(...SHIPPED_PROFILES.map(({ id }) => id)),
  passMarks: fc.record({ right: fc.constant(1), faults: fc.constant(0) }, { requiredKeys: [] }),
});

const inspection: fc.Arbitrary<InspectionStation> = fc.record({
  kind: fc.constant("inspection" as const),
  ...anyJob,
  profile: fc.constantFrom(...SHIPPED_PROFILES.map(({ id }) => id)),
  passMarks: fc.record({ right: fc.constant(1), mistakes: fc.constant(0) }, { requiredKeys: [] }),
});

/** Any sound station. */
export const anySheetStation: fc.Arbitrary<Station> = fc.oneof(
  dialing,
  zeroing,
  change,
  trouble,
  handover,
  fitting,
  service,
  inspection,
);

/** Any sound sheet. */
export const anySheet: fc.Arbitrary<Sheet> = fc.record(
  {
    format: fc.constant("gatefall-sheet" as const),
    version: fc.constant(1 as const),
    title: text,
    purpose: text,
    instructions: fc.array(text, { maxLength: 3 }),
    stations: fc.uniqueArray(anySheetStation, { minLength: 1, maxLength: 6, selector: ({ id }) => id }),
    order: fc.constantFrom("blocked" as const, "interleaved" as const, "random" as const),
    seed: fc.integer({ min: 0, max: 2 ** 32 - 1 }),
  },
  { requiredKeys: ["format", "version", "title", "purpose", "stations", "order"] },
);
