import { lockToFit } from "../fitting/fittedLock";
import { TRAINING_SIZES } from "../fitting/fittingSizes";
import { playAfterUse } from "../fitting/keySeat";
import type { Profile, Range } from "../lock/profile";
import { type Chance, seededChance } from "../statistics/chance";
import { setOf } from "./batteries";
import type { Instructions, LastRecord } from "./papers";
import { freshLock, type LockKind, lockKindOf, type ServicedLock } from "./servicedLock";
import { SERVICE } from "./serviceValues";
import { CONDITIONS, type Condition } from "./wrongThing";

/** One job: the lock as it really is, and its papers. */
export interface VisitTask {
  readonly lock: ServicedLock;
  readonly instructions: Instructions;
  readonly lastRecord: LastRecord;
  /** What the years did to the lock; none where nothing is wrong. */
  readonly conditions: readonly Condition[];
}

const between = ([least, most]: Range, chance: Chance) => least + (most - least) * chance();
const pick = <One>(of: readonly [One, ...One[]], chance: Chance): One => of[Math.floor(chance() * of.length)] ?? of[0];

function drawInstructions(chance: Chance): Instructions {
  const torque_Nm = pick(SERVICE.torques_Nm, chance);
  return {
    lubrication: { bearing: pick([null, "grease", "oil"], chance), wheels: null, bolt: pick([null, "grease"], chance) },
    torque_Nm: [torque_Nm - SERVICE.torqueBy_Nm, torque_Nm + SERVICE.torqueBy_Nm],
    lostMotionMost: pick(SERVICE.lostMotionMosts, chance),
    aheadMost: SERVICE.aheadMost,
    ringOffMost_mm: SERVICE.ringOffMost_mm,
    batteries: {
      type: "alkaline",
      atLeast_V: pick(SERVICE.atLeasts_V, chance),
      months: pick(SERVICE.batteryMonths, chance),
    },
    serviceMonths: pick(SERVICE.serviceMonths, chance),
  };
}

/** Nothing, one thing or two. */
function drawConditions(kind: LockKind, chance: Chance): readonly Condition[] {
  const many = pick(SERVICE.conditionCounts, chance);
  const able = CONDITIONS.filter((one) => kind === "electronic" || !one.startsWith("batteries"));
  const order = able.map((one) => ({ one, by: chance() })).sort((a, b) => a.by - b.by);
  return order.slice(0, many).map(({ one }) => one);
}

type Aging = (lock: ServicedLock, chance: Chance, instructions: Instructions) => ServicedLock;

const wornBy = (lock: ServicedLock, turns: number): number => {
  const { playFresh, playGrows, playMost } = lock.toFit.sizes;
  return playAfterUse(playFresh, turns, playGrows, playMost) - playFresh;
};

const AGING: Readonly<Record<Condition, Aging>> = {
  "key-loose": (lock, chance) => {
    const { key } = lock.assembly;
    const loose = key === null ? null : { ...key, screw: "loose" as const };
    const worn = Math.max(lock.worn, wornBy(lock, between(SERVICE.loosened_turns, chance)));
    return { ...lock, worn, assembly: { ...lock.assembly, key: loose } };
  },
  "key-worn": (lock, chance) => ({ ...lock, worn: wornBy(lock, between(SERVICE.worn_turns, chance)) }),
  "ring-dirty": (lock, chance) => ({ ...lock, soil: { ...lock.soil, dirt: between(SERVICE.heldBack, chance) } }),
  "bearing-dry": (lock, chance) => ({ ...lock, soil: { ...lock.soil, dryBearing: between(SERVICE.heldBack, chance) } }),
  "ring-painted": (lock, chance) => ({ ...lock, soil: { ...lock.soil, paint: between(SERVICE.heldBack, chance) } }),
  "ring-off-center": (lock, chance) => {
    const [angle, off_mm] = [2 * Math.PI * chance(), between(SERVICE.offCenter_mm, chance)];
    const offset = { x_mm: off_mm * Math.cos(angle), y_mm: off_mm * Math.sin(angle) };
    return { ...lock, assembly: { ...lock.assembly, ring: { offset, turned: 0, isTight: true } } };
  },
  "bolt-drags": (lock) => ({ ...lock, boltDrags: true }),
  "batteries-low": (lock, chance) => {
    const used = between(SERVICE.lowUsed, chance);
    return { ...lock, cells: lock.cells.map((cell) => ({ ...cell, used })) };
  },
  "batteries-old": (lock, chance, { batteries }) => {
    const months = batteries.months + 1 + Math.floor(chance() * SERVICE.overAge_months);
    return { ...lock, cells: lock.cells.map((cell) => ({ ...cell, months })) };
  },
};

/** One job, the same for the same seed and lock. */
export function drawVisit(profile: Profile, seed: number): VisitTask {
  const chance = seededChance(seed);
  const kind = lockKindOf(profile);
  const instructions = drawInstructions(chance);
  const conditions = drawConditions(kind, chance);
  const fresh = freshLock(kind, lockToFit(profile, chance));
  const months = 1 + Math.floor(chance() * (instructions.batteries.months - 1));
  const cell = { type: instructions.batteries.type, months, used: between(SERVICE.goodUsed, chance) };
  const inUse = kind === "electronic" ? { ...fresh, cells: setOf(cell) } : fresh;
  const lock = conditions.reduce((now, one) => AGING[one](now, chance, instructions), inUse);
  return {
    lock,
    instructions,
    conditions,
    lastRecord: {
      monthsAgo: instructions.serviceMonths + Math.floor(chance() * SERVICE.late_months),
      lostMotion: TRAINING_SIZES.playFresh,
      ahead: SERVICE.lastAhead,
    },
  };
}
