import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type FigureModel, isTold } from "../../../src/app/pictures/charts/figureModel";
import { bestsFigure } from "../../../src/app/results/figures/bestsFigure";
import { chanceFigure } from "../../../src/app/results/figures/chanceFigure";
import { characteristicFigure } from "../../../src/app/results/figures/characteristicFigure";
import { controlFigure, MEASURES } from "../../../src/app/results/figures/controlFigure";
import { heatFigure } from "../../../src/app/results/figures/heatFigure";
import { jobFigures } from "../../../src/app/results/figures/jobFigures";
import { learningFigure } from "../../../src/app/results/figures/learningFigure";
import { measureFigures, progressFigures } from "../../../src/app/results/figures/progressFigures";
import { stopErrorsFigure } from "../../../src/app/results/figures/stopErrorsFigure";
import { shippedProfile } from "../../../src/lock/shippedProfiles";
import { mastery } from "../../../src/progress/mastery";
import { practiceOfJob } from "../../../src/progress/practice";
import type { AttemptRecord } from "../../../src/records/attemptRecord";
import { MASTERY_RULE } from "../../../src/records/masteryRule";
import { aJob, anAttempt, NOON, stopsOf } from "../../support/logbookRecords";

const profile = shippedProfile("three-wheel");
const skill = { profileId: "three-wheel", exercise: "open" };

const figuresOf = (attempts: readonly AttemptRecord[]): FigureModel[] => [
  ...progressFigures({ skill, profile, attempts, mastery: mastery(skill, attempts) }),
  ...MEASURES.flatMap((measure) => measureFigures(attempts, measure)),
  bestsFigure(attempts),
];

const error = fc.double({ min: -40, max: 40, noNaN: true });
const anyAttempts = fc.array(
  fc.record({
    opened: fc.boolean(),
    duration_ms: fc.integer({ min: 0, max: 90_000 }),
    help: fc.constantFrom("full" as const, "counts" as const, "silent" as const),
    stops: fc.array(error, { maxLength: 3 }).map((errors) => stopsOf(...errors)),
  }),
  { maxLength: 40 },
);

/** Every number that a chart is drawn from. */
function numbersOf(value: unknown): number[] {
  if (typeof value === "number") return [value];
  if (typeof value !== "object" || value === null) return [];
  return Object.values(value).flatMap(numbersOf);
}

describe("every view", () => {
  test("has a sentence, finite numbers and full rows, whatever was dialed", () => {
    fc.assert(
      fc.property(anyAttempts, (list) => {
        const attempts = list.map((one, i) => anAttempt(`a${i}`, { ...one, startedAt: NOON + i }));
        for (const { title, sentence, chart, table } of figuresOf(attempts)) {
          expect(sentence, title).toMatch(/\.$/);
          expect(sentence, title).not.toMatch(/NaN|undefined|Infinity/);
          expect(
            numbersOf(chart).filter((one) => !Number.isFinite(one)),
            title,
          ).toEqual([]);
          for (const row of table?.rows ?? []) {
            expect(row, title).toHaveLength(table?.head.length ?? 0);
            expect(row.join(" "), title).not.toMatch(/NaN|undefined|Infinity/);
          }
        }
      }),
      { numRuns: 300 },
    );
  });
});

describe("stop errors", () => {
  test("are told as a tendency only where the interval leaves out zero", () => {
    const past = Array.from({ length: 12 }, (_, i) => anAttempt(`a${i}`, { stops: stopsOf(0.5 + (i % 3) / 10) }));
    expect(stopErrorsFigure(past, 1).sentence).toMatch(
      /^\d+ stops: you run past by 0\.60 graduations on average\. Your stops vary by/,
    );
    const even = [anAttempt("a", { stops: stopsOf(-1, 1, -1, 1) })];
    expect(stopErrorsFigure(even, 1).sentence).toMatch(/^4 stops: you lean to neither side so far\./);
  });

  test("leave out a lost count, and say so", () => {
    const attempts = [anAttempt("a", { stops: stopsOf(0.1, -0.1, 30) })];
    expect(stopErrorsFigure(attempts, 1).sentence).toMatch(
      / 1 stop more than 5 graduations off is a lost count and is left out\.$/,
    );
  });
});

test("the chance on another lock grows with its tolerance, and is asked of enough stops", () => {
  expect(chanceFigure([anAttempt("a")], 1).chart).toBeNull();
  const attempts = Array.from({ length: 12 }, (_, i) =>
    anAttempt(`a${i}`, { stops: stopsOf((i - 6) / 5, (i - 5) / 6) }),
  );
  const { chart } = chanceFigure(attempts, 1);
  const heights = chart?.kind === "run" ? (chart.lines[0]?.points.map(({ y }) => y) ?? []) : [];
  expect(heights.length).toBeGreaterThan(10);
  expect(heights).toEqual(heights.toSorted((a, b) => a - b));
});

test("the control chart marks what lies beyond the limits of the first attempts", () => {
  const attempts = Array.from({ length: 14 }, (_, i) =>
    anAttempt(`a${i}`, { duration_ms: 30_000 + 1000 * (i % 2) + (i === 12 ? 40_000 : 0) }),
  );
  const { sentence, table } = controlFigure(attempts, "time");
  expect(sentence).toMatch(/^Usual for you \(first 10 attempts\): 30\.5 s\. 1 attempt stands out\./);
  expect(table?.rows[12]).toEqual(["13", "70.0", expect.any(String), "yes"]);
});

test("a size has no lower limit below zero, a mean stop error has both limits", () => {
  const attempts = [0.5, 3, 0.25, 2].map((error, i) => anAttempt(`a${i}`, { stops: stopsOf(error) }));
  const lows = (measure: "worst-stop" | "bias") => {
    const { chart, table } = controlFigure(attempts, measure);
    const limits = chart?.kind === "run" ? chart.lines.filter(({ label }) => label === "limit") : [];
    return { caption: table?.caption, below: limits.filter(({ points }) => (points[0]?.y ?? 0) < 0).length };
  };
  expect(lows("worst-stop")).toEqual({
    caption: expect.stringMatching(/^worst stop of an attempt, graduations; limit \d+\.\d\d$/),
    below: 0,
  });
  expect(lows("bias")).toEqual({ caption: expect.stringMatching(/; limits −\d+\.\d\d to \+\d+\.\d\d$/), below: 1 });
});

test("the learning curve tells where it leads, or why there is none", () => {
  const falling = Array.from({ length: 40 }, (_, i) =>
    anAttempt(`a${i}`, { duration_ms: 30_000 + 40_000 * Math.exp(-i / 6) + 400 * ((i * 7) % 5) }),
  );
  expect(learningFigure(falling, "time").sentence).toMatch(/^At this rate you level off at about 30\.\d s/);
  expect(learningFigure(falling.slice(0, 3), "time").sentence).toBe("Needs 2 more attempts for a curve.");
});

test("what cannot be told yet says what it needs", () => {
  const one = [anAttempt("a", { stops: stopsOf(0.5, -0.25, 9) })];
  const figures = [
    ...progressFigures({ skill, profile, attempts: one, mastery: mastery(skill, one) }),
    ...measureFigures(one, "worst-stop"),
  ];
  expect(figures.filter((figure) => !isTold(figure)).map(({ title, sentence }) => `${title}: ${sentence}`)).toEqual([
    "Chance on another lock: Needs 5 stops at each number; the number with fewest has 1.",
    "Speed and accuracy: Needs two timed stops at one number, not both on one spot.",
    "Own estimates: Needs 2 more estimates. On the bench, under More, choose to estimate before the result is shown.",
    "What is usual for you: Needs 1 more attempt.",
    "Learning curve: Needs 4 more attempts for a curve.",
  ]);
});

test("without a point the control chart needs two more attempts", () => {
  expect(controlFigure([], "time").sentence).toBe("Needs 2 more attempts.");
});

test("the rule of readiness is shown with what it does to people of a known rate of misses", () => {
  const { sentence, table } = characteristicFigure();
  expect(sentence).toMatch(
    /^In 100 attempts this rule calls ready (more than 99|\d+) of 100 people who miss 1 in 10 \(half of them by attempt 18\), and by mistake also 41 of 100 who miss 3 in 10\./,
  );
  expect(table?.rows).toHaveLength(5);
  const own = characteristicFigure({ ...MASTERY_RULE, inadequateFailureRate: 0.25 });
  expect(own.table?.rows.map(([rate]) => rate)).toContain("25 %");
});

test("jobs are told in words of jobs, with what was missed most", () => {
  const jobs = [["size"], [], ["size", "not-looked"]].map((missed, k) =>
    aJob(`j${k}`, { kind: "trouble", startedAt: NOON + k, missed, isRight: missed.length === 0 }),
  );
  const trouble = { profileId: "three-wheel", exercise: "trouble" };
  const progress = { skill: trouble, jobs, mastery: mastery(trouble, jobs.map(practiceOfJob)) };
  const [right, missed, shown] = jobFigures(progress);
  expect(right).toMatchObject({
    title: "Jobs done right",
    sentence: expect.stringMatching(
      /^You get 1 of 3 right\. With 3 jobs, your true rate lies between \d+ % and \d+ %\. A diagnosis is right when you measured the defect/,
    ),
  });
  expect(missed).toMatchObject({
    sentence: "Most often: size outside its tolerance, in 2 of 3 jobs.",
    table: {
      rows: [
        ["size outside its tolerance", "2"],
        ["a guess: not measured", "1"],
      ],
    },
  });
  expect(shown?.table?.head).toEqual(["job", "score", "ready"]);
  for (const figure of [right, shown]) expect(JSON.stringify(figure)).not.toMatch(/attempt|opening/);
  expect(jobFigures({ ...progress, jobs: jobs.slice(1, 2) })[1]).toMatchObject({ sentence: "Nothing was missed." });
});

describe("round the dial", () => {
  test("no stretch is called the worst where all are alike", () => {
    const attempts = [anAttempt("a", { stops: stopsOf(0.2, -0.2, 0.2) })];
    expect(heatFigure(attempts, 100).sentence).toBe("Your stops are equally far off everywhere: 0.20 graduations.");
    expect(heatFigure([anAttempt("a", { stops: stopsOf(0.2, 1, 0.2) })], 100).sentence).toMatch(
      /^Your stops are farthest off between/,
    );
  });
});

test("a best names the conditions of its setting, and shows words that are not known here as they are", () => {
  const conditions = ["index offset -0.4", "heavy dial", "runout 0.3 40", "catching 2 50 10"];
  const settingOf = (one: Partial<AttemptRecord>) => bestsFigure([anAttempt("a", one)]).table?.rows[0]?.[0];
  expect(settingOf({ conditions })).toBe(
    "silent, caught by 2 at 50 over 10, heavy dial, index offset -0.4, runout 0.3 from 40",
  );
  expect(settingOf({ conditions: ["rain"] })).toBe("silent, rain");
  expect(settingOf({ conditions: [] })).toBe("silent");
});
