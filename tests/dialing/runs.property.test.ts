import fc from "fast-check";
import { expect, test } from "vitest";
import { arrivals, distanceTo, type Run, stopError } from "../../src/dialing/runs";
import { signOf } from "../../src/lock/dial";
import { batchArrivals, batchStopError } from "../support/batchReading";

// Multiples of 1/64 are exact in binary, and so are their sums: equality needs no tolerance.
const exact = (from: number, to: number) => fc.integer({ min: from * 64, max: to * 64 }).map((n) => n / 64);

const perTurns = fc.integer({ min: 10, max: 200 });
const cases = perTurns.chain((perTurn) =>
  fc.record({
    perTurn: fc.constant(perTurn),
    number: exact(0, perTurn - 1),
    tolerance: exact(0, Math.min(5, Math.floor(perTurn / 4))),
    run: fc
      .record({ turn: fc.constantFrom("left" as const, "right" as const), from: exact(-900, 900), way: exact(0, 900) })
      .map(({ turn, from, way }): Run => ({ turn, from, to: from + signOf(turn) * way })),
  }),
);

test("arrivals are the marks counted one by one", () => {
  fc.assert(
    fc.property(cases, ({ run, number, perTurn, tolerance }) => {
      expect(arrivals(run, number, perTurn, tolerance)).toBe(batchArrivals(run, number, perTurn, tolerance));
    }),
    { numRuns: 2000 },
  );
});

test("a stop error is the way to the nearest mark", () => {
  fc.assert(
    fc.property(cases, ({ run, number, perTurn }) => {
      expect(stopError(run.turn, run.to, number, perTurn)).toBe(batchStopError(run, number, perTurn));
    }),
  );
});

test("left and right mirror each other", () => {
  fc.assert(
    fc.property(cases, ({ run, number, perTurn, tolerance }) => {
      const mirrored: Run = { turn: run.turn === "left" ? "right" : "left", from: -run.from, to: -run.to };
      expect(arrivals(mirrored, -number, perTurn, tolerance)).toBe(arrivals(run, number, perTurn, tolerance));
    }),
  );
});

test("a whole turn more is one arrival more, and the same stop error", () => {
  fc.assert(
    fc.property(cases, ({ run, number, perTurn, tolerance }) => {
      const longer: Run = { ...run, to: run.to + signOf(run.turn) * perTurn };
      expect(arrivals(longer, number, perTurn, tolerance)).toBe(arrivals(run, number, perTurn, tolerance) + 1);
      expect(stopError(longer.turn, longer.to, number, perTurn)).toBe(stopError(run.turn, run.to, number, perTurn));
    }),
  );
});

test("the next mark is a mark, ahead, and at most a turn away", () => {
  fc.assert(
    fc.property(cases, ({ run, number, perTurn }) => {
      const way = distanceTo(number, run.from, run.turn, perTurn);
      expect(way > 0 && way <= perTurn).toBe(true);
      expect((run.from + signOf(run.turn) * way - number) % perTurn).toBeCloseTo(0, 12);
    }),
  );
});
