import { type Graduations, reading, wrap } from "../lock/dial";
import type { TrainSpec } from "../lock/train/lockTrain";
import type { Runout } from "../lock/train/runout";
import type { Assembly, KeyIn } from "./assembly";
import { type SelfCheck, selfCheckOf } from "./board";
import { gapOf, type LockToFit, standsOutNow } from "./fittedLock";
import type { FittingSizes } from "./fittingSizes";
import { spindleEnd } from "./geometry/spindleLength";
import { bindsBy } from "./geometry/strikeFit";
import { ridingArc } from "./keySeat";
import { faceOf, offsetOf, readingError, runoutOf } from "./offCenter";
import { FITTING } from "./trainingValues";
import { stackFit } from "./washerStack";

/** Where dial and ring touch. */
export type Rub = "nowhere" | "all-round" | "at-one-side" | "when-pushed";

/** A dial that is fitted: what the hand feels of it, and what the lock will make of each number. */
export interface Fit {
  readonly gap_mm: number;
  readonly endPlay_mm: number;
  /** Of the spindle, out of the cam's face, millimeters; negative inside. */
  readonly standsOut_mm: number;
  readonly rub: Rub;
  /** How far the opening index reads too much wherever the dial stands: its ring turned or off the axis, graduations. */
  readonly openingReads: Graduations;
  /** The same at the changing index; null where there is none. */
  readonly changingReads: Graduations | null;
  /** What a key in another keyway puts every number off, graduations. */
  readonly numbersOff: Graduations;
  /** How far the hand gets ahead of the dial, graduations: by what the washers press, and all in all. */
  readonly washerDrag: Graduations;
  readonly drag: Graduations;
  /** How much farther while the key is against the lever, and for how long; graduations each. */
  readonly onceATurn: { readonly drag: Graduations; readonly arc: Graduations };
  /** What an index reads too much as the dial goes round; of no size where the spindle is straight. */
  readonly runout: Runout;
  /** Play between dial and cam as fitted, graduations. */
  readonly lostMotion: Graduations;
  /** How fast it grows, graduations in a thousand turns. */
  readonly playGrows: Graduations;
  /** How far the bolt runs on the edge of its strike, millimeters, and how much farther the hand gets ahead as it draws it. */
  readonly bolt_mm: number;
  readonly binding: Graduations;
  /** Whether a drop of thread locker holds wheels that must turn. */
  readonly isGlued: boolean;
  /** Of an electronic lock's board; in a lock with wheels nothing can fail it. */
  readonly selfCheck: SelfCheck;
}

function rubOf({ ring, spindle }: Assembly, gap_mm: number, endPlay_mm: number, sizes: FittingSizes): Rub {
  if (gap_mm < sizes.gapLeast_mm) return "all-round";
  const off_mm = (ring === null ? 0 : offsetOf(ring.offset)) + offsetOf(spindle.bend);
  if (off_mm > sizes.rimRoom_mm) return "at-one-side";
  return gap_mm - endPlay_mm < 0 ? "when-pushed" : "nowhere";
}

function playOf(key: KeyIn, standsOut_mm: number, sizes: FittingSizes) {
  const hasHold = spindleEnd(standsOut_mm, [sizes.outLeast_mm, sizes.outMost_mm]) !== "too-short";
  if (!hasHold || key.screw === "stripped") return { lostMotion: sizes.playMost, playGrows: 0 };
  const lostMotion = sizes.playFresh + (key.isSeated ? 0 : FITTING.unseatedPlay);
  return { lostMotion, playGrows: key.isSeated && key.screw === "firm" ? 0 : sizes.playGrows };
}

/**
 * What a lock that is put together comes to.
 *
 * @returns null where it is not together yet: dial, ring, body and key make a fit
 */
export function fitOf(assembly: Assembly, lock: LockToFit): Fit | null {
  const { ring, body, key, dialIn, spindle, washers, strike, locker, board } = assembly;
  if (ring === null || body === null || key === null || dialIn === null) return null;
  const { sizes, perTurn, changingIndex } = lock;
  const gap_mm = gapOf(lock, spindle.length_mm, dialIn);
  const standsOut_mm = standsOutNow(lock, assembly);
  const { endPlay_mm, friction_N } = stackFit(washers, sizes);
  const washerDrag = friction_N / sizes.gripGive_N;
  const rub = rubOf(assembly, gap_mm, endPlay_mm, sizes);
  const face = faceOf(perTurn, sizes.markRadius_mm, ring.offset);
  const bolt_mm = strike === null ? 0 : bindsBy({ ...sizes, above_mm: strike.above_mm });
  const reads = (place: Graduations) => readingError(face, place, 0) - ring.turned;
  return {
    gap_mm,
    endPlay_mm,
    standsOut_mm,
    rub,
    openingReads: reads(0),
    changingReads: changingIndex === null ? null : reads(-changingIndex),
    numbersOff: (key.keyway * perTurn) / sizes.keyways,
    washerDrag,
    drag: washerDrag + (rub === "nowhere" || rub === "when-pushed" ? 0 : FITTING.rubDrag),
    onceATurn: key.isSeated ? { drag: 0, arc: 0 } : { drag: FITTING.ridingDrag, arc: ridingArc(sizes, perTurn) },
    runout: runoutOf(spindle.bend, sizes.markRadius_mm, perTurn),
    ...playOf(key, standsOut_mm, sizes),
    bolt_mm,
    binding: FITTING.bindsAMm * bolt_mm,
    isGlued: locker.includes("wheels"),
    selfCheck: board === null ? "passes" : selfCheckOf(board),
  };
}

/** The same decimals as an address has. */
const hundredths = (size: Graduations) => Math.round(size * 100) / 100 + 0;

/**
 * The joints of a lock so fitted, as a lock train takes them, to a hundredth of a graduation.
 *
 * An index that reads too much stands right of its place; a key in another keyway puts the dial on the cam to the right of
 * where it belongs, which reads too little. Place and runout of the dial are then told by the cam, which stands farther left
 * by as much. A key that is not seated is against the lever with the gate opposite to it: half a turn from zero.
 *
 * Lost motion is as it was fitted. What grows of it with use (`playGrows`) is left out: a whole handover turns the dial some
 * hundred times, which is a tenth of what a thousand turns add, less than a hand's own spread.
 */
export function jointsOf(fit: Fit, perTurn: number): Omit<TrainSpec, "start"> {
  const { openingReads, numbersOff, lostMotion, drag, onceATurn, runout } = fit;
  const fromCam = (at: Graduations) => reading(hundredths(numbersOff + at), perTurn);
  const catching = { at: fromCam(perTurn / 2), arc: hundredths(onceATurn.arc), drag: onceATurn.drag };
  return {
    indexOffset: hundredths(wrap(numbersOff - openingReads, perTurn)),
    lostMotion: hundredths(lostMotion),
    drag: hundredths(drag),
    ...(catching.arc > 0 ? { catching } : {}),
    ...(runout.size > 0 ? { runout: { size: hundredths(runout.size), at: fromCam(runout.at) } } : {}),
  };
}

/**
 * The joints of a lock so fitted as they are at the door, where ring and key are told apart: turning the ring never makes up
 * for a key in another keyway.
 *
 * `jointsOf` has both in one, as an address has: no index reads otherwise for that. A bolt that binds is at the door alone.
 */
export const doorJoints = (fit: Fit, perTurn: number): Omit<TrainSpec, "start"> => ({
  // The key is as far off on the cam as the cam is off the dial: it meets the lever at the same place of the dial.
  ...jointsOf({ ...fit, numbersOff: 0 }, perTurn),
  keyedOff: fit.numbersOff,
  ...(fit.binding > 0 && { binding: hundredths(fit.binding) }),
});
