import { describe, expect, test } from "vitest";
import { InspectionNotes } from "../../../../src/app/exercises/fitting/find/inspectionNotes";
import { InspectionSession } from "../../../../src/app/exercises/fitting/find/inspectionSession";
import { jobWrite } from "../../../../src/app/keeping/jobWrite";
import { againAddress } from "../../../../src/app/results/jobAddress";
import { jobRowOf } from "../../../../src/app/results/jobRows";
import { jobStory } from "../../../../src/app/results/jobSentences";
import { checksOf } from "../../../../src/fitting/fitChecks";
import { shippedProfile } from "../../../../src/lock/shippedProfiles";
import { detailsOf } from "../../../../src/records/job/jobDetails";
import type { JobNote } from "../../../../src/records/job/jobNote";
import { seededChance } from "../../../../src/statistics/chance";
import { checkWrite } from "../../../../src/store/logbookWrite";
import { NOON } from "../../../support/logbookRecords";

const SECOND = 1000;

/** A fit with faults that is watched; each change of it takes a second. */
function watched(profileId = "three-wheel") {
  for (let seed = 1; ; seed++) {
    const session = new InspectionSession(shippedProfile(profileId), "counts", seededChance(seed));
    if (session.result.faults.length !== 1) continue;
    const notes = new InspectionNotes(session, () => "id");
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
}

const told = (note: JobNote | undefined) => {
  if (note === undefined) throw new Error("nothing is kept");
  const job = { ...note, personId: "tavro" };
  return { details: detailsOf(job)?.details, row: jobRowOf(job), story: jobStory(job), again: againAddress(job) };
};

describe("a fit that is judged", () => {
  test("is kept where the clock is set back meanwhile", () => {
    const session = new InspectionSession(shippedProfile("three-wheel"), "counts", seededChance(1));
    const notes = new InspectionNotes(session, () => "id");
    notes.look(NOON);
    session.name([]);
    const note = notes.look(NOON - 24 * 3_600_000);
    if (note === null) throw new Error("nothing is kept");
    expect(() => checkWrite(jobWrite("tavro", note))).not.toThrow();
  });

  test("is kept when the answer is given, right where that is all that is wrong", () => {
    const { session, kept } = watched();
    const checks = checksOf(session.assembly);
    for (const check of checks) session.check(check);
    expect(kept).toEqual([]);
    const { faults } = session.result;
    session.name(faults);
    expect(kept).toMatchObject([
      {
        ...{ kind: "inspection", profileId: "three-wheel", help: "counts", isRight: true, missed: [] },
        startedAt: NOON + SECOND,
        duration_ms: checks.length * SECOND,
      },
    ]);
    const { details, row, story, again } = told(kept[0]);
    expect(details).toEqual({ faults, named: faults, skipped: [], checkSet: 2 });
    expect(row).toMatchObject({ job: "Find what is wrong", result: "Right", missed: "nothing missed" });
    expect(story.sentence).toBe("1 fault in the fit. You named 1 fault.");
    expect(story.points[0]).toMatch(/^Found: /);
    expect(story.points.at(-1)).toBe("You made every check.");
    expect(again).toBe("#/fitting?view=find&profile=three-wheel&help=counts");
  });

  test("takes no check and no other answer afterwards, and the next lock is a job of its own", () => {
    const { session, kept } = watched();
    session.check("bolt");
    session.name([]);
    const { log } = session;
    session.check("depth");
    session.name(["rubs"]);
    expect(session.log).toBe(log);
    expect(kept).toMatchObject([{ isRight: false }]);
    expect(kept[0]?.missed).toContain("not-checked");
    const { story } = told(kept[0]);
    expect(story.sentence).toBe("1 fault in the fit. You said that nothing is wrong.");
    expect(story.points[0]).toMatch(/^Overlooked: .* Found by: /);
    session.again();
    expect(session.log).toEqual([]);
    session.name([]);
    expect(kept).toHaveLength(2);
  });

  test("on an electronic lock is told in checks that such a lock has", () => {
    const { session, kept } = watched("dial-encoder");
    session.name([]);
    const { points } = told(kept[0]).story;
    expect(points.join(" ")).toContain("read the dial, cam at its mark");
    expect(points.join(" ")).not.toMatch(/gate under the nose|turn the wheels/);
  });

  test("comes anew with other help: what was seen with more help is not judged with less", () => {
    const { session, kept } = watched();
    session.check("bolt");
    session.setHelp("silent");
    expect(session.result.skipped).toEqual(checksOf(session.assembly));
    session.check("bolt");
    session.name(["bolt-binds"]);
    expect(kept).toMatchObject([{ help: "silent" }]);
  });
});
