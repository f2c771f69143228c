import type { Graduations } from "../lock/dial";
import type { Profile } from "../lock/profile";
import type { Chance } from "../statistics/chance";
import type { Assembly } from "./assembly";
import { type FittingSizes, sizesFor } from "./fittingSizes";
import { type KeyPlace, type KeywayPuzzle, keyPlaces } from "./geometry/keywayPuzzle";
import { standsOut } from "./geometry/spindleLength";
import { gapAfter, leadOf } from "./geometry/spindleThread";
import { FITTING } from "./trainingValues";

/** The one lock that is fitted: its sizes, and what of it only shows once it is put together. */
export interface LockToFit {
  readonly sizes: FittingSizes;
  readonly perTurn: number;
  /** Where the changing index stands off the opening index, graduations, left positive; null where there is none. */
  readonly changingIndex: Graduations | null;
  /** How far a dial is screwed in from the first hold of its thread until the right keyway lines up, in [0, one turn). */
  readonly slotAt: Graduations;
  /** Whether it has a board in place of wheels. */
  readonly isElectronic: boolean;
}

/** A lock of the shape of a profile. @param slotAt - as `LockToFit.slotAt` */
export const lockWith = (profile: Profile, slotAt: Graduations): LockToFit => ({
  sizes: sizesFor(profile),
  perTurn: profile.graduations,
  changingIndex: profile.kind === "wheel-pack" ? (profile.changing?.index ?? null) : null,
  slotAt,
  isElectronic: profile.kind === "dial-encoder",
});

/** A training lock of the shape of a profile, its keyways anywhere. */
export const lockToFit = (profile: Profile, chance: Chance): LockToFit =>
  lockWith(profile, Math.floor(chance() * profile.graduations));

const throughOf = ({ ring_mm, door_mm, plate_mm, body_mm }: FittingSizes) => ({ ring_mm, door_mm, plate_mm, body_mm });

/** How far the thread of a cam reaches, millimeters before its face; deeper than what gives a key its hold. */
const camThread_mm = ({ outLeast_mm }: FittingSizes) => FITTING.threadPastHold_mm - outLeast_mm;

/** Gap between dial and ring where the spindle's end first takes the thread of the cam, millimeters. */
export const gapAtFirstHold = ({ sizes }: LockToFit, length_mm: number): number =>
  standsOut(throughOf(sizes), 0, length_mm) + camThread_mm(sizes);

/**
 * Gap between dial and ring as it stands.
 *
 * @param dialIn - how far the dial is screwed in, graduations
 * @returns millimeters; 0 where the dial lies on the ring
 */
export function gapOf(lock: LockToFit, length_mm: number, dialIn: Graduations): number {
  const gap = gapAfter(gapAtFirstHold(lock, length_mm), dialIn / lock.perTurn, leadOf(lock.sizes.threadsPerInch));
  return Math.max(0, gap);
}

/**
 * Gap between dial and ring at a place of the rim, the dial's zero at the top.
 *
 * A dial that leans by a small angle comes closer on one side by the radius times the angle, and is as much farther off on the
 * other (plane geometry, first order). A bent spindle leans toward where it holds the dial; a body that hangs by one screw
 * leans down. A ring off center shifts in its own plane, and leaves the gap as it is.
 *
 * @param part - of a turn, to the right of the top
 * @returns millimeters, >= 0
 */
export function gapAround({ spindle, dialIn, body }: Assembly, lock: LockToFit, part: number): number {
  const angle = 2 * Math.PI * part;
  const { x_mm, y_mm } = spindle.bend;
  const bent = FITTING.bentLean * (x_mm * Math.sin(angle) + y_mm * Math.cos(angle));
  const hangs = body === "by-one" ? -FITTING.bodyLean * Math.cos(angle) : 0;
  const gap_mm = gapOf(lock, spindle.length_mm, dialIn ?? 0);
  return Math.max(0, gap_mm - lock.sizes.markRadius_mm * (bent + hangs));
}

/** How far a dial can be screwed in until it lies on the ring, graduations, >= 0. */
export const farthestIn = (lock: LockToFit, length_mm: number): Graduations =>
  Math.max(0, (gapAtFirstHold(lock, length_mm) / leadOf(lock.sizes.threadsPerInch)) * lock.perTurn);

/** How far a spindle stands out of the cam with its dial at a gap from the ring, millimeters; negative inside. */
export const standsOutAt = (lock: LockToFit, length_mm: number, gap_mm: number): number =>
  standsOut(throughOf(lock.sizes), gap_mm, length_mm);

/** The same for a lock as it is. */
export const standsOutNow = (lock: LockToFit, { spindle, dialIn }: Assembly): number =>
  standsOutAt(lock, spindle.length_mm, gapOf(lock, spindle.length_mm, dialIn ?? 0));

/** The puzzle of gap and keyway for a spindle of some length. */
export function puzzleOf(lock: LockToFit, length_mm: number): KeywayPuzzle {
  const { sizes, perTurn, slotAt } = lock;
  return {
    perTurn,
    gap_mm: gapAtFirstHold(lock, length_mm),
    lead_mm: leadOf(sizes.threadsPerInch),
    gapLimits_mm: [sizes.gapLeast_mm, sizes.gapMost_mm],
    keyways: sizes.keyways,
    toFirst: slotAt,
  };
}

/** The places in which the spindle has hold of the cam, the dial is as close as it should be, and the key goes into its keyway. */
export const goodPlaces = (lock: LockToFit, length_mm: number): readonly KeyPlace[] =>
  keyPlaces(puzzleOf(lock, length_mm)).filter(({ keyway, turnedIn }) => keyway === 0 && turnedIn >= 0);

/** The keyway that lines up with the spindle's, or null where none is within the key's reach. */
export function keywayAt({ sizes, perTurn, slotAt }: LockToFit, dialIn: Graduations): number | null {
  const step = perTurn / sizes.keyways;
  const nearest = Math.round((dialIn - slotAt) / step);
  const off = Math.abs(dialIn - slotAt - nearest * step);
  if (off > (sizes.keyReach * perTurn) / 100) return null;
  return ((nearest % sizes.keyways) + sizes.keyways) % sizes.keyways;
}
