import { describe, expect, test } from "vitest";
import { FittingNotes } from "../../../../src/app/exercises/fitting/fittingNotes";
import { FittingSession } from "../../../../src/app/exercises/fitting/fittingSession";
import { jobWrite } from "../../../../src/app/keeping/jobWrite";
import { againAddress } from "../../../../src/app/results/jobAddress";
import { jobRowOf } from "../../../../src/app/results/jobRows";
import { jobStory } from "../../../../src/app/results/jobSentences";
import { checksOf, FIT_CHECKS } from "../../../../src/fitting/fitChecks";
import { shippedProfile } from "../../../../src/lock/shippedProfiles";
import { detailsOf } from "../../../../src/records/job/jobDetails";
import type { JobNote } from "../../../../src/records/job/jobNote";
import { seededChance } from "../../../../src/statistics/chance";
import { checkWrite } from "../../../../src/store/logbookWrite";
import { goodActs } from "../../../support/fitter";
import { NOON } from "../../../support/logbookRecords";

const profile = shippedProfile("three-wheel");
const SECOND = 1000;

/** A fitting that is watched; each change of it takes a second. */
function watched() {
  const session = new FittingSession(profile, seededChance(3));
  let ids = 0;
  const notes = new FittingNotes(session, () => `id${ids++}`);
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

/** Fits the dial as it should be, with the spare spindle, which is straight. */
function fitWell(session: FittingSession): number {
  const acts = [{ type: "spindle.replaced" } as const, ...goodActs(session.lock)];
  for (const act of acts) session.act(act);
  return acts.length;
}

const told = (note: JobNote | undefined) => {
  if (note === undefined) throw new Error("nothing is kept");
  const job = { ...note, personId: "tavro" };
  return { details: detailsOf(job)?.details, row: jobRowOf(job), story: jobStory(job), again: againAddress(job) };
};

describe("a fitting", () => {
  test("is kept as right where nothing is wrong with it, with the checks that were made", () => {
    const { session, kept } = watched();
    const moves = fitWell(session);
    for (const check of FIT_CHECKS) session.check(check);
    session.act({ type: "cover.taken" });
    for (const check of FIT_CHECKS) session.check(check);
    session.act({ type: "cover.put" });
    session.check("cover");
    expect(kept).toEqual([]);
    session.declare();
    expect(kept).toMatchObject([
      {
        kind: "fitting",
        profileId: "three-wheel",
        help: "counts",
        isRight: true,
        missed: [],
        startedAt: NOON + SECOND,
        duration_ms: (moves + 2 + 2 * FIT_CHECKS.length + 1) * SECOND,
      },
    ]);
    const { details, row, story, again } = told(kept[0]);
    expect(details).toEqual({ declared: "closed", faults: [], skipped: [], moves: moves + 2, spindlesUsed: 1 });
    expect(row).toMatchObject({
      job: "Fitting",
      lockAndHelp: "Three-wheel, counts",
      result: "Right",
      missed: "nothing missed",
    });
    expect(story.sentence).toBe(`Nothing is wrong with the fit. ${moves + 2} acts, 1 spindle used up.`);
    expect(story.points).toEqual(["You made every check."]);
    expect(again).toBe("#/fitting?profile=three-wheel&help=counts");
  });

  test("is kept once, as it was when its debrief was first shown; the next door is a fitting of its own", () => {
    const { session, kept } = watched();
    fitWell(session);
    session.act({ type: "cover.taken" });
    session.act({ type: "key.screwed", torque_Nm: 0.2 });
    session.check("feelers");
    session.act({ type: "cover.put" });
    session.declare();
    expect(kept).toMatchObject([{ isRight: false, missed: ["key-screw-loose"] }]);
    const { row, story } = told(kept[0]);
    expect(row).toMatchObject({ result: "Not right", missed: "the key's screw is loose" });
    expect(story.sentence).toMatch(/^1 fault in the fit\. /);
    expect(story.points[0]).toMatch(/^The key's screw is loose\. The key works itself a wider seat/);
    expect(story.points[1]).toMatch(/^Checks you did not make on this fit: depth gauge on the cam; turn it all round/);
    session.goOn();
    session.act({ type: "cover.taken" });
    session.act({ type: "key.screwed", torque_Nm: 0.6 });
    session.declare();
    expect(kept).toHaveLength(1);
    session.again();
    const moves = fitWell(session);
    session.declare();
    expect(kept).toMatchObject([{ id: "id0" }, { id: "id1", isRight: true, duration_ms: moves * SECOND }]);
  });

  test("without strike and cover is not right; what lies under the cover is not seen through it", () => {
    const { session, kept } = watched();
    const [strikeAndCover, rest] = [["strike.hung", "strike.tightened", "cover.put"], goodActs(session.lock)];
    session.act({ type: "spindle.replaced" });
    for (const act of rest) if (!strikeAndCover.includes(act.type)) session.act(act);
    session.check("bolt");
    session.check("cover");
    expect(session.log).toEqual([
      { kind: "cover", isOn: false },
      { kind: "bolt", drags: null, ahead: 0 },
    ]);
    session.act({ type: "cover.put" });
    session.check("key");
    const { checks, stopped } = session.chart.getSnapshot().context;
    expect([checks, stopped]).toEqual([["bolt"], "cover-in-the-way"]);
    session.act({ type: "cover.taken" });
    session.declare();
    expect(kept).toMatchObject([{ isRight: false, missed: ["strike-missing", "cover-off"] }]);
  });

  test("whose parts are spoiled is not right, though there is no fit that could be wrong", () => {
    const { session, kept } = watched();
    session.act({ type: "spindle.cut", length_mm: 60 });
    session.act({ type: "spindle.replaced" });
    session.act({ type: "spindle.cut", length_mm: 60 });
    session.declare();
    expect(kept).toMatchObject([{ isRight: false, missed: ["parts-spent"] }]);
    const { details, row, story } = told(kept[0]);
    expect(details).toMatchObject({
      declared: "spent",
      faults: [],
      skipped: checksOf(session.assembly),
      spindlesUsed: 1,
    });
    expect(row.missed).toBe("parts spoiled");
    expect(story.sentence).toBe("The parts could not become a good lock any more. 3 acts, 1 spindle used up.");
  });

  test("of another program, with faults that are not known here, is told by its codes", () => {
    const { session, kept } = watched();
    fitWell(session);
    session.declare();
    const [note] = kept;
    if (note === undefined) throw new Error("nothing is kept");
    const details = { ...Object(note.details), faults: ["paint-wet"] };
    const foreign = { ...note, missed: ["paint-wet"], details };
    expect(told(foreign)).toMatchObject({ details: undefined, row: { missed: "paint wet" } });
    expect(detailsOf({ kind: "fitting", details: { ...Object(note.details), moves: 1.5 } })).toBeNull();
  });
});
