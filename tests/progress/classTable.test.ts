import { csvParse } from "d3-dsv";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import aiag from "../../shared/published/aiag-gauge.json" with { type: "json" };
import { classTable } from "../../src/progress/classTable";
import { classCsv } from "../../src/progress/csv/classCsv";
import { demoLogbook } from "../../src/progress/demo/demoLogbook";
import { dialingGauge } from "../../src/progress/stops/dialingGauge";
import type { AttemptRecord } from "../../src/records/attemptRecord";
import { contentsOf } from "../../src/records/logbookContents";
import { aJob, anAttempt, aPerson, attempts, contents, NOON, stopsOf, theirPeople } from "../support/logbookRecords";

const demo = demoLogbook(1, NOON);
/** One file a person, as a class hands them in. */
const files = demo.records.people.map(({ id }) => contentsOf(new Set([id]), demo));

describe("the class table", () => {
  test("is the same from one file, from one a person, in any order, and with a file twice", () => {
    const whole = classTable([demo]);
    fc.assert(
      fc.property(fc.shuffledSubarray(files, { minLength: files.length }), fc.nat(files.length - 1), (order, twice) => {
        expect(classTable([...order, ...files.slice(twice, twice + 1)])).toEqual(whole);
      }),
      { numRuns: 5 },
    );
  });

  test("has every trainee once, by name, and each attempt in one cell", () => {
    const { rows, skills } = classTable([demo]);
    expect(rows.map(({ person }) => person.name)).toEqual(["Dorvik", "Jorrel", "Mibsy", "Ondrell", "Pelline", "Tavro"]);
    expect(skills.map(({ profileId, exercise }) => `${profileId} ${exercise}`)).toEqual([
      "dial-encoder open",
      "three-wheel change",
      "three-wheel fitting",
      "three-wheel handover",
      "three-wheel inspection",
      "three-wheel open",
      "three-wheel service",
      "three-wheel trouble",
    ]);
    const counted = rows.flatMap(({ cells }) => cells).reduce((sum, cell) => sum + (cell?.attempts ?? 0), 0);
    expect(counted).toBe(demo.records.attempts.length + demo.records.jobs.length);
  });

  test("finds who is ready: Ondrell is, Jorrel is not", () => {
    const ready = classTable([demo])
      .rows.filter(({ isReady }) => isReady)
      .map(({ person }) => person.name);
    expect(ready).toContain("Ondrell");
    expect(ready).not.toContain("Jorrel");
  });

  test("calls nobody ready who has not practiced every skill asked for", () => {
    const shown = Array.from({ length: 12 }, (_, i) => anAttempt(`a${i}`, { startedAt: NOON + i }));
    const logbook = contents([aPerson("tavro")], shown);
    const open = { profileId: "three-wheel", exercise: "open" };
    expect(classTable([logbook], [open]).rows[0]?.isReady).toBe(true);
    expect(classTable([logbook], [open, { ...open, profileId: "four-wheel" }]).rows[0]).toMatchObject({
      isReady: false,
    });
    expect(classTable([logbook], []).rows[0]?.isReady).toBe(false);
  });

  test("counts a job as right or not, the latest one last, beside the attempts of the same person", () => {
    const logbook = contents([aPerson("tavro")], [anAttempt("a", { startedAt: NOON + 5 })]);
    const jobs = [
      aJob("late", { kind: "handover", isRight: false, startedAt: NOON + 9 }),
      aJob("early", { kind: "handover", startedAt: NOON }),
    ];
    const table = classTable([{ ...logbook, records: { ...logbook.records, jobs } }]);
    const [job, attempt] = ["handover", "open"].map((exercise) => {
      const at = table.skills.findIndex((skill) => skill.exercise === exercise);
      return table.rows[0]?.cells[at];
    });
    expect(job).toMatchObject({
      attempts: 2,
      latest: { id: "late", opened: false },
      openings: { opened: 1, trials: 2 },
      bests: [],
      stops: null,
    });
    expect(attempt).toMatchObject({ attempts: 1, latest: { id: "a" } });
    expect(attempt?.stops).not.toBeNull();
  });

  test("takes the latest attempt for the latest, whatever the order of records", () => {
    const latestOf = (some: readonly AttemptRecord[], personId: string, profileId: string) =>
      some
        .filter((one) => one.personId === personId && one.profileId === profileId)
        .reduce((latest, { startedAt }) => Math.max(latest, startedAt), 0);
    fc.assert(
      fc.property(attempts, (some) => {
        const { rows } = classTable([contents(theirPeople, some)]);
        for (const latest of rows.flatMap(({ cells }) => cells.flatMap((cell) => cell?.latest ?? []))) {
          expect(latest.startedAt).toBe(latestOf(some, latest.personId, latest.profileId));
        }
      }),
    );
  });

  test("goes out as CSV, a row for each person and skill", () => {
    const rows = csvParse(classCsv(classTable([demo])));
    expect(rows).toHaveLength(48);
    expect(rows.find(({ person, exercise }) => person === "Jorrel" && exercise === "change")).toMatchObject({
      attempts: "2",
      opened: "0",
      stop_bias: "",
      quickest_s: "",
      latest_opened: "0",
      ready: "0",
    });
    expect(rows.find(({ person, profile }) => person === "Ondrell" && profile === "dial-encoder")).toMatchObject({
      exercise: "open",
      attempts: "20",
      ready: "1",
      ready_in_all: "1",
    });
  });
});

describe("repeatability and reproducibility of dialing", () => {
  const { measurements } = aiag;
  const people = ["A", "B", "C"].map((id) => aPerson(id));

  /** The measurements of the manual as stops: each appraiser a person, each part a place, each trial an attempt. */
  const asAttempts = people.flatMap(({ id }, place) =>
    [0, 1, 2].map((trial) =>
      anAttempt(`${id}${trial}`, {
        personId: id,
        startedAt: NOON + trial,
        combination: measurements.map((_, k) => k),
        stops: stopsOf(...measurements.map((part) => part[place]?.[trial] ?? Number.NaN)),
      }),
    ),
  );

  test("is that of the AIAG manual for its measurements", () => {
    const found = dialingGauge(people, asAttempts);
    if ("lacking" in found) throw new Error(String(found.lacking));
    const { equipment, appraiser, gauge, part } = found.components;
    expect(equipment).toBeCloseTo(0.199933, 5);
    expect(appraiser).toBeCloseTo(0.226838, 5);
    expect(gauge).toBeCloseTo(0.302373, 5);
    expect(part).toBeCloseTo(1.042327, 5);
    expect(found).toMatchObject({ places: 10, trials: 3 });
  });

  test("tells one hand from another: the demo's people differ in bias, and each from itself", () => {
    const open = demo.records.attempts.filter(({ profileId }) => profileId === "three-wheel");
    const found = dialingGauge(demo.records.people, open);
    if ("lacking" in found) throw new Error(String(found.lacking));
    expect(found.people.map(({ name }) => name)).not.toContain("Kessinda");
    expect(found.components.equipment).toBeGreaterThan(0.4);
    expect(found.components.equipment).toBeLessThan(0.8);
    expect(found.components.appraiser).toBeGreaterThan(0.1);
  });

  test.each([
    ["nobody", [], []],
    ["one person", [aPerson("A")], asAttempts],
    ["one attempt each", people, asAttempts.filter(({ id }) => id.endsWith("1"))],
  ])("of %s lacks people", (_why, who, what) => {
    expect(dialingGauge(who, what)).toEqual({ lacking: null });
  });
});
