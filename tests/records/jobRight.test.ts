import { describe, expect, test } from "vitest";
import { isRight, type TryResult } from "../../src/drill/marking/tryResult";
import type { Station } from "../../src/drill/sheet/sheet";
import { readLogbookFile, writeLogbookFile } from "../../src/records/file/logbookFile";
import type { JobRecord } from "../../src/records/jobRecord";
import { jobIsRight } from "../../src/records/jobRight";
import { aJob, aPerson, contents, NOON } from "../support/logbookRecords";
import {
  changeStation,
  fittingStation,
  handoverStation,
  inspectionStation,
  troubleStation,
} from "../support/testSheet";
import { changeTry, fittingTry, handoverTry, inspectionTry, troubleTry } from "../support/testTries";

type Facts = Pick<JobRecord, "kind" | "missed" | "details">;

const FAULT = { code: "number-set-off", number: 2, size: 0.6 };

/** One job as a sitting has it and as the logbook has it, and what the plain rule says of it. */
const JOBS: readonly { why: string; station: Station; one: TryResult; kept: Facts; right: boolean }[] = [
  {
    why: "a change as written, proved, after a fault",
    station: changeStation(),
    one: changeTry({ faults: [FAULT] }),
    kept: { kind: "change", missed: ["number-set-off"], details: { outcome: "true", proofs: 3, faults: [FAULT] } },
    right: true,
  },
  {
    why: "a change proved twice",
    station: changeStation(),
    one: changeTry({ proofs: 2 }),
    kept: { kind: "change", missed: ["not-proved"], details: { outcome: "true", proofs: 2, faults: [] } },
    right: false,
  },
  {
    why: "a change to other numbers",
    station: changeStation(),
    one: changeTry({ outcome: "off" }),
    kept: { kind: "change", missed: [], details: { outcome: "off", proofs: 3, faults: [] } },
    right: false,
  },
  {
    why: "a condition named right, its size wrong",
    station: troubleStation(),
    one: troubleTry({ isNamedRight: true, sizeError: 3 }),
    kept: { kind: "trouble", missed: ["size"], details: { isKindRight: true, isSizeWithin: false, points: 1 } },
    right: true,
  },
  {
    why: "a guess",
    station: troubleStation(),
    one: troubleTry({ isNamedRight: false, sizeError: null }),
    kept: { kind: "trouble", missed: ["not-looked"], details: { isKindRight: true, isSizeWithin: true, points: 0 } },
    right: false,
  },
  {
    why: "another condition",
    station: troubleStation(),
    one: troubleTry({ isNamedRight: false, sizeError: null }),
    kept: { kind: "trouble", missed: ["not-named"], details: { isKindRight: false, isSizeWithin: false, points: 0 } },
    right: false,
  },
  {
    why: "a handover without a fault",
    station: handoverStation(),
    one: handoverTry(),
    kept: { kind: "handover", missed: [], details: { isHandedOver: true, missing: [], faults: [] } },
    right: true,
  },
  {
    why: "a handover with a fault",
    station: handoverStation(),
    one: handoverTry({ faults: [{ code: "shut-in" }] }),
    kept: {
      kind: "handover",
      missed: ["shut-in"],
      details: { isHandedOver: true, missing: [], faults: [{ code: "shut-in" }] },
    },
    right: false,
  },
  {
    why: "a fit with nothing wrong",
    station: fittingStation(),
    one: fittingTry(),
    kept: { kind: "fitting", missed: [], details: { declared: "coupled", faults: [] } },
    right: true,
  },
  {
    why: "a fit judged right",
    station: inspectionStation(),
    one: inspectionTry(),
    kept: { kind: "inspection", missed: [], details: { faults: ["rubs"], named: ["rubs"], skipped: ["bolt"] } },
    right: true,
  },
  {
    why: "a fault that was guessed",
    station: inspectionStation(),
    one: inspectionTry({ skipped: ["turn-round", "push-pull"] }),
    kept: {
      kind: "inspection",
      missed: [],
      details: { faults: ["rubs"], named: ["rubs"], skipped: ["turn-round", "push-pull"] },
    },
    right: false,
  },
  {
    why: "spoiled parts",
    station: fittingStation(),
    one: fittingTry({ declared: "spent" }),
    kept: { kind: "fitting", missed: [], details: { declared: "spent", faults: [] } },
    right: false,
  },
];

describe("a job in the logbook and in a sitting", () => {
  test.each(JOBS)("$why: one answer in both, $right", ({ station, one, kept, right }) => {
    expect([isRight(one, station), jobIsRight(kept)]).toEqual([right, right]);
  });

  test.each(JOBS)("$why, but too late, is not right in either", ({ station, one, kept }) => {
    const late = { ...one, time_ms: 1001 };
    expect(isRight(late, { ...station, timeLimit_s: 1 })).toBe(false);
    expect(jobIsRight({ ...kept, missed: [...kept.missed, "too-late"] })).toBe(false);
  });
});

test.each([
  ["change", [], true],
  ["change", ["number-set-off"], false],
  ["trouble", ["size"], true],
  ["trouble", ["size", "not-looked"], false],
  ["handover", ["record"], false],
  ["fitting", [], true],
  ["fitting", ["rubs"], false],
  ["service", [], true],
  ["service", ["not-looked"], false],
] as const)("without its facts a %s with %j missed is right: %s", (kind, missed, right) => {
  expect(jobIsRight({ kind, missed: [...missed] })).toBe(right);
  expect(jobIsRight({ kind, missed: [...missed], details: { steps: "unreadable" } })).toBe(right);
});

test("in a file a job is judged by its facts, not by what it says of itself", () => {
  const details = { outcome: "true", proofs: 3 };
  const whole = contents([aPerson("tavro")]);
  const jobs = [
    aJob("mended", { isRight: false, missed: ["number-set-off"], details }),
    aJob("boast", { isRight: true, details: { ...details, proofs: 0 } }),
  ];
  const read = readLogbookFile(writeLogbookFile({ ...whole, records: { ...whole.records, jobs } }, NOON));
  expect(read.records.jobs.map(({ id, isRight: is }) => [id, is])).toEqual([
    ["mended", true],
    ["boast", false],
  ]);
});
