import type {
  ChangeTry,
  DialingTry,
  FittingTry,
  HandoverTry,
  InspectionTry,
  ServiceTry,
  TroubleTry,
  ZeroingTry,
} from "../../src/drill/marking/tryResult";

/** A try at dialing that opened without fault; change what a test is about. */
export const dialingTry = (fields: Partial<DialingTry> = {}): DialingTry => ({
  kind: "dialing",
  station: 0,
  repetition: 1,
  time_ms: 30_000,
  isBrokenOff: false,
  combination: [38, 71, 26],
  opened: true,
  stopErrors: [0.125, -0.25, 0.125],
  faults: [],
  ...fields,
});

/** A zero shown to be good from both directions. */
export const zeroingTry = (fields: Partial<ZeroingTry> = {}): ZeroingTry => ({
  kind: "zeroing",
  station: 0,
  repetition: 1,
  time_ms: 90_000,
  isBrokenOff: false,
  verdicts: { right: "accept", left: "accept" },
  means: { right: 0.1, left: -0.1 },
  refused: 0,
  ...fields,
});

/** A change that is true and proved. */
export const changeTry = (fields: Partial<ChangeTry> = {}): ChangeTry => ({
  kind: "change",
  station: 0,
  repetition: 1,
  time_ms: 240_000,
  isBrokenOff: false,
  combination: [71, 36, 59],
  outcome: "true",
  proofs: 3,
  faults: [],
  ...fields,
});

/** A condition named right, its size to the point. */
export const troubleTry = (fields: Partial<TroubleTry> = {}): TroubleTry => ({
  kind: "trouble",
  station: 0,
  repetition: 1,
  time_ms: 180_000,
  isBrokenOff: false,
  condition: "index-slipped",
  named: "index-slipped",
  isNamedRight: true,
  sizeError: 0,
  tries: 2,
  measurements: 4,
  ...fields,
});

/** A clean handover. */
export const handoverTry = (fields: Partial<HandoverTry> = {}): HandoverTry => ({
  kind: "handover",
  station: 0,
  repetition: 1,
  time_ms: 600_000,
  isBrokenOff: false,
  isHandedOver: true,
  missing: [],
  faults: [],
  undone: 0,
  ...fields,
});

/** A dial that is fitted with nothing wrong, every check made. */
export const fittingTry = (fields: Partial<FittingTry> = {}): FittingTry => ({
  kind: "fitting",
  station: 0,
  repetition: 1,
  time_ms: 300_000,
  isBrokenOff: false,
  declared: "coupled",
  faults: [],
  skipped: [],
  moves: 15,
  spindlesUsed: 0,
  ...fields,
});

/** A visit to a sound lock, with nothing left out. */
export const serviceTry = (fields: Partial<ServiceTry> = {}): ServiceTry => ({
  kind: "service",
  station: 0,
  repetition: 1,
  time_ms: 300_000,
  isBrokenOff: false,
  isLeft: true,
  conditions: [],
  found: [],
  faults: [],
  acts: 24,
  ...fields,
});

/** A fit with one fault, found after every check. */
export const inspectionTry = (fields: Partial<InspectionTry> = {}): InspectionTry => ({
  kind: "inspection",
  station: 0,
  repetition: 1,
  time_ms: 200_000,
  isBrokenOff: false,
  faults: ["rubs"],
  named: ["rubs"],
  skipped: [],
  ...fields,
});

/** Some tries that opened, then some that did not. */
export const triesRight = (right: number, of: number, fields: Partial<DialingTry> = {}): DialingTry[] =>
  Array.from({ length: of }, (_, k) => dialingTry({ repetition: k + 1, opened: k < right, ...fields }));
