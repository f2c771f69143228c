import type { DialingTry, ZeroingTry } from "../../src/drill/marking/tryResult";

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

/** Some tries that opened, then some that did not. */
export const triesRight = (right: number, of: number, fields: Partial<DialingTry> = {}): DialingTry[] =>
  Array.from({ length: of }, (_, k) => dialingTry({ repetition: k + 1, opened: k < right, ...fields }));
