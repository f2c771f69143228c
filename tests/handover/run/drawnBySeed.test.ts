import { describe, expect, test } from "vitest";
import clean from "../../../shared/handovers/clean.json" with { type: "json" };
import { begunRun, drawNewParts } from "../../../src/handover/run/begunRun";
import { checkRun, ownDoor } from "../../../src/handover/run/checkRun";
import { parseRun, type RecordedRun, writeRun } from "../../../src/handover/run/recordedRun";
import { RunError } from "../../../src/handover/run/rules/runError";
import { RUN_WORDS } from "../../../src/handover/run/rules/runWords";
import { shippedProfile } from "../../../src/lock/shippedProfiles";
import { wordsOf } from "../../../src/wording/problem";

const PROFILE = shippedProfile("three-wheel");
const BEGUN = begunRun({ profile: PROFILE, seed: 8, isHandsOff: true, isToFit: true });
const { fitting, scene } = BEGUN;
if (fitting === undefined) throw new Error("nothing lies in the tray");

/** New parts of some place, as the run of another seed would have them where asked. */
const newParts = (place: number, seed = 8) =>
  ({ type: "parts.replaced", slotAt: drawNewParts(PROFILE, seed, place).slotAt, at_ms: 0 }) as const;
const BACK = { type: "run.wentBack", steps: 0, at_ms: 0 } as const;

const read = (run: RecordedRun) => parseRun(JSON.parse(writeRun(run, PROFILE.id)));
/** The first place whose parts are not those of the first. */
const OTHER = [2, 3, 4, 5].find((k) => newParts(k).slotAt !== newParts(1).slotAt) ?? 0;

describe("a run that promises that its seed drew its door", () => {
  test("is as it was begun, written and read", () => {
    expect(read(BEGUN)).toEqual(BEGUN);
    expect(() => checkRun(read(BEGUN))).not.toThrow();
    expect(ownDoor(read(BEGUN))).toBeUndefined();
  });

  test("has the new parts of their place; taken back and asked for again they are the same", () => {
    expect(() => checkRun(read({ ...BEGUN, events: [newParts(1), newParts(2)] }))).not.toThrow();
    expect(() => checkRun(read({ ...BEGUN, events: [newParts(1), BACK, newParts(1)] }))).not.toThrow();
  });

  test.each<[string, Partial<RecordedRun>, RegExp]>([
    [
      "an easy height",
      { scene: { ...scene, height_in: scene.height_in + 1 } },
      /^handover: scene\.height_in is [\d.]+, but seed 8 draws [\d.]+/,
    ],
    [
      "an easy release",
      { scene: { ...scene, isReleaseBlocked: !scene.isReleaseBlocked } },
      /scene\.isReleaseBlocked is (true|false), but seed 8 draws/,
    ],
    ["another observer", { scene: { ...scene, observer: "A. Friend" } }, /scene\.observer is A\. Friend, but/],
    ["another seed", { seed: 9 }, /but seed 9 draws/],
    ["another keyway", { fitting: { ...fitting, slotAt: 12 } }, /^handover: fitting is not what seed 8 draws/],
    ["a straightened spindle", { fitting: { ...fitting, bend: { x_mm: 0.1, y_mm: 0 } } }, /^handover: fitting is not/],
    ["parts of another place", { events: [newParts(OTHER)] }, /step 1 \(events\[0\]\), parts\.replaced, brings other/],
    [
      "other parts the second time",
      { events: [newParts(1), BACK, newParts(OTHER)] },
      /step 2 \(events\[2\]\), parts\.replaced, brings other/,
    ],
  ])("with %s is refused, and it is said which", (_, fields, words) => {
    const forged = read({ ...BEGUN, ...fields });
    expect(() => checkRun(forged)).toThrow(RunError);
    expect(() => checkRun(forged)).toThrow(words);
  });
});

describe("a run from before, which makes no promise", () => {
  const { drawnBy: _, ...before } = BEGUN;

  test("opens as it did; where its door is the seed's, nothing is said", () => {
    expect(() => checkRun(read(before))).not.toThrow();
    expect(ownDoor(read(before))).toBeUndefined();
  });

  test.each<[string, Partial<RecordedRun>]>([
    ["scene", { scene: { ...scene, height_in: 40.5 } }],
    ["tray", { fitting: { ...fitting, slotAt: 12 } }],
    ["new parts", { events: [newParts(OTHER)] }],
  ])("with a %s of its own it opens, and the check says so", (_, fields) => {
    const own = read({ ...before, ...fields });
    expect(() => checkRun(own)).not.toThrow();
    const said = ownDoor(own);
    expect(said && wordsOf(said, RUN_WORDS)).toMatch(/^The door is not the one that seed 8 draws\./);
  });

  test("the promise taken out of a file does not hide another door", () => {
    const { drawnBy: _, ...silent } = { ...BEGUN, scene: { ...scene, isReleaseBlocked: !scene.isReleaseBlocked } };
    expect(ownDoor(read(silent))).toMatchObject({ code: "own-door" });
  });

  test("the shared sample, whose door is made up, opens as it did", () => {
    expect(checkRun(parseRun(clean)).isClean).toBe(true);
    expect(ownDoor(parseRun(clean))).toMatchObject({ code: "own-door", values: { seed: 5 } });
  });
});

describe("acts on the parts that a file cannot have", () => {
  const fitted = (acts: readonly object[]) => ({
    ...{ type: "lock.fitted", acts, checks: [], isChecked: false, isFaultless: false, at_ms: 0 },
  });
  test.each<[string, object, RegExp]>([
    [
      "one that another part hinders",
      fitted([{ type: "key.driven" }]),
      /acts\[0\], key\.driven, .*: There is no key in/,
    ],
    ["too few", fitted([{ type: "body.hung" }]), /parts are still in the tray/],
    [
      "spoiled parts that are said to be fitted",
      fitted([{ type: "locker.dropped", at: "wheels" }]),
      /its acts spoil the parts/,
    ],
    ["new parts for good ones", { ...newParts(1), acts: [{ type: "body.hung" }] }, /the parts are not spoiled/],
  ])("%s: refused in words", (_, event, words) => {
    const run = parseRun({ ...JSON.parse(writeRun(BEGUN, PROFILE.id)), events: [event] });
    expect(() => checkRun(run)).toThrow(words);
    expect(() => checkRun(run)).not.toThrow(/no-key|\bapart\b|\bspent\b/);
  });
});
