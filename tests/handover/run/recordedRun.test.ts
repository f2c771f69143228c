import fc from "fast-check";
import { describe, expect, test } from "vitest";
import clean from "../../../shared/handovers/clean.json" with { type: "json" };
import lockedOut from "../../../shared/handovers/locked-out.json" with { type: "json" };
import { checkRun, faultLines, missingWords, verdictWords } from "../../../src/handover/run/checkRun";
import { HandoverRun } from "../../../src/handover/run/handoverRun";
import { parseRun, writeRun } from "../../../src/handover/run/recordedRun";
import { FAULT_AT_END, FAULT_SITUATIONS, FAULT_TRIGGERS } from "../../../src/handover/run/rules/faultTriggers";
import { FAULT_WORDS } from "../../../src/handover/run/rules/faultWords";
import { RunError } from "../../../src/handover/run/rules/runError";
import { drawScene } from "../../../src/handover/run/scene";
import { situationLines } from "../../../src/handover/run/situationWords";
import { stepWords } from "../../../src/handover/run/stepWords";
import { LockError } from "../../../src/lock/lockError";
import { seededChance } from "../../../src/statistics/chance";
import { EVENTS } from "../../support/handoverEvents";

describe("the sample runs", () => {
  test("the clean one is clean", () => {
    const result = checkRun(parseRun(clean));
    expect(result).toMatchObject({ isClean: true, isHandedOver: true, missing: [], faults: [], isHandsOff: false });
    expect(verdictWords(result)).toBe("Handed over with every proof and without a fault.");
  });

  test("the bad one keeps every fault, those undone in the debrief as well", () => {
    const result = checkRun(parseRun(lockedOut));
    expect(result.faults.map(({ code, step, isUndone }) => [code, step, isUndone])).toEqual([
      ["aligned-unmeasured", 1, false],
      ["changed-untried", 3, false],
      ["rules-broken", 3, false],
      ["set-off", 3, false],
      ["shut-unproved", 5, true],
      ["shut-unobserved", 5, true],
      ["shut-not-spun-off", 5, true],
      ["shut-in", 5, true],
      ["locked-out", 5, true],
      ["proved-not-spun-off", 6, true],
      ["opened-by-force", 7, true],
      ["combination-in-record", 10, false],
      ["signed-too-early", 11, false],
    ]);
    expect(result).toMatchObject({ isClean: false, isHandedOver: false, undoneSteps: 5, steps: 11, isHandsOff: true });
    expect(missingWords(result.missing)).toContain("No second person has opened the lock with the new combination.");
    const [head, ...more] = faultLines(result.faults[4] as (typeof result.faults)[number]);
    expect(head).toMatch(/^Step 5, undone in the debrief: You shut/);
    expect(more).toEqual([
      expect.stringMatching(/^Harmed: Everyone/),
      expect.stringMatching(/^Instead: Open it/),
      expect.stringMatching(/^Source: MIL-HDBK-1013\/8 \(1989\), section 2, item d/),
    ]);
  });

  test("a clean run with its first fault undone is handed over, and not clean", () => {
    const [first, ...rest] = clean.events;
    const shut = { type: "door.shut", at_ms: 1 };
    const back = { type: "run.wentBack", steps: 0, at_ms: 2 };
    const result = checkRun(parseRun({ ...clean, events: [shut, back, first, ...rest] }));
    expect(result).toMatchObject({ isHandedOver: true, isClean: false, undoneSteps: 1 });
    expect(verdictWords(result)).toMatch(/undone in the debrief\.$/);
  });

  test("are written as they are read", () => {
    const run = parseRun(clean);
    expect(parseRun(JSON.parse(writeRun(run, "three-wheel")))).toEqual(run);
  });
});

describe("a run that is none is refused in a sentence", () => {
  const events = (...list: unknown[]) => ({ ...clean, events: list });
  test.each([
    [{ ...clean, format: "other" }, /handover: format must be "gatefall-handover"/],
    [{ ...clean, version: 2 }, /version must be 1/],
    [{ ...clean, scene: { ...clean.scene, height_in: -1 } }, /scene.height_in must be a number of inches above 0/],
    [events({ type: "door.slammed", at_ms: 0 }), /events\[0\].* must be such as/],
    [events({ type: "door.opened", by: "magic", at_ms: 0 }), /events\[0\].by must be "outside"/],
    [events({ type: "door.shut", at_ms: 5 }, { type: "door.opened", by: "outside", at_ms: 1 }), /earlier/],
    [7, /handover: this must be an object/],
  ])("%#", (value, words) => {
    expect(() => parseRun(value)).toThrow(RunError);
    expect(() => parseRun(value)).toThrow(words);
  });

  test("an unknown profile is told by the lock", () => {
    expect(() => parseRun({ ...clean, profile: "no-such" })).toThrow(LockError);
  });

  test("what cannot have happened is told with its event", () => {
    const run = parseRun(events({ type: "door.opened", by: "outside", at_ms: 0 }));
    expect(() => checkRun(run)).toThrow(
      "step 1 (events[0]), door.opened, cannot have happened, so take it out or add what came before it: The door is already open.",
    );
    const back = parseRun(events({ type: "run.wentBack", steps: 3, at_ms: 0 }));
    expect(() => checkRun(back)).toThrow(/^events\[0\], run.wentBack, goes back to step 3, but only 0 steps count/);
  });

  test("whatever is read, it is a run or a sentence", () => {
    fc.assert(
      fc.property(fc.anything(), (value) => {
        try {
          parseRun(value);
        } catch (error) {
          expect(error instanceof RunError || error instanceof LockError).toBe(true);
        }
      }),
    );
  });
});

describe("words", () => {
  test("there are words and a source for every fault", () => {
    const codes = [
      FAULT_AT_END.code,
      ...FAULT_TRIGGERS.map(({ code }) => code),
      ...Object.keys(FAULT_SITUATIONS),
    ].sort();
    expect(Object.keys(FAULT_WORDS).sort()).toEqual(codes);
    for (const { happened, harmed, instead, source } of Object.values(FAULT_WORDS)) {
      for (const sentence of [happened, harmed, instead]) expect(sentence).toMatch(/^[A-Z].*\.$/);
      expect(source).not.toBe("");
    }
  });

  test("every event is told in a sentence, and every situation in words", () => {
    for (const event of EVENTS) expect(stepWords(event)).toMatch(/^[A-Z].*\.$/);
    const lines = situationLines(new HandoverRun(parseRun(clean).profile).situation);
    expect(lines.every(({ label, words }) => label !== "" && words !== "")).toBe(true);
  });

  test("what is really set is not to be seen", () => {
    const { situation } = new HandoverRun(parseRun(clean).profile);
    const seen = (combination: "ownTrue" | "ownOff" | "spoiled") => situationLines({ ...situation, combination });
    expect(seen("ownOff")).toEqual(seen("ownTrue"));
    expect(seen("spoiled")).toEqual(seen("ownTrue"));
  });
});

test("a scene is the same for the same seed, and two different people are in it", () => {
  for (let seed = 0; seed < 200; seed++) {
    const scene = drawScene(seededChance(seed));
    expect(drawScene(seededChance(seed))).toEqual(scene);
    expect(scene.second).not.toBe(scene.observer);
  }
});
