import { type LEAF_PLACES, LEAVES_mm } from "../fitCheck";
import { FITTING } from "../trainingValues";

/** What a hand feels of a leaf that is tried between dial and ring. */
export type LeafFeel = "loose" | "drags" | "does-not-go";

/** Tries a leaf in a gap. */
export function tryLeaf(leaf_mm: number, gap_mm: number): LeafFeel {
  if (leaf_mm > gap_mm) return "does-not-go";
  return gap_mm - leaf_mm < FITTING.leafDrags_mm ? "drags" : "loose";
}

/** Where round the dial a leaf is tried. */
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
