import type { DialingStation, Sheet, ZeroingStation } from "../../src/drill/sheet/sheet";

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
