import type { Graduations } from "../lock/dial";
import type { Board } from "./board";
import type { KeyScrew } from "./keySeat";
import { CENTERED, type Offset } from "./offCenter";
import { FITTING } from "./trainingValues";
import type { Washer } from "./washerStack";

/** How firmly something is screwed on. */
export type Screwed = "by-one" | "by-all";

/** The ring on the door. */
export interface RingOn {
  /** Its middle off the axis of the spindle. */
  readonly offset: Offset;
  /** How far it is turned on the door, graduations, left positive. */
  readonly turned: Graduations;
  readonly isTight: boolean;
}

/** The spindle on its dial. */
export interface Spindle {
  /** From the dial's back, millimeters. */
  readonly length_mm: number;
  /** Whether its end is as it came, as the saw left it, or filed and freed of burr. */
  readonly end: "as-delivered" | "sawn" | "dressed";
  /** Where it is marked at the cam's face, from the dial's back, millimeters; null where it is not. */
  readonly mark_mm: number | null;
  /** Whether the thread in it that holds the key's screw is stripped. */
  readonly isStripped: boolean;
  /** Where a bend of it holds the middle of the dial off the axis, as it lies with zero at the top. */
  readonly bend: Offset;
}

/** The key that couples spindle and cam. */
export interface KeyIn {
  /** Which keyway of the cam, from 0, the right one, on. */
  readonly keyway: number;
  readonly isSeated: boolean;
  readonly screw: KeyScrew;
}

/** Where a drop of thread locker went. */
export type LockerPlace = "key-screw" | "spindle-thread" | "wheels";

/** A lock on its door, as far as it is put together. Nothing in it is a judgment. */
export interface Assembly {
  readonly ring: RingOn | null;
  readonly spindle: Spindle;
  /** Spindles left in the tray. */
  readonly spares: number;
  /** From the cam on. */
  readonly washers: readonly Washer[];
  /** The lock's body on its plate; null while it lies in the tray. */
  readonly body: Screwed | null;
  /** How far the dial is screwed into the cam from where its thread first holds, graduations; null while it is out. */
  readonly dialIn: Graduations | null;
  readonly key: KeyIn | null;
  readonly locker: readonly LockerPlace[];
  readonly strike: { readonly above_mm: number; readonly screws: Screwed } | null;
  readonly hasCover: boolean;
  /** Of an electronic lock; null in one that has wheels. */
  readonly board: Board | null;
}

/** A spindle as it comes. @param length_mm - from the dial's back, millimeters @param bend - of one that was dropped */
export const newSpindle = (length_mm: number, bend = CENTERED): Spindle => ({
  length_mm,
  end: "as-delivered",
  mark_mm: null,
  isStripped: false,
  bend,
});

/**
 * A door prepared, all parts in the tray; the spare spindle is straight.
 *
 * @param spindle_mm - length of a spindle as it comes, millimeters
 * @param bend - of the first spindle
 * @param board - of an electronic lock
 */
export const inTheTray = (spindle_mm: number, bend = CENTERED, board: Board | null = null): Assembly => ({
  ring: null,
  spindle: newSpindle(spindle_mm, bend),
  spares: FITTING.spares,
  washers: [],
  body: null,
  dialIn: null,
  key: null,
  locker: [],
  strike: null,
  hasCover: false,
  board,
});

/** Thread locker on the spindle sets for good once the dial is in. */
export const isGluedIn = ({ dialIn, locker }: Assembly): boolean =>
  dialIn !== null && locker.includes("spindle-thread");
