import { describe, expect, test } from "vitest";
import { shippedProfile } from "../../../src/lock/shippedProfiles";
import { demoLogbook } from "../../../src/progress/demo/demoLogbook";
import { DEMO_PEOPLE } from "../../../src/progress/demo/demoPeople";
import { stopTable } from "../../../src/progress/stops/stopTable";
import { attemptOutcome } from "../../../src/records/attemptOutcome";
import { recordedAttempt } from "../../../src/records/csv/attemptsReplay";
import { readLogbookFile, writeLogbookFile } from "../../../src/records/file/logbookFile";
import { detailsOf } from "../../../src/records/job/jobDetails";
import { JOB_KINDS } from "../../../src/records/jobRecord";
import { jobIsRight } from "../../../src/records/jobRight";
import { decodeTrace } from "../../../src/records/motion/traceCodec";
import { drawVisit } from "../../../src/service/drawVisit";
import { replay } from "../../../src/trace/replay";
import { NOON } from "../../support/logbookRecords";

const demo = demoLogbook(1, NOON);
const { people, attempts, jobs } = demo.records;
const of = (name: string) =>
  attempts.filter(({ personId }) => personId === people.find((one) => one.name === name)?.id);

describe("the demo logbook", () => {
  test("is a whole logbook by its own schema, and every person is marked", () => {
    expect(readLogbookFile(writeLogbookFile(demo, NOON))).toEqual({ ...demo, remarks: [] });
    expect(people.every(({ isDemo }) => isDemo === true)).toBe(true);
  });

  test("is the same for the same seed, and another for another", { timeout: 60_000 }, () => {
    expect(demoLogbook(1, NOON)).toEqual(demo);
    expect(demoLogbook(2, NOON).records.people[0]?.id).not.toBe(people[0]?.id);
  });

  test("lies in the week before it is loaded", () => {
    for (const { startedAt } of [...attempts, ...jobs]) {
      expect(startedAt).toBeLessThan(NOON);
      expect(startedAt).toBeGreaterThan(NOON - 8 * 86_400_000);
    }
  });

  test.each(DEMO_PEOPLE.flatMap(({ name, hand }) => (hand === null ? [] : [{ name, hand }])))(
    "shows $name as the scenario does",
    ({ name, hand }) => {
      const table = stopTable(of(name));
      const count = table.all?.count ?? 0;
      // Four standard errors.
      expect(Math.abs((table.all?.bias ?? 99) - hand.bias)).toBeLessThan((4 * hand.spread) / Math.sqrt(count));
      expect(Math.abs((table.all?.spread ?? 99) / hand.spread - 1)).toBeLessThan(4 / Math.sqrt(2 * count));
    },
  );

  test("has every trainee do each kind of job, and Ondrell alone show it", () => {
    for (const { id, name, part } of people) {
      const kinds = new Set(jobs.filter(({ personId }) => personId === id).map(({ kind }) => kind));
      expect([name, kinds.size]).toEqual([name, part === "trainee" ? JOB_KINDS.length : 0]);
    }
    const shown = demo.records.declarations.filter(({ exercise }) => exercise !== "open");
    const ondrell = people.find(({ name }) => name === "Ondrell");
    expect(new Set(shown.map(({ personId }) => personId))).toEqual(new Set([ondrell?.id]));
    expect(shown.map(({ exercise }) => exercise).sort()).toEqual([...JOB_KINDS].sort());
    // A size has a mark of its own: a condition named right is right.
    expect(jobs.every(({ isRight, missed }) => isRight === missed.every((code) => code === "size"))).toBe(true);
  });

  test.each(["fitting", "inspection", "service"] as const)(
    "tells what came of each %s, some of them not right",
    (kind) => {
      const own = jobs.filter((job) => job.kind === kind);
      expect(own.filter((job) => detailsOf(job) === null)).toEqual([]);
      expect(own.map((job) => ({ ...job, missed: [] })).map(jobIsRight)).toEqual(own.map(({ isRight }) => isRight));
      expect(new Set(own.map(({ isRight }) => isRight))).toEqual(new Set([true, false]));
    },
  );

  test("has each visit be the one of its seed", () => {
    const visits = jobs.flatMap((job) => {
      const found = detailsOf(job);
      return found?.kind === "service" ? [found.details] : [];
    });
    expect(visits.length).toBeGreaterThan(12);
    expect(new Set(visits.flatMap(({ conditions }) => conditions)).size).toBeGreaterThan(3);
    for (const { seed, conditions } of visits) {
      expect(drawVisit(shippedProfile("three-wheel"), seed ?? -1).conditions).toEqual(conditions);
    }
  });

  test("names what a fit had, and what was overlooked or not so", () => {
    const missed = (name: string, kind: string) =>
      jobs.filter((job) => job.kind === kind && job.personId === people.find((one) => one.name === name)?.id);
    const codes = (name: string, kind: string) => missed(name, kind).map((job) => job.missed.join());
    expect(codes("Tavro", "fitting")).toEqual(["ring-off-center", ""]);
    expect(codes("Tavro", "inspection")).toEqual(["", "unfounded-gap-wide", ""]);
    expect(codes("Dorvik", "inspection")).toEqual(["not-checked"]);
    expect(codes("Jorrel", "inspection")).toEqual(["overlooked-ring-off-center"]);
    expect(codes("Jorrel", "service")).toEqual(["door-not-held", "not-asked"]);
  });

  test("has Ondrell open nearly always, and Jorrel often not", () => {
    const share = (name: string) => of(name).filter(({ opened }) => opened).length / of(name).length;
    expect(share("Ondrell")).toBeGreaterThan(0.95);
    expect(share("Jorrel")).toBeLessThan(0.8);
    expect(of("Mibsy").some(({ faults }) => faults.some(({ code }) => code === "too-many-turns"))).toBe(true);
    expect(of("Kessinda")).toEqual([]);
  });

  test("replays every attempt to what its record says", { timeout: 60_000 }, () => {
    for (const attempt of attempts) {
      const trace = demo.traces.get(attempt.id);
      if (trace === undefined) throw new Error(`no trace of ${attempt.id}`);
      const { opened, faults, stops } = attemptOutcome(replay(recordedAttempt(attempt, decodeTrace(trace))));
      expect({ opened, faults, stops }).toEqual({
        opened: attempt.opened,
        faults: attempt.faults,
        stops: attempt.stops,
      });
    }
  });
});
