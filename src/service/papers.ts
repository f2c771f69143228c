import type { Graduations } from "../lock/dial";
import type { CellType } from "./batteries";
import type { LockKind, LubricatedPlace } from "./servicedLock";

/** Sections of the maker's written instructions; a wheel pack has no batteries. */
export const SECTIONS = ["safety", "lubrication", "limits", "batteries", "proof"] as const;
/** One of them. */
export type Section = (typeof SECTIONS)[number];

/** The sections of a lock's instructions. */
export const sectionsOf = (kind: LockKind): readonly Section[] =>
  SECTIONS.filter((section) => section !== "batteries" || kind === "electronic");

/** What can be put on a place. */
export const LUBRICANTS = ["grease", "oil", "graphite"] as const;
/** One of them. */
export type Lubricant = (typeof LUBRICANTS)[number];

/** The figures in the maker's written instructions; invented, and different from lock to lock. */
export interface Instructions {
  /** What goes where; null where the place must stay dry. */
  readonly lubrication: Readonly<Record<LubricatedPlace, Lubricant | null>>;
  /** For the key's screw, lowest and highest. */
  readonly torque_Nm: readonly [least: number, most: number];
  /** Most lost motion before the key is replaced. */
  readonly lostMotionMost: Graduations;
  /** Most that the hand may get ahead of the dial. */
  readonly aheadMost: Graduations;
  /** Most that the ring may be off the axis, millimeters. */
  readonly ringOffMost_mm: number;
  readonly batteries: { readonly type: CellType; readonly atLeast_V: number; readonly months: number };
  readonly serviceMonths: number;
}

/** What was written down at the last service. */
export interface LastRecord {
  readonly monthsAgo: number;
  readonly lostMotion: Graduations;
  readonly ahead: Graduations;
}
