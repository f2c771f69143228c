import fc from "fast-check";
import { expect, test } from "vitest";
import type { WireLine } from "../../../src/realdial/wire/wireLine";
import { WireReader } from "../../../src/realdial/wire/wireReader";
import { anyWireLine } from "../../support/board/anyWireLine";
import { writeWireLine } from "../../support/board/writeWireLine";

const PER_TURN = 2400;
const HELLO: WireLine = {
  type: "hello",
  seq: 0,
  count: 0,
  ms: 0,
  start: 1,
  missed: 0,
  countsPerTurn: PER_TURN,
  version: 1,
};
/** Turns a second of which none is taken for a hand's, and so many ms that lines may lie behind. */
const FASTEST = 60;
const BEHIND = 1000;

const bytesOf = (line: WireLine) => new TextEncoder().encode(`${writeWireLine(line)}\n`);
const at = (seq: number, count: number, ms: number): WireLine => ({
  ...{ type: "position", seq: seq & 0xffff, count: count | 0, ms, start: 1, missed: 0 },
});

/** Turns that a reader makes of lines, each with the time at which it arrives. */
function read(lines: readonly (readonly [line: WireLine, arrives: number])[]) {
  const reader = new WireReader(0);
  const events = lines.flatMap(([line, arrives]) => reader.take(bytesOf(line), arrives));
  return {
    places: events.flatMap((event) => (event.type === "moved" ? [event.turns] : [])),
    types: events.map(({ type }) => type),
    leaps: events.flatMap((event) => (event.type === "leapt" ? [event.steps] : [])),
  };
}

const sum = (sizes: readonly number[]) => sizes.reduce((all, one) => all + one, 0);
const ways = (places: readonly number[]) => places.map((place, k) => Math.abs(place - (places[k - 1] ?? 0)));

test("whatever sound lines say, no more is turned than a hand can have turned meanwhile", () => {
  // Small counts a turn and long times are what a leap hides behind.
  const line = fc.oneof(
    anyWireLine.map((one) => ({ ...one, start: one.start % 3 })),
    anyWireLine.map((one) => ({ ...one, start: 1, seq: 1, ms: one.ms % 60_000, count: one.count % 100_000 })),
  );
  const later = fc.integer({ min: 0, max: 400 });
  fc.assert(
    fc.property(fc.array(fc.tuple(line, later), { maxLength: 60 }), (said) => {
      let now = 0;
      const lines = said.map(([one, after]) => {
        now += after;
        return [one.type === "hello" ? { ...one, version: 1, countsPerTurn: PER_TURN } : one, now] as const;
      });
      const { places } = read([[HELLO, 0], ...lines]);
      const flicker = (2 * places.length) / PER_TURN;
      expect(sum(ways(places))).toBeLessThanOrEqual(((now + BEHIND) / 1000) * FASTEST + flicker + 1e-6);
    }),
    { numRuns: 2000 },
  );
});

test("a count that leaps is doubted and turns nothing, and what is turned after it counts", () => {
  const leap = fc.oneof(fc.integer({ min: 2000, max: 2 ** 31 - 1 }), fc.integer({ min: -(2 ** 31) + 1, max: -2000 }));
  const turned = fc.array(fc.integer({ min: -150, max: 150 }), { minLength: 2, maxLength: 20 });
  fc.assert(
    fc.property(turned, leap, fc.nat(), (steps, by, place) => {
      const leapsAt = place % steps.length;
      let count = 0;
      const lines = steps.map((one, k) => {
        count += k === leapsAt ? by : one;
        return [at(k + 1, count, 8 * (k + 1)), 8 * (k + 1) + 3] as const;
      });
      const { places, leaps } = read([[HELLO, 0], ...lines]);
      expect(leaps).toEqual([Math.abs(by)]);
      expect((places.at(-1) ?? 0) * PER_TURN).toBeCloseTo(sum(steps.filter((_, k) => k !== leapsAt)), 6);
    }),
  );
});

test.each<[string, readonly (readonly [WireLine, number])[], readonly string[]]>([
  [
    "50 turns a second, which a board follows",
    [1, 2, 3, 4].map((k) => [at(k, 960 * k, 8 * k), 8 * k + 3]),
    ["moved", "moved", "moved", "moved"],
  ],
  [
    "a second of turning, all of it come at once",
    [1, 2, 3, 4].map((k) => [at(k, 6000 * k, 250 * k), 1000]),
    ["moved", "moved", "moved", "moved"],
  ],
  [
    "one step of an encoder that flickers in the same millisecond",
    [
      [at(1, 1, 8), 11],
      [at(2, 0, 8), 11],
    ],
    ["moved", "moved"],
  ],
  ["a turn within a millisecond", [[at(1, 2400, 1), 3]], ["leapt"]],
  ["as much as a hand turns in a day that has not passed", [[at(1, 2_000_000_000, 86_400_000), 20]], ["leapt"]],
  [
    "a day, and the way back",
    [
      [at(1, 2_000_000_000, 8), 11],
      [at(2, 5, 16), 19],
    ],
    ["leapt", "leapt"],
  ],
])("%s", (_, lines, types) => {
  expect(read([[HELLO, 0], ...lines]).types).toEqual(["ready", ...types]);
});
