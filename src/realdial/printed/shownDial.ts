import type { Sighting } from "../motion/sighting";
import type { Point } from "../numerics/homography";
import { INNER_RING, MARKER_SIDE, MARKERS, OUTER_RING } from "../sheet/design";
import type { Seating } from "./seating";
import { project, type View } from "./view";

/** What is found in a picture, in its pixels, to be drawn over it. */
export interface ShownDial {
  /** Upper left, upper right, lower right, lower left of the sheet as printed; corners in that order too. None of a dial without a sheet. */
  readonly markers: readonly { readonly corners: readonly Point[]; readonly isSeen: boolean }[];
  /** The disc's outer and inner ring, or the rim of a dial, each a closed line. */
  readonly rings: readonly (readonly Point[])[];
}

/** What a frame says of a dial, and where it is found in it. */
export interface ShownSighting extends Sighting {
  /** Null where nothing is found. */
  readonly shown: ShownDial | null;
}

const AROUND = 48;

/** Outlines of markers and rings as a view and a seating have them. */
export function shownDial(view: View, seen: readonly boolean[], seating: Seating): ShownDial {
  const pictured = (x: number, y: number): Point => {
    const point = { x: 0, y: 0 };
    project(view, x, y, point);
    return point;
  };
  const half = MARKER_SIDE / 2;
  return {
    markers: MARKERS.map(({ x, y }, k) => ({
      corners: [
        pictured(x - half, y - half),
        pictured(x + half, y - half),
        pictured(x + half, y + half),
        pictured(x - half, y + half),
      ],
      isSeen: seen[k] === true,
    })),
    rings: [OUTER_RING.outer, INNER_RING.inner].map((radius) =>
      Array.from({ length: AROUND }, (_, k) => {
        const angle = (2 * Math.PI * k) / AROUND;
        const point = { x: 0, y: 0 };
        seating.place(radius, Math.sin(angle), Math.cos(angle), point);
        return pictured(point.x, point.y);
      }),
    ),
  };
}
