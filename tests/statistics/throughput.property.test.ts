import fc from "fast-check";
import { expect, test } from "vitest";
import { StatisticsError } from "../../src/statistics/statisticsError";
import { type Stop, throughput } from "../../src/statistics/throughput";

const grid = (min: number, max: number) => fc.integer({ min: min * 64, max: max * 64 }).map((n) => n / 64);
const stop = fc.record({ amplitude: grid(10, 300), deviation: grid(-5, 5), time_ms: grid(100, 5000) });
const series = fc
  .array(stop, { minLength: 2, maxLength: 30 })
  .filter((stops) => stops.some(({ deviation }) => deviation !== stops[0]?.deviation));

const withEach = (stops: readonly Stop[], change: (stop: Stop) => Partial<Stop>) =>
  stops.map((one) => ({ ...one, ...change(one) }));

test("twice the time is half the throughput", () => {
  fc.assert(
    fc.property(series, (stops) => {
      const slow = withEach(stops, ({ time_ms }) => ({ time_ms: 2 * time_ms }));
      expect(throughput(slow).throughput_bitsPerSecond).toBeCloseTo(throughput(stops).throughput_bitsPerSecond / 2, 9);
    }),
  );
});

test("the unit of length does not matter, nor does a constant miss", () => {
  fc.assert(
    fc.property(series, (stops) => {
      const inOtherUnit = withEach(stops, ({ amplitude, deviation }) => ({
        amplitude: 3.6 * amplitude,
        deviation: 3.6 * (deviation + 1),
      }));
      expect(throughput(inOtherUnit).effectiveDifficulty_bits).toBeCloseTo(
        throughput(stops).effectiveDifficulty_bits,
        9,
      );
    }),
  );
});

test("stops that scatter twice as far are less difficult", () => {
  fc.assert(
    fc.property(series, (stops) => {
      const wild = withEach(stops, ({ deviation }) => ({ deviation: 2 * deviation }));
      expect(throughput(wild).effectiveDifficulty_bits).toBeLessThan(throughput(stops).effectiveDifficulty_bits);
    }),
  );
});

const one = { amplitude: 100, deviation: 1, time_ms: 1000 };
test.each([
  ["no stop", [], 4, "empty-sample"],
  ["one stop", [one], 4, "too-few-values"],
  ["stops on one spot", [one, one], 4, "no-spread"],
  ["a deviation that is none", [one, { ...one, deviation: Number.NaN }], 4, "not-finite"],
  ["no time", withEach([one, { ...one, deviation: 2 }], () => ({ time_ms: 0 })), 4, "bad-parameter"],
  ["no way", withEach([one, { ...one, deviation: 2 }], () => ({ amplitude: 0 })), 4, "bad-parameter"],
  ["no width", [one, { ...one, deviation: 2 }], 0, "bad-parameter"],
])("%s has no throughput", (_why, stops, factor, code) => {
  expect(() => throughput(stops, factor)).toThrow(StatisticsError);
  expect(() => throughput(stops, factor)).toThrow(expect.objectContaining({ code }));
});
