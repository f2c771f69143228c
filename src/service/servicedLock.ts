import type { Assembly } from "../fitting/assembly";
import { type Fit, fitOf } from "../fitting/fit";
import { goodPlaces, type LockToFit } from "../fitting/fittedLock";
import { spindleLength } from "../fitting/geometry/spindleLength";
import type { Graduations } from "../lock/dial";
import type { Profile } from "../lock/profile";
import { type Cell, setOf } from "./batteries";

/** What opens the door. */
export type LockKind = "wheel-pack" | "electronic";

/** The kind of a lock: one with a dial encoder is electronic. */
export const lockKindOf = ({ kind }: Profile): LockKind => (kind === "wheel-pack" ? "wheel-pack" : "electronic");

/** Where a lubricant can go. */
export const LUBRICATED_PLACES = ["bearing", "wheels", "bolt"] as const;
/** One of them. */
export type LubricatedPlace = (typeof LUBRICATED_PLACES)[number];

/** What holds the dial back beyond what its washers do, by where it comes from; graduations that the hand gets ahead. */
export interface Soil {
  readonly dirt: Graduations;
  readonly dryBearing: Graduations;
  readonly paint: Graduations;
}

/** A lock that has been in use for years, as it really is. Nothing in it is a judgment. */
export interface ServicedLock {
  readonly kind: LockKind;
  readonly toFit: LockToFit;
  readonly assembly: Assembly;
  readonly soil: Soil;
  /** Play that use has added to what the key had when it was fitted, graduations. */
  readonly worn: Graduations;
  /** Whether the bolt is heavy to draw. */
  readonly boltDrags: boolean;
  /** None in a wheel pack. */
  readonly cells: readonly Cell[];
  /** Where a lubricant is that gums up in time. */
  readonly gummed: readonly LubricatedPlace[];
}

/** A lock as it was fitted: nothing wrong, new batteries, the cover on. */
export function freshLock(kind: LockKind, toFit: LockToFit): ServicedLock {
  const { sizes } = toFit;
  const length_mm = spindleLength(sizes, (sizes.gapLeast_mm + sizes.gapMost_mm) / 2);
  const [place] = goodPlaces(toFit, length_mm);
  if (place === undefined) throw new Error("no keyway has a place within the limits of the gap");
  return {
    kind,
    toFit,
    assembly: {
      ring: { offset: { x_mm: 0, y_mm: 0 }, turned: 0, isTight: true },
      spindle: { length_mm, end: "dressed", mark_mm: null, isStripped: false, bend: { x_mm: 0, y_mm: 0 } },
      spares: 0,
      washers: ["flat", "flat", "spring"],
      body: "by-all",
      dialIn: place.turnedIn,
      key: { keyway: 0, isSeated: true, screw: "firm" },
      locker: ["key-screw"],
      strike: { above_mm: 0, screws: "by-all" },
      hasCover: true,
      board: null,
    },
    soil: { dirt: 0, dryBearing: 0, paint: 0 },
    worn: 0,
    boltDrags: false,
    cells: kind === "electronic" ? setOf({ type: "alkaline", months: 0, used: 0 }) : [],
    gummed: [],
  };
}

/** What the fit has become in use. */
export function wornFit({ assembly, toFit, soil, worn }: ServicedLock): Fit {
  const fit = fitOf(assembly, toFit);
  if (fit === null) throw new Error("a lock in service is together");
  return {
    ...fit,
    rub: soil.paint > 0 && fit.rub === "nowhere" ? "at-one-side" : fit.rub,
    drag: fit.drag + soil.dirt + soil.dryBearing + soil.paint,
    lostMotion: fit.lostMotion + worn,
  };
}
