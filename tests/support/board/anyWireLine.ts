import fc from "fast-check";
import type { WireLine } from "../../../src/realdial/wire/wireLine";

const stamp = {
  seq: fc.integer({ min: 0, max: 65_535 }),
  count: fc.integer(),
  ms: fc.integer({ min: 0, max: 2 ** 32 - 1 }),
  start: fc.integer({ min: 0, max: 255 }),
  missed: fc.integer({ min: 0, max: 65_535 }),
};

/** Any line that a board may write. */
export const anyWireLine: fc.Arbitrary<WireLine> = fc.oneof(
  fc.record({
    type: fc.constant("hello" as const),
    ...stamp,
    countsPerTurn: fc.integer({ min: 4, max: 1e6 }),
    version: fc.integer({ min: 1, max: 1e6 }),
  }),
  fc.record({ type: fc.constantFrom("position" as const, "button" as const), ...stamp }),
);
