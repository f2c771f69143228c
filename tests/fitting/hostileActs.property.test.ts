import fc from "fast-check";
import { describe, expect, test, vi } from "vitest";
import { type Assembly, inTheTray } from "../../src/fitting/assembly";
import { NEW_BOARD } from "../../src/fitting/board";
import { doorJoints, fitOf, jointsOf } from "../../src/fitting/fit";
import { checkFit } from "../../src/fitting/fitCheck";
import { checksOf } from "../../src/fitting/fitChecks";
import { stageOf } from "../../src/fitting/fitStage";
import { gapOf, type LockToFit, standsOutNow } from "../../src/fitting/fittedLock";
import type { FittingAct } from "../../src/fitting/fittingAct";
import { CENTERED } from "../../src/fitting/offCenter";
import { putTogether } from "../../src/fitting/putTogether";
import { nextStep } from "../../src/fitting/teaching/nextStep";
import { FITTING } from "../../src/fitting/trainingValues";
import { seededChance } from "../../src/statistics/chance";
import { goodActs, trainingLock } from "../support/fitter";
import { hostileFittingAct, unfinite } from "../support/hostileActs";

// A loaded machine must not make a property fail.
vi.setConfig({ testTimeout: 120_000 });

const WHEELS = trainingLock(30);
const ELECTRONIC: LockToFit = { ...WHEELS, isElectronic: true };
const trayOf = (lock: LockToFit) => inTheTray(lock.sizes.spindle_mm, CENTERED, lock.isElectronic ? NEW_BOARD : null);

/** Every figure that is had of a lock. */
function figuresOf(now: Assembly, lock: LockToFit) {
  const through = { gap: gapOf(lock, now.spindle.length_mm, now.dialIn ?? 0), out: standsOutNow(lock, now) };
  const fit = fitOf(now, lock);
  if (fit === null) return { now, through };
  const seen = checksOf(now).map((kind) => checkFit(kind, { fit, assembly: now, lock, chance: seededChance(1) }));
  return { now, through, fit, seen, joints: [jointsOf(fit, lock.perTurn), doorJoints(fit, lock.perTurn)] };
}

/** What no lock can be. */
const IMPOSSIBLE: Readonly<Record<string, (now: Assembly, lock: LockToFit) => boolean>> = {
  "thread locker twice in a place": ({ locker }) => new Set(locker).size < locker.length,
  "a key without a dial": ({ key, dialIn }) => key !== null && dialIn === null,
  "a dial without a body": ({ dialIn, body }) => dialIn !== null && body === null,
  "a dial screwed out of its thread": ({ dialIn }) => dialIn !== null && dialIn < 0,
  "a cover without a body": ({ hasCover, body }) => hasCover && body === null,
  "spares that were never there": ({ spares }) => spares < 0 || spares > FITTING.spares,
  "a spindle of no length": ({ spindle }) => spindle.length_mm <= 0,
  "a spindle longer than it came": ({ spindle }, { sizes }) => spindle.length_mm > sizes.spindle_mm,
  "together, and no fit": (now, lock) => stageOf(now, lock) === "coupled" && fitOf(now, lock) === null,
};

/** What is wrong with a lock as a thing: figures that are none, parts that cannot be so. */
const impossible = (now: Assembly, lock: LockToFit): readonly string[] => [
  ...unfinite(figuresOf(now, lock)),
  ...Object.keys(IMPOSSIBLE).filter((what) => IMPOSSIBLE[what]?.(now, lock)),
];

describe.each([
  ["wheels", WHEELS],
  ["a board", ELECTRONIC],
])("a lock with %s", (_, lock) => {
  test("stays a lock, with figures that are numbers, after any acts", () => {
    const good = fc.nat({ max: 14 }).map((some) => goodActs(lock).slice(0, some));
    fc.assert(
      fc.property(good, fc.array(hostileFittingAct, { maxLength: 40 }), (wise, acts) => {
        let now = trayOf(lock);
        for (const act of [...wise, ...acts]) {
          now = putTogether(now, act, lock).assembly;
          expect(impossible(now, lock)).toEqual([]);
          expect(() => nextStep(now, lock, [])).not.toThrow();
        }
      }),
      { numRuns: 300 },
    );
  });

  test("stays one after 100,000 acts, and is no larger for them", () => {
    const acts = fc.sample(hostileFittingAct, { numRuns: 5_000, seed: 11 });
    const drop: FittingAct = { type: "locker.dropped", at: "key-screw" };
    let now = trayOf(lock);
    for (let k = 0; k < 100_000; k++) {
      now = putTogether(now, k % 3 === 0 ? drop : (acts[(k * 7) % acts.length] ?? drop), lock).assembly;
      if (k % 2_000 === 0) expect(impossible(now, lock)).toEqual([]);
    }
    expect(JSON.stringify(now).length).toBeLessThan(1000);
  });
});
