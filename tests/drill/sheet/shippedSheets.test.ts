import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { type BrokenRule, explain } from "../../../src/drill/combinations/combinationRules";
import { admitsSource } from "../../../src/drill/marking/isAdmitted";
import { lostSightRule } from "../../../src/drill/marking/lostSight";
import { markingScheme } from "../../../src/drill/marking/markingScheme";
import { markSitting } from "../../../src/drill/marking/markSitting";
import type { TryResult } from "../../../src/drill/marking/tryResult";
import { SHIPPED_QUESTIONS } from "../../../src/drill/questions/shippedQuestions";
import { markDoubts } from "../../../src/drill/sheet/markDoubts";
import { parseSheet, sheetDoubts } from "../../../src/drill/sheet/parseSheet";
import { type PlannedTry, planTries } from "../../../src/drill/sheet/planTries";
import type { Sheet } from "../../../src/drill/sheet/sheet";
import { SHIPPED_SHEETS } from "../../../src/drill/sheet/shippedSheets";
import { stationProfile } from "../../../src/drill/sheet/stationProfile";
import { drawQuestions } from "../../../src/drill/sitting/drawQuestions";
import { seededChance } from "../../../src/statistics/chance";

const FOLDER = new URL("../../../shared/sheets/", import.meta.url);
const FILES = readdirSync(FOLDER)
  .filter((name) => name.endsWith(".json"))
  .sort();
const SHEETS = FILES.map(
  (file) => [file, parseSheet(JSON.parse(readFileSync(new URL(file, FOLDER), "utf8")))] as const,
);

test("there are at least eight, and all files are shipped in their order", () => {
  expect(FILES.length).toBeGreaterThanOrEqual(8);
  expect(SHIPPED_SHEETS).toEqual(SHEETS.map(([, sheet]) => sheet));
  expect(new Set(SHIPPED_SHEETS.map(({ title }) => title)).size).toBe(FILES.length);
});

test("one says what may turn its dials, and what comes of a device that loses the hand", () => {
  const ruled = SHIPPED_SHEETS.filter(({ stations }) =>
    stations.every((one) => "turnedBy" in one && "lostSight" in one && lostSightRule(one) === "try-again"),
  );
  expect(ruled.map(({ title }) => title)).toEqual(["Friday sitting"]);
  const stations = ruled.flatMap((sheet) => sheet.stations);
  for (const station of stations) {
    expect(admitsSource({ kind: "screen", isCoarse: false }, station)).toBe(true);
    expect(admitsSource({ kind: "printed-dial", isCoarse: false }, station)).toBe(true);
    expect(admitsSource({ kind: "midi", isCoarse: true }, station)).toBe(false);
  }
});

/** Rules that a planned combination breaks: those of its station, or of its lock. */
function brokenBy({ stations }: Sheet, { station: index, combination }: PlannedTry): BrokenRule[] {
  const station = stations[index];
  if (station === undefined || !("combinations" in station) || combination === null) return [];
  const { combinationRules, graduations } = stationProfile(station);
  const policy = station.combinations;
  const rules = (policy.policy === "drawn" ? policy.rules : undefined) ?? combinationRules;
  return explain(combination, rules, graduations);
}

/** A try that opened, or did not and had a fault. */
const dialed = (station: number, repetition: number, opened: boolean): TryResult => ({
  kind: "dialing",
  station,
  repetition,
  combination: [1, 2, 3],
  opened,
  stopErrors: [0, 0, 0],
  faults: opened ? [] : [{ code: "ran-past", number: 2, size: 3 }],
  time_ms: 1000,
  isBrokenOff: false,
});

describe.each(SHEETS)("%s", (_, sheet) => {
  test("gives no cause for doubt", () => {
    expect(sheetDoubts(sheet)).toEqual([]);
  });

  test("asks for no mark that cannot be reached, or that another contradicts", () => {
    expect(markDoubts(sheet)).toEqual([]);
  });

  test("whoever just reaches the marks that are counted passes all that follow from the same count", () => {
    for (const [index, station] of sheet.stations.entries()) {
      if (station.kind !== "dialing" || station.passMarks.firstTime === undefined) continue;
      const made = Array.from({ length: station.repetitions }, (_, k) =>
        dialed(index, k + 1, k < (station.passMarks.firstTime ?? 0)),
      );
      const { marks } = markSitting(markingScheme(sheet), sheet, { tries: made, answers: [], ended: "time" });
      const counted = marks.filter(
        ({ criterion: { kind, station: place } }) =>
          place === index && ["first-time", "claim", "faulty-tries"].includes(kind),
      );
      expect(counted.map(({ criterion, verdict }) => `${criterion.kind}: ${verdict}`)).toEqual(
        counted.map(({ criterion }) => `${criterion.kind}: pass`),
      );
    }
  });

  test("plans only combinations that its rules allow", () => {
    const broken = [1, 2, 3, 4, 5].flatMap((seed) =>
      planTries(sheet, seededChance(seed)).flatMap((one) => brokenBy(sheet, one)),
    );
    expect(broken).toEqual([]);
  });

  test("says where it is from, and asks no more questions than there are", () => {
    expect(sheet.source).toMatch(/Invented/);
    const topics = sheet.sitting?.questions?.topics ?? [];
    const asked = topics.reduce((sum, { count }) => sum + count, 0);
    expect(drawQuestions(SHIPPED_QUESTIONS, topics, seededChance(1))).toHaveLength(asked);
  });
});
