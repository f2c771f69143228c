import { describe, expect, test } from "vitest";
import { VisitNotes } from "../../../../src/app/exercises/service/visitNotes";
import { VisitSession } from "../../../../src/app/exercises/service/visitSession";
import { jobWrite } from "../../../../src/app/keeping/jobWrite";
import { againAddress } from "../../../../src/app/results/jobAddress";
import { jobRowOf } from "../../../../src/app/results/jobRows";
import { jobStory } from "../../../../src/app/results/jobSentences";
import { missedWord } from "../../../../src/app/results/jobWords";
import { detailsOf } from "../../../../src/records/job/jobDetails";
import type { JobNote } from "../../../../src/records/job/jobNote";
import { FAULTS_ABOUT, PLAIN_FAULTS } from "../../../../src/service/visitFaultCode";
import { seededChance } from "../../../../src/statistics/chance";
import { checkWrite } from "../../../../src/store/logbookWrite";
import { NOON } from "../../../support/logbookRecords";
import { serve, visitOf } from "../../../support/technician";

const SECOND = 1000;
const SEED = 12;

/** A visit that is watched; each change of it takes a second. */
function watched() {
  const session = new VisitSession({ lock: "three-wheel", seed: SEED, help: "counts" }, seededChance(3));
  let ids = 0;
  const notes = new VisitNotes(session, () => `id${ids++}`);
  const kept: JobNote[] = [];
  let now = NOON;
  session.subscribe(() => {
    now += SECOND;
    const note = notes.look(now);
    if (note === null) return;
    checkWrite(jobWrite("tavro", note));
    kept.push(note);
  });
  return { session, kept };
}

/** Works as a technician does who reads everything. */
function workWell(session: VisitSession): number {
  const plan = visitOf(SEED);
  serve(plan);
  for (const { act } of plan.done) session.act(act);
  return plan.done.length;
}

const told = (note: JobNote | undefined) => {
  if (note === undefined) throw new Error("nothing is kept");
  const job = { ...note, personId: "tavro" };
  return { details: detailsOf(job)?.details, row: jobRowOf(job), story: jobStory(job), again: againAddress(job) };
};

describe("a service visit", () => {
  test("is kept as right when the site is left with nothing wrong, and leads to the same visit again", () => {
    const { session, kept } = watched();
    const acts = workWell(session);
    expect(kept).toEqual([]);
    session.leave();
    session.leave();
    expect(kept).toMatchObject([
      { id: "id0", kind: "service", profileId: "three-wheel", help: "counts", isRight: true, missed: [] },
    ]);
    expect(kept).toMatchObject([{ startedAt: NOON + SECOND, duration_ms: acts * SECOND }]);
    const { details, row, story, again } = told(kept[0]);
    const { conditions } = session.visit.task;
    expect(details).toEqual({ seed: SEED, isLeft: true, conditions, found: conditions, faults: [], acts });
    expect(row).toMatchObject({
      ...{ job: "Service visit", lockAndHelp: "Three-wheel, counts" },
      ...{ result: "Right", missed: "nothing missed" },
    });
    expect(story.sentence).toBe(`Nothing is wrong with the visit. ${acts} acts.`);
    expect(again).toBe(`#/fitting?view=service&profile=three-wheel&help=counts&seed=${SEED}`);
  });

  test("with faults has each of them; the next lock is a visit of its own", () => {
    const { session, kept } = watched();
    session.act({ type: "door.opened" });
    session.act({ type: "cover.taken" });
    session.leave();
    const [note] = kept;
    expect(note).toMatchObject({ isRight: false, duration_ms: 2 * SECOND });
    expect(note?.missed).toContain("door-not-held");
    const { details, row, story } = told(note);
    expect(details).toMatchObject({ faults: expect.arrayContaining([{ code: "look-left-out", about: "way-out" }]) });
    expect(row).toMatchObject({ result: "Not right" });
    expect(story.points.join(" ")).toMatch(/You worked at a door that was not held\. It can fall shut/);
    session.again();
    expect(session.log).toEqual([]);
    session.leave();
    expect(kept).toMatchObject([{ id: "id0" }, { id: "id1", duration_ms: 0 }]);
  });

  test("of another program, with a fault that cannot be, is told by its codes", () => {
    const { session, kept } = watched();
    workWell(session);
    session.leave();
    const [note] = kept;
    if (note === undefined) throw new Error("nothing is kept");
    for (const faults of [[{ code: "look-left-out", about: "taste" }], [{ code: "paint-wet", about: null }]]) {
      const foreign = { ...note, missed: ["paint-wet"], details: { ...Object(note.details), faults } };
      expect(told(foreign)).toMatchObject({ details: undefined, row: { missed: "paint wet" } });
    }
  });
});

test("every fault of a visit has words of its own in the logbook", () => {
  const codes = [...PLAIN_FAULTS, ...Object.keys(FAULTS_ABOUT)];
  const plain = codes.filter((code) => missedWord(code) === code.replaceAll("-", " "));
  expect(plain).toEqual([
    ...["last-record-not-read", "door-not-held", "torque-not-as-written"],
    ...["cover-left-off", "door-left-open", "record-not-true"],
  ]);
  expect(new Set(codes.map(missedWord)).size).toBe(codes.length);
});
