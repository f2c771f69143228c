import { describe, expect, test } from "vitest";
import published from "../../../shared/published/aiag-gauge.json" with { type: "json" };
import { contributionShare, distinctCategories, studyShare } from "../../../src/statistics/gauge/gaugeComponents";
import { gaugeStudy } from "../../../src/statistics/gauge/gaugeStudy";
import { asPrinted } from "../../support/asPrinted";

const lines = ["part", "appraiser", "interaction", "equipment"] as const;
const shared = ["equipment", "appraiser", "gauge", "part"] as const;

describe(`${published.source} (${published.status}): analysis of variance`, () => {
  const study = gaugeStudy(published.measurements);

  test.each(lines)("line of the table: %s", (name) => {
    const line = study.table[name];
    const expected = published.table[name];
    expect(line.degreesOfFreedom).toBe(expected.degreesOfFreedom);
    expect(asPrinted(line.sumOfSquares, expected.sumOfSquares)).toBe(expected.sumOfSquares);
    expect(asPrinted(line.meanSquare, expected.meanSquare)).toBe(expected.meanSquare);
  });

  test("total, and the lines add up to it", () => {
    const { total } = published.table;
    expect(study.table.total.degreesOfFreedom).toBe(total.degreesOfFreedom);
    expect(asPrinted(study.table.total.sumOfSquares, total.sumOfSquares)).toBe(total.sumOfSquares);
    const sum = lines.reduce((soFar, name) => soFar + study.table[name].sumOfSquares, 0);
    expect(sum).toBeCloseTo(study.table.total.sumOfSquares, 10);
  });

  test("ratios", () => {
    const { ratios } = published;
    expect(asPrinted(study.interactionRatio.f, ratios.interactionF)).toBe(ratios.interactionF);
    expect(asPrinted(study.interactionRatio.p, ratios.interactionP)).toBe(ratios.interactionP);
    expect(asPrinted(study.partRatio.f, ratios.partF)).toBe(ratios.partF);
    expect(asPrinted(study.appraiserRatio.f, ratios.appraiserF)).toBe(ratios.appraiserF);
  });

  test("the interaction is chance and is pooled", () => {
    expect(study.wasPooled).toBe(true);
    expect(study.components.interaction).toBe(0);
  });

  test.each(["equipment", "appraiser", "part", "total"] as const)("pooled standard deviation: %s", (name) => {
    expect(asPrinted(study.components[name], published.pooled[name])).toBe(published.pooled[name]);
  });

  test("pooled standard deviation: gauge, whose last printed digit does not follow from the data", () => {
    expect(study.components.gauge.toFixed(5)).toBe(Number(published.pooled.gauge).toFixed(5));
    // Exact arithmetic in fractions.
    expect(study.components.gauge.toFixed(10)).toBe("0.3023715223");
  });

  test.each(shared)("percent of contribution and of study variation: %s", (name) => {
    const contribution = published.contribution_percent[name];
    const share = published.study_percent[name];
    expect(asPrinted(100 * contributionShare(study.components, name), contribution)).toBe(contribution);
    expect(asPrinted(100 * studyShare(study.components, name), share)).toBe(share);
  });

  test("distinct categories", () => {
    const found = distinctCategories(study.components);
    expect(asPrinted(found, published.distinctCategories)).toBe(published.distinctCategories);
    expect(Math.floor(found)).toBe(4);
  });

  test("without pooling the equipment stands alone", () => {
    const { components, wasPooled } = gaugeStudy(published.measurements, 1);
    expect(wasPooled).toBe(false);
    expect(asPrinted(components.equipment, published.unpooledEquipment)).toBe(published.unpooledEquipment);
  });
});
