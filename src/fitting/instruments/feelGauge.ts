import { exact } from "../../lock/exact";
import { FITTING } from "../trainingValues";

const { leafStep_mm, leafMost_mm, leafDrags_mm } = FITTING;

/** The leaves of a feel gauge, thinnest first, millimeters. */
export const LEAVES_mm: readonly number[] = Array.from({ length: Math.round(leafMost_mm / leafStep_mm) }, (_, k) =>
  exact((k + 1) * leafStep_mm),
);

/** What a hand feels of a leaf that is tried between dial and ring. */
export type LeafFeel = "loose" | "drags" | "does-not-go";

/** Tries a leaf in a gap. */
export function tryLeaf(leaf_mm: number, gap_mm: number): LeafFeel {
  if (leaf_mm > gap_mm) return "does-not-go";
  return gap_mm - leaf_mm < leafDrags_mm ? "drags" : "loose";
}

/** The thickest leaf that goes into a gap, millimeters; 0 where none does. */
export const thickestLeaf = (gap_mm: number): number => LEAVES_mm.findLast((leaf_mm) => leaf_mm <= gap_mm) ?? 0;

/** Where round the dial a leaf is tried, as parts of a turn to the right of the top. */
export const LEAF_PLACES = (["top", "right", "bottom", "left"] as const).map((name, k, { length }) => ({
  name,
  part: k / length,
}));

/** A place of those. */
export type LeafPlace = (typeof LEAF_PLACES)[number]["name"];

/** A leaf that was tried, and where. */
export interface LeafTry {
  readonly place: LeafPlace;
  readonly leaf_mm: number;
  readonly feel: LeafFeel;
}

/**
 * What tries at a place tell of the gap there.
 *
 * @returns the thickest leaf that went in, and the thinnest that did not, millimeters; null for none
 */
export function bracketAt(place: LeafPlace, tries: readonly LeafTry[]) {
  const here = tries.filter((one) => one.place === place);
  const leaves = (isIn: boolean) =>
    here.filter(({ feel }) => (feel !== "does-not-go") === isIn).map((one) => one.leaf_mm);
  const [went, stayed] = [leaves(true), leaves(false)];
  return {
    wentIn_mm: went.length === 0 ? null : Math.max(...went),
    stayedOut_mm: stayed.length === 0 ? null : Math.min(...stayed),
  };
}

/**
 * Whether the gap at a place is found: no leaf of the gauge lies between the thickest that went in and the thinnest that did
 * not. A gap that takes the thickest of all, or not even the thinnest, is found by that one.
 */
export function isGapFound(place: LeafPlace, tries: readonly LeafTry[]): boolean {
  const { wentIn_mm, stayedOut_mm } = bracketAt(place, tries);
  if (stayedOut_mm === null) return wentIn_mm === LEAVES_mm.at(-1);
  // Of no leaf that went in the place is -1, just before the first.
  return LEAVES_mm.indexOf(stayedOut_mm) === LEAVES_mm.indexOf(wentIn_mm ?? 0) + 1;
}
