import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Assembly, inTheTray } from "../../src/fitting/assembly";
import type { Board } from "../../src/fitting/board";
import { anyWay } from "../../src/fitting/doorToFit";
import { checkFit } from "../../src/fitting/fitCheck";
import { checksOf } from "../../src/fitting/fitChecks";
import { fitFaults } from "../../src/fitting/fitFault";
import { FIT_FAULTS, type FitFault } from "../../src/fitting/fitFaultCode";
import { goodPlaces, type LockToFit } from "../../src/fitting/fittedLock";
import { FOUND_BY } from "../../src/fitting/foundBy";
import { type Chance, seededChance } from "../../src/statistics/chance";
import {
  after,
  diagnosed,
  dialInFor,
  fitted,
  goodActs,
  trainingLock,
  wellConnected,
  wellFitted,
} from "../support/fitter";

const slotAt = fc.integer({ min: 0, max: 99 });
const faultsOf = (assembly: Assembly, lock: LockToFit) => fitFaults(fitted(assembly, lock), assembly, lock.sizes);

test("a lock fitted in order is faultless, wherever its keyways lie", () => {
  fc.assert(
    fc.property(slotAt, (slot) => {
      const lock = trainingLock(slot);
      expect(faultsOf(wellFitted(lock), lock)).toEqual([]);
      expect(faultsOf(wellConnected(lock), lock)).toEqual([]);
    }),
  );
});

/** One thing done wrong on a lock that is otherwise good. */
const SPOILED: Readonly<Record<FitFault, (good: Assembly, lock: LockToFit, part: number) => Assembly>> = {
  "ring-off-center": (good, _, part) => withRing(good, { offset: { x_mm: 0.4 + 0.3 * part, y_mm: 0.1 } }),
  "ring-loose": (good) => withRing(good, { isTight: false }),
  rubs: (good, lock, part) => ({ ...good, dialIn: dialInFor(lock, good.spindle.length_mm, 0.15 * part) }),
  "gap-wide": (good, lock, part) => ({ ...good, dialIn: dialInFor(lock, good.spindle.length_mm, 1 + part) }),
  "wrong-keyway": (good, _, part) => withKey(good, { keyway: 1 + Math.floor(part * 2.99) }),
  "key-not-seated": (good) => withKey(good, { isSeated: false }),
  "key-screw-loose": (good) => withKey(good, { screw: "loose" }),
  "key-screw-stripped": (good) => withKey(good, { screw: "stripped" }),
  "key-screw-unsecured": (good) => ({ ...good, locker: [] }),
  "end-play": (good) => ({ ...good, washers: ["flat"], dialIn: good.dialIn }),
  "dial-heavy": (good, _, part) => ({
    ...good,
    washers: part < 0.5 ? ["spring", "flat", "flat"] : ["spring", "spring", "flat"],
  }),
  "spindle-short": (good, _, part) => withLength(good, -2.5 - 3 * part),
  "spindle-long": (good, _, part) => withLength(good, 2 + 10 * part),
  "spindle-bent": (good, _, part) => ({
    ...good,
    spindle: { ...good.spindle, bend: { x_mm: 0.35 - 0.7 * part, y_mm: 0.3 + 0.3 * part } },
  }),
  "locker-astray": (good, _, part) => ({
    ...good,
    locker: [...good.locker, part < 0.5 ? "wheels" : "spindle-thread"],
  }),
  "body-by-one-screw": (good) => ({ ...good, body: "by-one" }),
  "strike-missing": (good) => ({ ...good, strike: null }),
  "strike-by-one-screw": (good) => ({ ...good, strike: { above_mm: 0, screws: "by-one" } }),
  "bolt-binds": (good, _, part) => ({ ...good, strike: { above_mm: 1.2 + 4 * part, screws: "by-all" } }),
  "cover-off": (good) => ({ ...good, hasCover: false }),
  "battery-missing": (good) => withBoard(good, { leads: null }),
  "battery-reversed": (good) => withBoard(good, { leads: "reversed", isFuseBlown: true }),
  "fuse-blown": (good) => withBoard(good, { isFuseBlown: true }),
  "cable-out": (good) => withBoard(good, { hasCable: false }),
  "encoder-not-found": (good) => withBoard(good, { foundEncoder: false }),
  "board-harmed": (good, _, part) => withBoard(good, { harm: part < 0.5 ? "dead" : "unsteady" }),
};

const withRing = (good: Assembly, ring: Partial<NonNullable<Assembly["ring"]>>): Assembly => ({
  ...good,
  ring: good.ring && { ...good.ring, ...ring },
});
const withKey = (good: Assembly, key: Partial<NonNullable<Assembly["key"]>>): Assembly => ({
  ...good,
  key: good.key && { ...good.key, ...key },
});
const withBoard = (good: Assembly, board: Partial<Board>): Assembly => ({
  ...good,
  board: good.board && { ...good.board, ...board },
});
/** A spindle that is longer by as much, its dial at the same gap: screwed in farther by as much. */
const withLength = (good: Assembly, by_mm: number): Assembly => ({
  ...good,
  spindle: { ...good.spindle, length_mm: good.spindle.length_mm + by_mm },
  dialIn: (good.dialIn ?? 0) + (by_mm * 40 * 100) / 25.4,
});

const OF_ELECTRONICS: readonly FitFault[] = FIT_FAULTS.slice(FIT_FAULTS.indexOf("battery-missing"));
/** What comes with a fault: a wider or a narrower gap may rub, and leads the wrong way round blow the fuse. */
const WITH: { readonly [fault in FitFault]?: FitFault } = { "battery-reversed": "fuse-blown" };

/** A lock without fault that can have one. Only a lock with wheels can have them glued. */
function goodFor(fault: FitFault, lock: LockToFit): Assembly {
  const isElectronic = OF_ELECTRONICS.includes(fault) || (fault !== "locker-astray" && lock.slotAt % 2 === 1);
  return isElectronic ? wellConnected(lock) : wellFitted(lock);
}

/** A good fit of any kind, spoiled: ring, strike, spindle and washers anywhere that is still good. */
function anySpoiled(fault: FitFault, lock: LockToFit, chance: Chance): Assembly {
  const either = (most: number) => most * (2 * chance() - 1);
  const { bushingPlay_mm, hole_mm, bolt_mm } = lock.sizes;
  const good = withLength(goodFor(fault, lock), either(0.15));
  const offset = anyWay([0, bushingPlay_mm], chance);
  const varied: Assembly = {
    ...good,
    ring: { offset, turned: either(3), isTight: true },
    washers: chance() < 0.5 ? ["flat", "spring"] : ["flat", "flat", "spring"],
    strike: { above_mm: either((0.9 * (hole_mm - bolt_mm)) / 2), screws: "by-all" },
  };
  expect(faultsOf(varied, lock)).toEqual([]);
  return SPOILED[fault](varied, lock, chance());
}

describe.each(FIT_FAULTS)("%s", (fault) => {
  test("is the one fault of a lock that is spoiled so", () => {
    fc.assert(
      fc.property(slotAt, fc.double({ min: 0, max: 1, noNaN: true }), (slot, part) => {
        const lock = trainingLock(slot);
        const spoiled = SPOILED[fault](goodFor(fault, lock), lock, part);
        const others = faultsOf(spoiled, lock).filter((one) => one !== fault);
        expect(faultsOf(spoiled, lock)).toContain(fault);
        expect(others.filter((one) => one !== "rubs" && one !== WITH[fault])).toEqual([]);
      }),
    );
  });

  test("is found by a technician with the instruments alone, and nothing else is, in 99 runs of 100 or more", () => {
    const runs = 500;
    const chance = seededChance(7);
    let right = 0;
    for (let run = 0; run < runs; run++) {
      const lock = trainingLock(Math.floor(100 * chance()));
      const spoiled = anySpoiled(fault, lock, chance);
      const is = new Set(faultsOf(spoiled, lock));
      const found = diagnosed(spoiled, lock, chance);
      if (is.size === found.size && [...is].every((one) => found.has(one))) right += 1;
    }
    expect(right / runs).toBeGreaterThanOrEqual(0.99);
  });

  test("is told by the checks that the table has for it, in 99 runs of 100 or more, and by no other", () => {
    const runs = 300;
    const chance = seededChance(9);
    let told = 0;
    for (let run = 0; run < runs; run++) {
      const lock = trainingLock(Math.floor(100 * chance()));
      const spoiled = anySpoiled(fault, lock, chance);
      const [those, others] = [true, false].map((is) =>
        checksOf(spoiled).filter((check) => FOUND_BY[fault].includes(check) === is),
      );
      if (diagnosed(spoiled, lock, chance, those).has(fault)) told += 1;
      expect(diagnosed(spoiled, lock, chance, others).has(fault)).toBe(false);
    }
    expect(told / runs).toBeGreaterThanOrEqual(0.99);
  });
});

test.each(["key", "nose"] as const)("a key that is not seated shows by one check alone: %s", (check) => {
  const lock = trainingLock(40);
  const unseated = after(
    inTheTray(140),
    goodActs(lock).filter(({ type }) => type !== "key.driven"),
    lock,
  );
  expect([...diagnosed(unseated, lock, seededChance(3), [check])]).toEqual(["key-not-seated"]);
  expect([...diagnosed(wellFitted(lock), lock, seededChance(3), [check])]).toEqual([]);
});

test("a look from the side reads as much too little from the left as too much from the right, and the gap makes it", () => {
  const lock = trainingLock(40);
  const assembly = wellFitted(lock);
  const fit = fitted(assembly, lock);
  const seen = (gap_mm: number) => {
    const look = checkFit("side", { fit: { ...fit, gap_mm }, assembly, lock, chance: seededChance(1) });
    return look.kind === "side" ? look.eyes.map(({ angle_deg, error }) => [angle_deg, Number(error.toFixed(2))]) : [];
  };
  // 0.6 mm * tan 30 degrees = 0.346 mm, on a radius of 40 mm 0.14 graduations of 100.
  expect(seen(0.6)).toEqual([
    [-30, -0.14],
    [30, 0.14],
  ]);
  expect(seen(0).map(([, error]) => error)).toEqual([0, 0]);
});

test("a technician finds nothing wrong with a lock that is fitted well, in 99 runs of 100 or more", () => {
  const chance = seededChance(8);
  const runs = 1000;
  let quiet = 0;
  for (let run = 0; run < runs; run++) {
    const lock = trainingLock(Math.floor(100 * chance()));
    const good = run % 2 === 0 ? wellFitted(lock) : wellConnected(lock);
    if (diagnosed(good, lock, chance).size === 0) quiet += 1;
  }
  expect(quiet / runs).toBeGreaterThanOrEqual(0.99);
});

test("there is always a place with the right keyway and the right gap, since the limits are wider than the lead", () => {
  fc.assert(
    fc.property(slotAt, fc.double({ min: 88, max: 140, noNaN: true }), (slot, length) => {
      expect(goodPlaces(trainingLock(slot), length).length).toBeGreaterThan(0);
    }),
  );
});

test("the parts go together in any order that leaves the way free, and come to the same lock", () => {
  const lock = trainingLock(30);
  const acts = goodActs(lock);
  const strikeFirst = [...acts.slice(-3, -1), ...acts.slice(0, -3), ...acts.slice(-1)];
  const ringFirst = [...acts.slice(3, 7), ...acts.slice(0, 3), ...acts.slice(7)];
  for (const order of [strikeFirst, ringFirst]) {
    expect(after(inTheTray(lock.sizes.spindle_mm), order, lock)).toEqual(wellFitted(lock));
  }
});
