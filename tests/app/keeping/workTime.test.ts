import { describe, expect, test } from "vitest";
import { InspectionNotes } from "../../../src/app/exercises/fitting/find/inspectionNotes";
import { InspectionSession } from "../../../src/app/exercises/fitting/find/inspectionSession";
import { FittingNotes } from "../../../src/app/exercises/fitting/fittingNotes";
import { FittingSession } from "../../../src/app/exercises/fitting/fittingSession";
import { VisitNotes } from "../../../src/app/exercises/service/visitNotes";
import { VisitSession } from "../../../src/app/exercises/service/visitSession";
import { jobWrite } from "../../../src/app/keeping/jobWrite";
import { shippedProfile } from "../../../src/lock/shippedProfiles";
import { seededChance } from "../../../src/statistics/chance";
import { checkWrite } from "../../../src/store/logbookWrite";
import { NOON } from "../../support/logbookRecords";

const PROFILE = shippedProfile("three-wheel");
const YEAR_ms = 365 * 24 * 3_600_000;
const newId = () => "id";

/** Each exercise with its watcher, an act that begins it, and one that ends it. */
const EXERCISES = {
  fitting: () => {
    const session = new FittingSession(PROFILE, seededChance(1));
    const begin = () => session.act({ type: "body.hung" });
    const end = () => {
      session.act({ type: "spindle.cut", length_mm: 60 });
      session.act({ type: "spindle.replaced" });
      session.act({ type: "spindle.cut", length_mm: 60 });
      session.declare();
    };
    return { notes: new FittingNotes(session, newId), begin, end };
  },
  inspection: () => {
    const session = new InspectionSession(PROFILE, "full", seededChance(1));
    return {
      notes: new InspectionNotes(session, newId),
      begin: () => session.check("bolt"),
      end: () => session.name([]),
    };
  },
  service: () => {
    const session = new VisitSession({ lock: PROFILE.id, seed: 2, help: "full" }, seededChance(1));
    const begin = () => session.act({ type: "door.opened" });
    return { notes: new VisitNotes(session, newId), begin, end: () => session.leave() };
  },
};

describe.each(Object.entries(EXERCISES))("the time of a job: %s", (_, exercise) => {
  test.each([
    ["goes on", 40_000],
    ["is set forward by a year", YEAR_ms],
    ["is set back by a year", -YEAR_ms],
  ])("is what was worked, by a clock that only goes on, where the clock on the wall %s", (_clock, by_ms) => {
    const { notes, begin, end } = exercise();
    begin();
    expect(notes.look(NOON, 5000)).toBeNull();
    end();
    const note = notes.look(NOON + by_ms, 45_000);
    if (note === null) throw new Error("nothing is kept");
    // It ended when the wall says that it did.
    expect([note.duration_ms, note.createdAt - note.startedAt]).toEqual([40_000, 40_000]);
    expect(note.createdAt).toBe(NOON + by_ms);
    expect(() => checkWrite(jobWrite("tavro", note))).not.toThrow();
  });
});
