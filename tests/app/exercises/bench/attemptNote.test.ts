import { describe, expect, test } from "vitest";
import { AttemptNotes } from "../../../../src/app/exercises/bench/attemptNotes";
import { BenchSession } from "../../../../src/app/exercises/bench/benchSession";
import { fitOf } from "../../../../src/app/hand/dial/dialAddress";
import { idealMotion } from "../../../../src/dialing/idealMotion";
import { conditionsAt } from "../../../../src/drill/sheet/conditionsAt";
import { shippedProfile } from "../../../../src/lock/shippedProfiles";
import { describeSource, type SourceDescription } from "../../../../src/realdial/sources/sourceDescription";
import { conditionsOf } from "../../../../src/records/attemptConditions";
import { attemptOutcome } from "../../../../src/records/attemptOutcome";
import { conditionCode } from "../../../../src/records/conditionCode";
import { decodeTrace, encodeTrace } from "../../../../src/records/motion/traceCodec";
import { settingsKey } from "../../../../src/records/settingsKey";
import { seededChance } from "../../../../src/statistics/chance";
import { checkWrite } from "../../../../src/store/logbookWrite";
import { replay } from "../../../../src/trace/replay";
import { NOON } from "../../../support/logbookRecords";

/** A bench on which an attempt was dialed to its end by a hand that moves by uneven amounts. */
function dialed(
  profileId: string,
  stopErrors: readonly number[],
  seed: number,
  source?: SourceDescription,
): BenchSession {
  const profile = shippedProfile(profileId);
  const combination = profile.asSet ?? [];
  const session = new BenchSession(
    { profile, source: "as-set", combination, help: "counts", dial: "usual" },
    seededChance(seed),
  );
  const path = idealMotion(profile, combination, session.lock.dial, stopErrors, 5);
  let now = 1000;
  for (const [i, end] of path.slice(1).entries()) {
    const way = end - (path[i] ?? 0);
    for (let k = 0; k < 37; k++) {
      now += 16.7;
      session.noteSource(source);
      session.turnBy(way / 37, now);
    }
    now += 400;
  }
  return session;
}

const noteOf = (session: BenchSession) => {
  const { outcome } = session;
  if (outcome === null) throw new Error("the attempt has not ended");
  const { record, motion } = new AttemptNotes(() => "one").note(session, outcome, NOON);
  if (motion === null) throw new Error("no motion was kept");
  return { record, motion };
};

describe("an attempt of the bench", () => {
  test.each([
    { profileId: "three-wheel", stopErrors: [], opened: true },
    { profileId: "three-wheel", stopErrors: [0, 3.3], opened: false },
    { profileId: "dial-encoder", stopErrors: [0.37, -0.61, 0.1], opened: true },
    { profileId: "small-three-wheel", stopErrors: [2.2], opened: false },
  ])("at $profileId with stop errors $stopErrors is kept so that its replay comes to the same", (given) => {
    for (const seed of [1, 2, 3, 4, 5]) {
      const session = dialed(given.profileId, given.stopErrors, seed);
      const { record, motion } = noteOf(session);
      expect(record.opened).toBe(given.opened);
      expect(record.help).toBe("counts");
      expect(() => checkWrite({ kind: "attempts", record: { ...record, personId: "tavro" } })).not.toThrow();
      const { profile, combination } = session.attempt;
      const again = attemptOutcome(replay({ profile, combination, ...decodeTrace(encodeTrace(motion)) }));
      expect(again.opened).toBe(record.opened);
      expect(again.faults).toEqual(record.faults);
      expect(again.stops.map(({ error }) => error)).toEqual(record.stops.map(({ error }) => error));
    }
  });

  test("keeps its record when it is told of again, and a later attempt has its own", () => {
    let count = 0;
    const notes = new AttemptNotes(() => `id${count++}`);
    const session = dialed("three-wheel", [], 1);
    const end = { time_ms: 30_000 };
    const first = notes.note(session, end, NOON).record;
    const again = notes.note(session, end, NOON + 5000).record;
    expect(again).toMatchObject({ id: first.id, startedAt: first.startedAt, updatedAt: NOON + 5000 });
    session.again();
    expect(notes.note(session, end, NOON).record.id).not.toBe(first.id);
  });

  test("does not change when the hand turns on", () => {
    const session = dialed("three-wheel", [0, 3], 1);
    const { motion } = noteOf(session);
    const before = motion.positions.length;
    for (let i = 0; i < 5; i++) session.turnBy(-3, 90_000 + i * 20);
    expect(motion.positions.length).toBe(before);
  });

  test("takes the dial's weight and the own estimate along; the estimate is taken once, and only after the end", () => {
    const profile = shippedProfile("three-wheel");
    const begun = new BenchSession(
      { profile, source: "as-set", combination: profile.asSet ?? [], help: "silent", dial: "heavy" },
      seededChance(1),
    );
    begun.giveEstimate(1);
    expect(begun.estimate).toBeNull();
    const session = dialed("three-wheel", [0, 3.3], 1);
    expect(session.outcome?.worstStop).toBeCloseTo(3.3, 1);
    expect(noteOf(session).record.conditions).toEqual([]);
    expect(noteOf(session).record.estimate).toBeUndefined();
    session.giveEstimate(2.5);
    session.giveEstimate(4);
    expect(noteOf(session).record.estimate).toBe(2.5);
    session.change({ ...session.setup, dial: "heavy" });
    expect(session.estimate).toBeNull();
  });

  test.each([
    { by: "the screen", source: undefined, worst: 1.4, faults: ["ran-past"] },
    { by: "an encoder", source: describeSource("encoder", 0.05), worst: 1.4, faults: ["ran-past"] },
    { by: "a coarse knob", source: describeSource("midi", 1.5), worst: null, faults: [] },
    { by: "a knob not so coarse", source: describeSource("midi", 1), worst: null, faults: ["ran-past"] },
  ])("with a stop 1.4 past, turned by $by, lists what is judged, and asks for no estimate of coarse steps", (given) => {
    const session = dialed("three-wheel", [0, 1.4], 1, given.source);
    const found = session.faults().map(({ code }) => code);
    expect([session.outcome?.worstStop ?? null, found]).toEqual([
      given.worst === null ? null : expect.closeTo(given.worst, 1),
      given.faults,
    ]);
    expect(noteOf(session).record.faults.map(({ code }) => code)).toEqual(given.faults);
  });

  const notedWith = (query: string, dial: "usual" | "heavy") => {
    const profile = shippedProfile("three-wheel");
    const fit = fitOf(new URLSearchParams(query));
    const session = new BenchSession(
      { profile, source: "as-set", combination: profile.asSet ?? [], help: "silent", dial, fit },
      seededChance(1),
    );
    session.turnBy(40, 0);
    return new AttemptNotes(() => "one").note(session, null, NOON).record;
  };

  test("takes along how the dial is fitted: it is no attempt at the usual settings", () => {
    const usual = notedWith("", "usual");
    expect(usual.conditions).toEqual([]);
    const fitted = [
      { query: "index=0.4", kept: "index offset 0.4" },
      { query: "play=1", kept: "lost motion 1" },
      { query: "round=0.3,40", kept: "runout 0.3 40" },
      { query: "keyed=25", kept: "keyed off 25" },
      { query: "catch=2,50,10", kept: "catching 2 50 10" },
    ];
    for (const { query, kept } of fitted) {
      const record = notedWith(query, "usual");
      expect(record.conditions).toEqual([kept]);
      expect(settingsKey(record)).not.toBe(settingsKey(usual));
      expect(() => checkWrite({ kind: "attempts", record: { ...record, personId: "tavro" } })).not.toThrow();
    }
  });

  test("has the settings of a sitting whose sheet injects the same", () => {
    const atBench = notedWith("index=-0.4&play=1", "heavy");
    const held = conditionsAt(
      { conditions: [{ kind: "heavy-dial" }, { kind: "lost-motion", size: 1 }, { kind: "index-offset", size: -0.4 }] },
      1,
    );
    expect(atBench.conditions).toEqual(conditionsOf(held).map(conditionCode));
  });
});
