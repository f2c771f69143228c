import { csvParse } from "d3-dsv";
import { describe, expect, test } from "vitest";
import aiag from "../../../shared/published/aiag-gauge.json" with { type: "json" };
import { categoriesSentence, gaugeView } from "../../../src/app/desk/gaugeWords";
import { categoriesOf, gaugeCsv } from "../../../src/progress/csv/gaugeCsv";
import { type DialingGauge, dialingGauge, gaugeParticipants } from "../../../src/progress/stops/dialingGauge";
import { anAttempt, aPerson, contents, NOON, stopsOf } from "../../support/logbookRecords";

const OPEN = { profileId: "three-wheel", exercise: "open" };
const people = ["A", "B", "C"].map((id) => aPerson(id));
const NAMES = new Map(people.map(({ id, name }) => [id, name]));

/** The measurements of the AIAG manual as stops: appraisers are people, parts places, trials attempts. */
const asAttempts = people.flatMap(({ id }, j) =>
  [0, 1, 2].map((trial) =>
    anAttempt(`${id}${trial}`, {
      personId: id,
      startedAt: NOON + trial,
      combination: aiag.measurements.map((_, k) => k),
      stops: stopsOf(...aiag.measurements.map((part) => part[j]?.[trial] ?? Number.NaN)),
    }),
  ),
);

const gaugeOf = (place: number | null = null): DialingGauge => {
  const found = dialingGauge(people, asAttempts, place);
  if ("lacking" in found) throw new Error(String(found.lacking));
  return found;
};

describe("the gauge study of a class", () => {
  test("gives the values of the AIAG manual: shares of study variation and distinct categories", () => {
    const rows = csvParse(gaugeCsv(OPEN, null, gaugeOf(), "screen"));
    const of = (source: string) => rows.find((row) => row.source === source);
    // AIAG, Measurement Systems Analysis, 4th ed. (2010), chapter III, ANOVA report: EV 18.42 %, AV 20.90 %,
    // GRR 27.86 %, PV 96.04 % of the total, ndc 4.
    expect(Number(of("equipment")?.study_share)).toBeCloseTo(0.1842, 4);
    expect(Number(of("appraiser")?.study_share)).toBeCloseTo(0.209, 4);
    expect(Number(of("gauge")?.study_share)).toBeCloseTo(0.2786, 4);
    expect(Number(of("part")?.study_share)).toBeCloseTo(0.9604, 4);
    expect(of("gauge")).toMatchObject({ distinct_categories: "4", people: "3", stops_each: "3", numbers: "1 to 10" });
    expect(Number(of("part")?.study_variation_6sd)).toBeCloseTo(6 * 1.042327, 4);
    const contributions = ["equipment", "appraiser", "interaction", "part"].map((one) => Number(of(one)?.contribution));
    expect(contributions.reduce((sum, one) => sum + one, 0)).toBeCloseTo(1, 4);
  });

  test("of one number is a study without parts, worked by hand", () => {
    const stops = { A: [0, 2], B: [4, 5] };
    const attempts = Object.entries(stops).flatMap(([id, errors]) =>
      errors.map((error, i) => anAttempt(`${id}${i}`, { personId: id, stops: stopsOf(error) })),
    );
    // Within (2 + 0.5) / 2 = 1.25, between 2 * (1.75^2 + 1.75^2) = 12.25.
    const found = dialingGauge(people.slice(0, 2), attempts, 1);
    if ("lacking" in found) throw new Error(String(found.lacking));
    expect(found.components.equipment).toBeCloseTo(Math.sqrt(1.25), 12);
    expect(found.components.appraiser).toBeCloseTo(Math.sqrt((12.25 - 1.25) / 2), 12);
    expect(found).toMatchObject({ study: null, places: 1, trials: 2, means: [[1, 4.5]] });
    expect(categoriesOf(found)).toBeNull();
    expect(categoriesSentence(found)).toMatch(/^Choose all numbers to count categories/);
    expect(csvParse(gaugeCsv(OPEN, 1, found, "screen")).map(({ source, numbers }) => `${source} ${numbers}`)).toEqual([
      "gauge 1",
      "equipment 1",
      "appraiser 1",
      "total 1",
    ]);
  });

  test("is shown with a sentence, its sources, and where each one stops", () => {
    const view = gaugeView(contents(people, asAttempts), OPEN, null, NAMES);
    expect(view.sentence).toMatch(
      /^The stops of one person vary by 0\.20 graduations .* differ from each other by 0\.23 .* Compare where each person stops/,
    );
    expect(view.sources?.rows.map((cells) => cells[4])).toEqual(["28 %", "18 %", "21 %", "0 %", "96 %", "100 %"]);
    expect(view.means?.rows.map(([name]) => name)).toEqual(["A", "B", "C"]);
    expect(view.lacks).toEqual([]);
    expect(view.gauge && categoriesSentence(view.gauge)).toMatch(/^Distinct categories: 4, /);
  });

  test("says plainly who is left out and why, and that the stops are not balanced", () => {
    const late = aPerson("D");
    const single = anAttempt("d", {
      personId: "D",
      combination: asAttempts[0]?.combination ?? [],
      stops: stopsOf(0.1),
    });
    const more = { ...(asAttempts[0] ?? single), id: "more", startedAt: NOON + 9 };
    const all = contents([...people, late], [...asAttempts, more, single]);
    expect(gaugeView(all, OPEN, null, NAMES).lacks).toEqual([
      "People have different numbers of stops, up to 4 at a number. Only the latest 3 of each count, as many as the person with the fewest has.",
      "D is left out: no stop at number 2; two are needed.",
    ]);
    expect(gaugeView(all, OPEN, 1, NAMES).lacks[1]).toBe("D is left out: 1 stop at number 1; two are needed.");
    expect(gaugeParticipants([...people, late], all.records.attempts).trials).toBe(3);
  });

  test("of too few says what is missing, and has no table", () => {
    const alone = contents(people.slice(0, 1), asAttempts);
    const view = gaugeView(alone, OPEN, null, NAMES);
    expect(view.sentence).toBe("No study yet. It needs two people with two stops each at every number.");
    expect([view.gauge, view.sources, view.means]).toEqual([null, null, null]);
  });
});
