import { describe, expect, test } from "vitest";
import { DialingTry } from "../../../src/app/sittings/dialingTry";
import { keptTryWrite, tryWrite } from "../../../src/app/sittings/sittingLogbook";
import { trySetup } from "../../../src/app/sittings/trySetup";
import { ZeroingTry } from "../../../src/app/sittings/zeroingTry";
import { idealMotion } from "../../../src/dialing/idealMotion";
import { isRight } from "../../../src/drill/marking/tryResult";
import type { Station } from "../../../src/drill/sheet/sheet";
import { shippedProfile } from "../../../src/lock/shippedProfiles";
import { checkWrite } from "../../../src/logbook/logbookWrite";
import { decodeTrace } from "../../../src/logbook/traceCodec";
import { dialingStation, testSheet, zeroingStation } from "../../support/testSheet";

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
    const again = keptTryWrite(one.setup, one.result(), one.motion, OWNER);
    expect(again).toEqual(tryWrite(one, OWNER));
    expect(keptTryWrite(one.setup, { ...one.result(), isBrokenOff: true }, one.motion, OWNER)).toBeNull();
    expect(keptTryWrite(one.setup, one.result(), null, OWNER)).toBeNull();
  });

  test("is the same zeroing when it is made again, but for the hidden condition", () => {
    const one = new ZeroingTry(setupOf(zeroingStation()));
    one.turnBy(30, 0);
    one.takeReading(1000);
    one.end();
    const again = keptTryWrite(one.setup, one.result(), null, OWNER);
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
