import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Assembly, inTheTray } from "../../src/fitting/assembly";
import { type Board, NEW_BOARD } from "../../src/fitting/board";
import { fitFaults } from "../../src/fitting/fitFault";
import { stageOf } from "../../src/fitting/fitStage";
import { gapOf, goodPlaces, type LockToFit } from "../../src/fitting/fittedLock";
import type { BoardTouch, FittingAct } from "../../src/fitting/fittingAct";
import { CENTERED } from "../../src/fitting/offCenter";
import { putTogether } from "../../src/fitting/putTogether";
import { after, ELECTRONIC_ACTS, fitted, goodActs, trainingLock } from "../support/fitter";

const millimeters = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const plain = (...types: readonly FittingAct["type"][]) =>
  fc.constantFrom(...types).map((type) => ({ type }) as FittingAct);
const part = millimeters(0, 0.999);
const touch = (...types: readonly Exclude<BoardTouch["type"], "battery.connected">[]) =>
  fc.record({ type: fc.constantFrom(...types), luck: part });
const lock = trainingLock(30);
const [, , , , , cut, , screwed] = goodActs(lock);
if (cut === undefined || screwed === undefined) throw new Error("the good acts begin otherwise");

/** Any act, wise or not; some of those a good fit is made of, so that locks get far. */
const act: fc.Arbitrary<FittingAct> = fc.oneof(
  fc.record({
    type: fc.constant("ring.put" as const),
    offset: fc.record({ x_mm: millimeters(-1.2, 1.2), y_mm: millimeters(-1.2, 1.2) }),
    turned: millimeters(-3, 3),
  }),
  fc.record({ type: fc.constant("ring.turned" as const), by: millimeters(-3, 3) }),
  fc.record({ type: fc.constant("spindle.cut" as const), length_mm: millimeters(70, 130) }),
  fc.record({
    type: fc.constant("washers.put" as const),
    washers: fc.array(fc.constantFrom("flat" as const, "spring" as const), { maxLength: 5 }),
  }),
  fc.record({ type: fc.constant("dial.screwed" as const), by: fc.integer({ min: -400, max: 2000 }) }),
  fc.record({ type: fc.constant("key.screwed" as const), torque_Nm: millimeters(0, 1.2) }),
  fc.record({
    type: fc.constant("locker.dropped" as const),
    at: fc.constantFrom("key-screw" as const, "spindle-thread" as const, "wheels" as const),
  }),
  fc.record({ type: fc.constant("strike.hung" as const), above_mm: millimeters(-4, 4) }),
  fc.record({ type: fc.constant("strike.moved" as const), by_mm: millimeters(-4, 4) }),
  plain("spindle.marked", "ring.tightened", "ring.loosened", "ring.taken", "spindle.dressed", "spindle.replaced"),
  plain("body.hung", "body.tightened", "body.taken", "dial.taken", "strike.tightened", "strike.loosened"),
  plain("key.put", "key.driven", "key.taken", "cover.put", "cover.taken"),
  fc.constantFrom(cut, screwed),
  touch("cable.plugged", "cable.pulled", "battery.disconnected", "fuse.replaced", "board.replaced"),
  fc.record({
    type: fc.constant("battery.connected" as const),
    leads: fc.constantFrom("right" as const, "reversed" as const),
    luck: part,
  }),
  plain("strap.put", "strap.taken"),
);

/** A lock that is worked on, one with wheels or an electronic one. */
const worked = (acts: readonly FittingAct[], board: Board | null): Assembly =>
  acts.reduce<Assembly>(
    (now, one) => putTogether(now, one, lock).assembly,
    inTheTray(lock.sizes.spindle_mm, CENTERED, board),
  );

/** Whether a fit with this spindle, the dial as close as it may be, leaves the key without a hold. */
function isTooShort(length_mm: number): boolean {
  if (goodPlaces(lock, length_mm).length === 0) return true;
  const bare = inTheTray(length_mm);
  const whole = after(bare, goodActs(lock, length_mm), lock);
  return fitFaults(fitted(whole, lock), whole, lock.sizes).includes("spindle-short");
}

/** Takes all apart that comes apart, and fits it again; a spindle that is spoiled is replaced. */
function mended(now: Assembly, of: LockToFit): Assembly {
  const apart: readonly FittingAct[] = [
    { type: "cover.taken" },
    { type: "key.taken" },
    { type: "dial.taken" },
    { type: "body.taken" },
    { type: "ring.loosened" },
    { type: "ring.taken" },
    { type: "spindle.dressed" },
    { type: "strap.put" },
    { type: "battery.disconnected", luck: 0 },
    { type: "cable.pulled", luck: 0 },
    { type: "board.replaced", luck: 0 },
  ];
  const bare = apart.reduce((one, step) => putTogether(one, step, of).assembly, now);
  const { spindle, locker } = bare;
  const isSpoiled = spindle.isStripped || locker.includes("spindle-thread") || isTooShort(spindle.length_mm);
  const ready = isSpoiled ? after(bare, [{ type: "spindle.replaced" }], of) : bare;
  const strike: readonly FittingAct[] =
    ready.strike === null
      ? []
      : [
          { type: "strike.loosened" },
          { type: "strike.moved", by_mm: -ready.strike.above_mm },
          { type: "strike.tightened" },
        ];
  const fits = goodActs(of, ready.spindle.length_mm).filter(
    ({ type }) => (type !== "strike.hung" && type !== "strike.tightened") || ready.strike === null,
  );
  const connected = ready.board === null ? [] : ELECTRONIC_ACTS;
  const beforeCover = [...fits.filter(({ type }) => type !== "cover.put"), ...strike, ...connected];
  return after(ready, [...beforeCover, { type: "cover.put" }], of);
}

/** Whether it does, with all that is in the tray. */
function comesGood(now: Assembly): boolean {
  try {
    const again = mended(now, lock);
    return fitFaults(fitted(again, lock), again, lock.sizes).length === 0;
  } catch {
    return false;
  }
}

describe("parts that are put together in any order", () => {
  const acts = fc.array(act, { maxLength: 60 });
  const board = fc.constantFrom(null, NEW_BOARD);

  test("always come to a state with a name; what cannot be done changes nothing", () => {
    fc.assert(
      fc.property(acts, act, board, (before, one, of) => {
        const now = worked(before, of);
        expect(["apart", "coupled", "closed", "spent"]).toContain(stageOf(now, lock));
        const { assembly, hindrance } = putTogether(now, one, lock);
        if (hindrance !== null) expect(assembly).toBe(now);
      }),
      { numRuns: 500 },
    );
  });

  test("never pass through each other: the dial does not go through its ring, nor a cover over a spindle", () => {
    fc.assert(
      fc.property(acts, (all) => {
        const { dialIn, spindle, spares } = worked(all, null);
        if (dialIn !== null) expect(gapOf(lock, spindle.length_mm, dialIn)).toBeGreaterThanOrEqual(0);
        expect(spares).toBeGreaterThanOrEqual(0);
        expect(spindle.length_mm).toBeLessThanOrEqual(lock.sizes.spindle_mm);
      }),
      { numRuns: 500 },
    );
  });

  test("make a faultless lock after all, unless they are spent", () => {
    let mendedOnes = 0;
    let spentOnes = 0;
    fc.assert(
      fc.property(acts, board, (all, of) => {
        const now = worked(all, of);
        const isMended = comesGood(now);
        if (isMended) mendedOnes += 1;
        else spentOnes += 1;
        expect(stageOf(now, lock) === "spent").toBe(!isMended);
      }),
      { numRuns: 1000 },
    );
    // Both kinds must have been met, or the law above says nothing of one of them.
    expect(Math.min(mendedOnes, spentOnes)).toBeGreaterThan(20);
  });
});
