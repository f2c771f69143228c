import { describe, expect, test } from "vitest";
import published from "../../shared/published/nist-control-charts.json" with { type: "json" };
import { ewmaChart, individualsChart } from "../../src/statistics/controlChart";
import { asPrinted } from "../support/asPrinted";

const { ewma, individuals } = published;

describe(`${published.source} (${published.status})`, () => {
  const chart = ewmaChart(ewma.values, ewma);

  test("every average", () => {
    expect(chart.points.map((point, i) => asPrinted(point, ewma.points[i] ?? ""))).toEqual(ewma.points);
    expect(chart.beyond).toEqual([]);
  });

  test("upper limit", () => {
    expect(asPrinted(chart.limits.high, ewma.upper)).toBe(ewma.upper);
  });

  test("lower limit, which is printed cut off instead of rounded", () => {
    const cutOff = (Math.floor(chart.limits.low * 1e4) / 1e4).toFixed(4);
    expect(cutOff).toBe(ewma.lower);
  });

  test("individuals and moving range", () => {
    const { center, limits, meanMovingRange, beyond } = individualsChart(individuals.values);
    expect(asPrinted(center, individuals.center)).toBe(individuals.center);
    expect(asPrinted(meanMovingRange, individuals.meanMovingRange)).toBe(individuals.meanMovingRange);
    expect(asPrinted(limits.high, individuals.upper)).toBe(individuals.upper);
    expect(asPrinted(limits.low, individuals.lower)).toBe(individuals.lower);
    expect(beyond).toEqual([]);
  });
});
