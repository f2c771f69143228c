import type {
  ChangeStation,
  DialingStation,
  FittingStation,
  HandoverStation,
  InspectionStation,
  ServiceStation,
  Sheet,
  TroubleStation,
  ZeroingStation,
} from "../../src/drill/sheet/sheet";

/** A dialing station of the three-wheel lock; change what a test is about. */
export const dialingStation = (fields: Partial<DialingStation> = {}): DialingStation => ({
  kind: "dialing",
  id: "dial",
  profile: "three-wheel",
  combinations: { policy: "as-set" },
  help: "silent",
  repetitions: 10,
  passMarks: {},
  ...fields,
});

/** A zeroing station of the encoder lock. */
export const zeroingStation = (fields: Partial<ZeroingStation> = {}): ZeroingStation => ({
  kind: "zeroing",
  id: "zero",
  profile: "dial-encoder",
  help: "silent",
  repetitions: 2,
  passMarks: {},
  ...fields,
});

/** A station of changes on the three-wheel lock. */
export const changeStation = (fields: Partial<ChangeStation> = {}): ChangeStation => ({
  kind: "change",
  id: "change",
  profile: "three-wheel",
  combinations: { policy: "drawn" },
  help: "silent",
  repetitions: 4,
  passMarks: {},
  ...fields,
});

/** A trouble station of the three-wheel lock. */
export const troubleStation = (fields: Partial<TroubleStation> = {}): TroubleStation => ({
  kind: "trouble",
  id: "trouble",
  profile: "three-wheel",
  help: "silent",
  repetitions: 6,
  passMarks: {},
  ...fields,
});

/** A handover station of the three-wheel lock. */
export const handoverStation = (fields: Partial<HandoverStation> = {}): HandoverStation => ({
  kind: "handover",
  id: "handover",
  profile: "three-wheel",
  hand: "simulated",
  help: "silent",
  repetitions: 2,
  passMarks: {},
  ...fields,
});

/** A fitting station of the three-wheel lock. */
export const fittingStation = (fields: Partial<FittingStation> = {}): FittingStation => ({
  kind: "fitting",
  id: "fit",
  profile: "three-wheel",
  help: "counts",
  repetitions: 2,
  passMarks: {},
  ...fields,
});

/** A station of service visits to the three-wheel lock. */
export const serviceStation = (fields: Partial<ServiceStation> = {}): ServiceStation => ({
  kind: "service",
  id: "visit",
  profile: "three-wheel",
  help: "counts",
  repetitions: 2,
  passMarks: {},
  ...fields,
});

/** A station of fits of the three-wheel lock to be judged. */
export const inspectionStation = (fields: Partial<InspectionStation> = {}): InspectionStation => ({
  kind: "inspection",
  id: "judge",
  profile: "three-wheel",
  help: "silent",
  repetitions: 2,
  passMarks: {},
  ...fields,
});

/** A sound sheet with one dialing station. */
export const testSheet = (fields: Partial<Sheet> = {}): Sheet => ({
  format: "gatefall-sheet",
  version: 1,
  title: "A sheet",
  purpose: "To be tested.",
  stations: [dialingStation()],
  order: "blocked",
  ...fields,
});
