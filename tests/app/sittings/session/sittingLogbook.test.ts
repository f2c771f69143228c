import { describe, expect, test } from "vitest";
import { keptTryWrite, tryWrite } from "../../../../src/app/sittings/session/sittingLogbook";
import { ChangeTry } from "../../../../src/app/sittings/tries/changeTry";
import { DialingTry } from "../../../../src/app/sittings/tries/dialingTry";
import { HandoverTry } from "../../../../src/app/sittings/tries/handoverTry";
import { TroubleTry } from "../../../../src/app/sittings/tries/troubleTry";
import { trySetup } from "../../../../src/app/sittings/tries/trySetup";
import { ZeroingTry } from "../../../../src/app/sittings/tries/zeroingTry";
import { idealMotion } from "../../../../src/dialing/idealMotion";
import { isRight } from "../../../../src/drill/marking/tryResult";
import type { Station } from "../../../../src/drill/sheet/sheet";
import { shippedProfile } from "../../../../src/lock/shippedProfiles";
import { decodeTrace } from "../../../../src/records/motion/traceCodec";
import { checkWrite } from "../../../../src/store/logbookWrite";
import {
  changeStation,
  dialingStation,
  handoverStation,
  testSheet,
  troubleStation,
  zeroingStation,
} from "../../../support/testSheet";
import { changeTry } from "../../../support/testTries";
import { setupOf as jobSetup } from "../jobTries";

const OWNER = { sittingId: "sitting", personId: "person", index: 2, now_ms: 1_800_000_000_000 };
const COMBINATION = shippedProfile("three-wheel").asSet ?? [];

const setupOf = (station: Station) => {
  const combination = station.kind === "dialing" ? COMBINATION : null;
  return trySetup(testSheet({ stations: [station] }), { station: 0, repetition: 1, combination }, 3, 0);
};

const dialed = (station: Station) => {
  const one = new DialingTry(setupOf(station));
  const path = idealMotion(one.attempt.profile, COMBINATION, one.dial, [], 5);
  path.slice(1).forEach((position, i) => {
    one.turnBy(position - (path[i] ?? 0), 1000 * i);
  });
  return one;
};

describe("a try of a sitting in the logbook", () => {
  test("is an attempt with its motion", () => {
    const write = tryWrite(dialed(dialingStation({ help: "counts" })), OWNER);
    expect(() => checkWrite(write)).not.toThrow();
    expect(write.record).toMatchObject({ id: "sitting:3", opened: true, exercise: "open", help: "counts" });
    const trace = write.kind === "attempts" ? write.trace : undefined;
    expect(trace && decodeTrace(trace).positions.length).toBeGreaterThan(3);
  });

  test("tells the trouble that held, and how many numbers were asked", () => {
    const conditions = [
      { kind: "index-offset", size: 0.4 },
      { kind: "no-cutaway" },
      { kind: "lost-motion", size: 1, from: 2 },
    ] as const;
    const { record } = tryWrite(dialed(dialingStation({ conditions, upTo: 1 })), OWNER);
    expect(record).toMatchObject({ conditions: ["index offset 0.4", "no cutaway"], exercise: "first 1" });
  });

  test("tells of each trouble what held: not what a later condition replaced, and none of no size", () => {
    const conditions = [
      { kind: "index-offset", size: 0.4 },
      { kind: "index-offset", size: 1 },
      { kind: "lost-motion", size: 0 },
    ] as const;
    expect(tryWrite(dialed(dialingStation({ conditions })), OWNER).record).toMatchObject({
      conditions: ["index offset 1"],
    });
  });

  test("of the first numbers alone is right when they are, though no bolt was drawn", () => {
    const halfway = (turns: number) => {
      const one = new DialingTry(setupOf(dialingStation({ upTo: 1 })));
      const toFirst = (COMBINATION[0] ?? 0) - one.dial;
      one.turnBy((((toFirst % 100) + 100) % 100) + 100 * turns, 0);
      one.end();
      expect(isRight(one.result(), one.setup.station)).toBe(turns === 4);
      return tryWrite(one, OWNER).record;
    };
    expect(halfway(4)).toMatchObject({ exercise: "first 1", opened: true, faults: [] });
    expect(halfway(1)).toMatchObject({ exercise: "first 1", opened: false, faults: [{ code: "too-few-turns" }] });
  });

  test("is unfinished until it has ended, under the same id", () => {
    const one = new DialingTry(setupOf(dialingStation()));
    one.turnBy(40, 0);
    const early = tryWrite(one, OWNER);
    expect(() => checkWrite(early)).not.toThrow();
    expect(early.record).toMatchObject({ id: "sitting:3", isUnfinished: true, opened: false, faults: [] });
    one.end();
    const { record } = tryWrite(one, OWNER);
    expect(record.id).toBe(early.record.id);
    expect(record).not.toHaveProperty("isUnfinished");
  });

  test("is the same attempt when it is made again from what the page kept", () => {
    const one = dialed(dialingStation());
    const again = keptTryWrite(one.setup, one.result(), { motion: one.motion }, OWNER);
    expect(again).toEqual(tryWrite(one, OWNER));
    expect(keptTryWrite(one.setup, { ...one.result(), isBrokenOff: true }, { motion: one.motion }, OWNER)).toBeNull();
    expect(keptTryWrite(one.setup, one.result(), { motion: null }, OWNER)).toBeNull();
  });

  test("is the same zeroing when it is made again, but for the hidden condition", () => {
    const one = new ZeroingTry(setupOf(zeroingStation()));
    one.turnBy(30, 0);
    one.takeReading(1000);
    one.end();
    const again = keptTryWrite(one.setup, one.result(), { motion: null }, OWNER);
    expect(again?.record).toEqual({ ...tryWrite(one, OWNER).record, details: { sittingId: "sitting" } });
  });

  test("is a zeroing with every reading", () => {
    const one = new ZeroingTry(setupOf(zeroingStation()));
    one.turnBy(30, 0);
    one.takeReading(1000);
    one.end();
    const write = tryWrite(one, OWNER);
    expect(() => checkWrite(write)).not.toThrow();
    expect(write.record).toMatchObject({ outcome: "broken-off", readings: [{ turn: "right", refusal: "wrong-way" }] });
  });
});

describe("a job of a sitting in the logbook", () => {
  test("an ended change is kept with what was missed, never with its numbers", () => {
    const one = new ChangeTry(jobSetup(changeStation({ help: "counts" })));
    one.session.act("shutDoor");
    one.worked(1000);
    const write = tryWrite(one, OWNER);
    expect(() => checkWrite(write)).not.toThrow();
    expect(write).toMatchObject({
      kind: "jobs",
      record: { id: "sitting:3", sittingId: "sitting", kind: "change", help: "counts", isRight: false },
    });
    expect(write.record).toMatchObject({ missed: ["not-changed"], details: { outcome: "unchanged", proofs: 0 } });
    expect(JSON.stringify(write.record)).not.toContain(one.session.setup.wanted.join());
  });

  test("a diagnosis that was never made has no details, and one over its time has missed that", () => {
    const one = new TroubleTry(jobSetup(troubleStation({ timeLimit_s: 10 })));
    one.worked(0);
    one.worked(12_000);
    one.end();
    const write = tryWrite(one, OWNER);
    expect(() => checkWrite(write)).not.toThrow();
    expect(write.record).toMatchObject({ kind: "trouble", missed: ["not-named", "too-late"], duration_ms: 12_000 });
    expect(write.record).not.toHaveProperty("details");
  });

  test("a diagnosis is kept with its truth; a handover with what was missing", () => {
    const trouble = new TroubleTry(jobSetup(troubleStation()));
    trouble.session.name(trouble.session.task.trouble, 0);
    trouble.end();
    const { record } = tryWrite(trouble, OWNER);
    expect(() => checkWrite(tryWrite(trouble, OWNER))).not.toThrow();
    expect(record).toMatchObject({
      missed: ["not-looked"],
      details: { truth: trouble.session.task.trouble, points: 0 },
    });
    const handover = new HandoverTry(jobSetup(handoverStation()));
    handover.end();
    const written = tryWrite(handover, OWNER);
    expect(() => checkWrite(written)).not.toThrow();
    expect(written.record).toMatchObject({ kind: "handover", isRight: false, details: { isHandedOver: false } });
  });

  test("is taken from its result where the page that made it was killed; a lost one is not told", () => {
    const setup = jobSetup(troubleStation());
    const one = new TroubleTry(setup);
    one.end();
    const write = keptTryWrite(setup, one.result(), { motion: null }, OWNER);
    expect(write).toMatchObject({ kind: "jobs", record: { id: "sitting:3", missed: ["not-named"] } });
    expect(keptTryWrite(setup, { ...one.result(), isBrokenOff: true }, { motion: null }, OWNER)).toBeNull();
  });

  test.each([3, 2])("a change with a fault on the way and %i proofs is as right there as in the marks", (proofs) => {
    const setup = jobSetup(changeStation());
    const result = changeTry({ proofs, faults: [{ code: "present-refused", size: 1 }] });
    const write = keptTryWrite(setup, result, { motion: null }, OWNER);
    expect(write?.record).toMatchObject({
      isRight: isRight(result, setup.station),
      details: { outcome: "true", proofs },
    });
    expect(isRight(result, setup.station)).toBe(proofs === 3);
  });
});
