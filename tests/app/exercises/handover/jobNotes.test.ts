import { describe, expect, test } from "vitest";
import { ChangeNotes } from "../../../../src/app/exercises/handover/change/changeNotes";
import { ChangeSession } from "../../../../src/app/exercises/handover/change/changeSession";
import { HandoverNotes } from "../../../../src/app/exercises/handover/run/kept/handoverNotes";
import { TroubleNotes } from "../../../../src/app/exercises/handover/trouble/troubleNotes";
import { TroubleSession } from "../../../../src/app/exercises/handover/trouble/troubleSession";
import { setupOf } from "../../../../src/app/exercises/handover/trouble/troubleSetup";
import { jobWrite } from "../../../../src/app/keeping/jobWrite";
import { jobRowOf } from "../../../../src/app/results/jobRows";
import { jobStory } from "../../../../src/app/results/jobSentences";
import { drawLength } from "../../../../src/dialing/fault";
import { idealMotion } from "../../../../src/dialing/idealMotion";
import { HandoverRun } from "../../../../src/handover/run/handoverRun";
import type { Trouble } from "../../../../src/handover/trouble/trouble";
import type { Combination } from "../../../../src/lock/combination";
import { type Graduations, signOf } from "../../../../src/lock/dial";
import { shippedProfile } from "../../../../src/lock/shippedProfiles";
import { describeSource } from "../../../../src/realdial/sources/sourceDescription";
import { SCREEN_SOURCE, SourcesSeen } from "../../../../src/realdial/sources/sourcesSeen";
import { detailsOf } from "../../../../src/records/job/jobDetails";
import type { JobNote } from "../../../../src/records/job/jobNote";
import { seededChance } from "../../../../src/statistics/chance";
import { checkWrite } from "../../../../src/store/logbookWrite";
import { cleanSteps } from "../../../support/handoverEvents";
import { NOON } from "../../../support/logbookRecords";

const ENCODER = describeSource("encoder", 100 / 2400, 0.012);
const THREE = shippedProfile("three-wheel");

function newIds() {
  let count = 0;
  return () => `id${count++}`;
}

/** What is kept, and checked as the logbook checks it. */
function keptOf(notes: { look: (now: number) => JobNote | null }) {
  const kept: JobNote[] = [];
  let now = NOON;
  const look = () => {
    now += 500;
    const note = notes.look(now);
    if (note === null) return;
    checkWrite(jobWrite("tavro", note));
    kept.push(note);
  };
  return { kept, look };
}

describe("a change of combination", () => {
  const begin = () => {
    const session = new ChangeSession({ profile: THREE, help: "counts" }, seededChance(5));
    const { kept, look } = keptOf(new ChangeNotes(session, newIds()));
    session.subscribe(look);
    return { session, kept };
  };
  const index = THREE.kind === "wheel-pack" ? (THREE.changing?.index ?? 0) : 0;

  /** Dials numbers to an index. @returns where the dial then stands */
  function dialTo(session: ChangeSession, numbers: Combination, at: Graduations, errors: readonly Graduations[] = []) {
    const path = idealMotion(THREE, numbers, session.change.dial - at, errors).slice(1, -1);
    for (const stop of path) session.turnBy(stop + at - session.change.dial, 0);
  }
  function changeWith(session: ChangeSession, errors: readonly Graduations[] = [], present = session.setup.present) {
    const { wanted } = session.setup;
    dialTo(session, present, index);
    session.act("insertKey");
    session.act("turnKey");
    dialTo(session, wanted, index, errors);
    session.act("turnKeyBack");
    session.act("withdrawKey");
  }
  function prove(session: ChangeSession) {
    session.turnBy(-signOf(THREE.draw.turn) * 150, 0);
    dialTo(session, session.setup.wanted, 0);
    session.turnBy(signOf(THREE.draw.turn) * (drawLength(THREE, session.change.dial) + 3), 0);
  }

  test("is kept once it is proved three times, without its numbers", () => {
    const { session, kept } = begin();
    changeWith(session);
    for (let k = 0; k < 2; k++) prove(session);
    expect(kept).toEqual([]);
    prove(session);
    session.turnBy(-signOf(THREE.draw.turn) * 150, 0);
    session.act("shutDoor");
    expect(kept).toHaveLength(1);
    expect(kept[0]).toMatchObject({
      ...{ id: "id0", kind: "change", profileId: "three-wheel", help: "counts", isRight: true, missed: [] },
      details: { outcome: "true", proofs: 3, faults: [] },
    });
    expect(kept[0]?.duration_ms).toBeGreaterThan(500);
    expect(JSON.stringify(kept[0])).not.toContain(session.setup.wanted.join());
    expect(kept[0]).not.toHaveProperty("sources");
  });

  test("names what turned its dial, and the next one starts without it", () => {
    const { session, kept } = begin();
    session.noteSource(ENCODER);
    changeWith(session);
    session.noteSource();
    session.act("shutDoor");
    expect(kept[0]?.sources).toEqual([ENCODER, SCREEN_SOURCE]);
    session.drawAnother();
    session.noteSource(ENCODER);
    changeWith(session);
    session.act("shutDoor");
    expect(kept.at(-1)?.sources).toEqual([ENCODER]);
  });

  test("in which a device lost the hand is marked, and the next one is not", () => {
    const { session, kept } = begin();
    session.noteSource(ENCODER);
    changeWith(session);
    session.noteDoubt("gap");
    session.act("shutDoor");
    session.drawAnother();
    session.noteSource(ENCODER);
    changeWith(session);
    session.act("shutDoor");
    expect(kept.map(({ doubts }) => doubts)).toEqual([["gap"], undefined]);
  });

  test("set off is kept when a proof shows it, and stays missed when it is mended", () => {
    const { session, kept } = begin();
    changeWith(session, [0, 4, 0]);
    prove(session);
    const [first] = kept;
    expect(kept).toHaveLength(1);
    expect(first).toMatchObject({ isRight: false, missed: ["number-set-off"], details: { outcome: "off" } });
    if (first === undefined) throw new Error("it was kept");
    const row = jobRowOf({ ...first, personId: "tavro" });
    expect(row).toMatchObject({ job: "Change", lock: "Three-wheel", result: "Not right", missed: "a number set off" });
    expect(jobStory({ ...first, personId: "tavro" })).toEqual({
      sentence: "The lock opens, but not as written. 0 proofs with the door open.",
      points: [
        "A number set off, number 2: 4.0 graduations.",
        expect.stringMatching(/^Off the numbers meant, in graduations: first 0\.0, second [+−]4\.0, third 0\.0\.$/),
      ],
    });
    session.act("shutDoor");
    expect(kept.map(({ id }) => id)).toEqual(["id0", "id0"]);
    expect(kept[1]?.missed).toEqual(["number-set-off", "door-shut-unproved", "locked-out"]);
  });

  test("set off, mended and proved is one job: right by the rule of a sitting, with what was missed told beside", () => {
    const { session, kept } = begin();
    changeWith(session, [0, 4, 0]);
    prove(session);
    session.turnBy(-signOf(THREE.draw.turn) * 150, 0);
    session.act("changeAgain");
    changeWith(session, [], session.change.setCombination ?? []);
    for (let k = 0; k < 3; k++) prove(session);
    expect(kept.map(({ id }) => id)).toEqual(["id0", "id0"]);
    const [, note] = kept;
    if (note === undefined) throw new Error("it was kept again");
    expect(note).toMatchObject({ isRight: true, missed: ["number-set-off"], details: { outcome: "true", proofs: 3 } });
    expect(jobStory({ ...note, personId: "tavro" }).points[0]).toBe("A number set off, earlier in this change.");
  });

  test("spoiled is kept as such; the next one is another job", () => {
    const { session, kept } = begin();
    session.turnBy(30, 0);
    session.act("insertKey");
    session.act("turnKey");
    expect(kept).toHaveLength(1);
    expect(kept[0]).toMatchObject({ isRight: false, details: { outcome: "spoiled", errors: null } });
    expect(kept[0]?.missed).toContain("key-turned-unaligned");
    session.again();
    session.act("shutDoor");
    expect(kept[1]).toMatchObject({ id: "id1", missed: ["not-changed"], details: { outcome: "unchanged" } });
  });
});

describe("a diagnosis", () => {
  const begin = (query: string) => {
    const session = new TroubleSession(setupOf(new URLSearchParams(query), seededChance(4)), seededChance(8));
    const { kept, look } = keptOf(new TroubleNotes(session, newIds()));
    session.subscribe(look);
    const name = (named: Trouble) => {
      session.name(named, 60_000);
      session.tell();
    };
    return { session, kept, name };
  };
  const gauge = (session: TroubleSession) => {
    session.readCam("left", 1000);
    session.readCam("right", 2000);
  };
  const QUERY = "profile=two-wheel&pool=index-slipped&seed=2&help=silent";

  test("named right is kept with its size, and the same lock named again is not", () => {
    const { session, kept, name } = begin(QUERY);
    const { trouble } = session.task;
    for (let k = 0; k < 2; k++) {
      gauge(session);
      name({ ...trouble, size: trouble.size + 0.1 });
      session.again();
    }
    expect(kept).toHaveLength(1);
    expect(kept[0]).toMatchObject({ kind: "trouble", help: "silent", isRight: true, missed: [], duration_ms: 59_000 });
    const row = jobRowOf({ ...(kept[0] as JobNote), personId: "tavro" });
    expect(row).toMatchObject({ missed: "index slipped; size off by 0.10 graduations", time: "59 s" });
    session.noteSource(ENCODER);
    session.another();
    gauge(session);
    name(session.task.trouble);
    expect(kept).toHaveLength(2);
    expect(kept[1]).not.toHaveProperty("sources");
    session.another();
    session.noteSource(ENCODER);
    gauge(session);
    name(session.task.trouble);
    expect(kept[2]?.sources).toEqual([ENCODER]);
  });

  test.each([
    [
      "another condition",
      { kind: "dial-heavy", part: null, size: 2 },
      ["not-named"],
      /^named dial heavy; it was index slipped$/,
    ],
    [
      "not its size",
      { kind: "index-slipped", part: null, size: 9 },
      ["size"],
      /^index slipped; size off by \d+\.\d\d graduations$/,
    ],
  ] as const)("%s is told", (_, named, missed, words) => {
    const { session, kept, name } = begin(QUERY);
    gauge(session);
    name(named);
    expect(kept[0]).toMatchObject({ isRight: missed[0] === "size", missed });
    expect(jobRowOf({ ...(kept[0] as JobNote), personId: "tavro" }).missed).toMatch(words);
  });

  test("a guess is not right", () => {
    const { session, kept, name } = begin(QUERY);
    name(session.task.trouble);
    expect(kept[0]).toMatchObject({ isRight: false, missed: ["not-looked"] });
  });
});

describe("a handover", () => {
  const begin = () => {
    const run = new HandoverRun(THREE);
    const session = { run, setup: { profile: THREE, seed: 1, isHandsOff: true }, turnedBy: new SourcesSeen() };
    const steps = cleanSteps("wheel-pack").map((event, k) => ({ ...event, at_ms: 1000 * (k + 1) }));
    return { run, session, steps };
  };

  test("is kept when the door is signed off, once, and stays so through its debrief", () => {
    const { run, session, steps } = begin();
    const { kept, look } = keptOf(new HandoverNotes(session, newIds()));
    for (const step of steps) {
      expect(kept).toEqual([]);
      run.take(step);
      look();
    }
    expect(kept).toHaveLength(1);
    expect(kept[0]).toMatchObject({ kind: "handover", isRight: true, duration_ms: 1000 * steps.length });
    expect(kept[0]?.details).toMatchObject({ isHandedOver: true, isHandsOff: true, faults: [], missing: [] });
    run.goBackTo(steps.length - 1);
    look();
    run.take({ type: "duty.signed", at_ms: 1000 * steps.length });
    look();
    expect(kept).toHaveLength(1);
    // Gone on with after a reload, it is the same job.
    const again = keptOf(new HandoverNotes(session, newIds()));
    again.look();
    expect(again.kept).toEqual([]);
  });

  test("with a fault on the way is not right, and tells it", () => {
    const { run, session, steps } = begin();
    const { kept, look } = keptOf(new HandoverNotes(session, newIds()));
    run.take({ type: "duty.signed", at_ms: 500 });
    for (const step of steps) {
      run.take(step);
      look();
    }
    const [note] = kept;
    if (note === undefined) throw new Error("it was kept");
    expect(note.isRight).toBe(false);
    expect(note.missed).toContain("signed-too-early");
    const story = jobStory({ ...note, personId: "tavro" });
    expect(story.sentence).toMatch(/^Handed over, with \d faults\. \d+ steps\.$/);
    expect(story.points).toContain(
      "Step 1, at 1 s: You signed, but something is missing. The signature was not accepted. Instead: Do what is missing, then sign.",
    );
    expect(detailsOf({ kind: "change", details: note.details })).toBeNull();
  });
});
