/**
 * The printed dial as data: what the printer draws and the camera looks for. All lengths in mm on paper. Points of either
 * sheet are measured from its middle, x right and y down as printed; angles clockwise from up, in radians.
 */

/** A ring of the disc, between two radii. */
export interface Ring {
  readonly inner: number;
  readonly outer: number;
}

/** A ring that is black and white in turns: white where cos(cycles · angle) is above 0. */
export interface Track extends Ring {
  readonly cycles: number;
}

/** A square with a black border of one cell around cells of its own code, by which it is known. */
export interface Marker {
  readonly x: number;
  readonly y: number;
  /** Rows of cells inside the border; # is black. */
  readonly code: readonly string[];
}

/** Half the side of the base sheet. */
export const BASE_HALF = 95;

/** Side of a marker, border and all. */
export const MARKER_SIDE = 28;

/** Cells of a marker in a row, border and all. */
export const MARKER_CELLS = 6;

const MARKER_AT = 77;

/**
 * Upper left, upper right, lower right, lower left. The codes have as much black as white, and each differs from every
 * other, however it is turned, in 6 of 16 cells or more, and from itself turned in 8.
 */
export const MARKERS: readonly Marker[] = [
  { x: -MARKER_AT, y: -MARKER_AT, code: ["#.#.", ".###", "#..#", "...#"] },
  { x: MARKER_AT, y: -MARKER_AT, code: ["...#", "#...", "##..", "####"] },
  { x: MARKER_AT, y: MARKER_AT, code: ["##.#", ".#..", "#..#", "..##"] },
  { x: -MARKER_AT, y: MARKER_AT, code: [".##.", "#..#", ".#.#", "..##"] },
];

/** Radius at which the disc is cut out. */
export const DISC_RADIUS = 70;

/** Two plain black rings that look the same at any angle: they seat the disc and show what black and white are here. */
export const OUTER_RING: Ring = { inner: 53.5, outer: 56.5 };
/** The one around the knob. */
export const INNER_RING: Ring = { inner: 29.5, outer: 32 };

/** White between a black ring and the tracks. */
export const OUTER_GAP: Ring = { inner: 51.5, outer: 53.5 };
/** The one at the inner ring. */
export const INNER_GAP: Ring = { inner: 32, outer: 34 };

/**
 * Fine, middle and coarse. One cycle of a finer track is told from the next by the coarser one: each may be wrong by
 * almost half a cycle of the finer. Motion at 2 turns/s and 1/30 s blurs the fine one to gray, the middle one not.
 */
export const TRACKS: readonly [Track, Track, Track] = [
  { cycles: 50, inner: 45.5, outer: 51.5 },
  { cycles: 7, inner: 39.75, outer: 45.5 },
  { cycles: 2, inner: 34, outer: 39.75 },
];

/** A knob may cover the disc up to this radius. */
export const KNOB_RADIUS = 28.5;
