import { type GrayImage, sampleAt } from "../image/grayImage";
import { MARKER_CELLS, MARKERS } from "../sheet/design";
import type { MovingPoint } from "./view";

const COUNT = MARKER_CELLS * MARKER_CELLS;

/** For each marker its cells with the border, row by row: white above 0, black below; mean 0, sum of squares 1. */
const PATTERNS: readonly Float64Array[] = MARKERS.map(({ code }) => {
  const border = "#".repeat(MARKER_CELLS);
  const cells = [border, ...code.map((row) => `#${row}#`), border].join("");
  const pattern = Float64Array.from(cells, (cell) => (cell === "#" ? 0 : 1));
  return standardized(pattern);
});

/** Brightness less its mean, to a sum of squares of 1; all 0 where it is even. */
function standardized(cells: Float64Array): Float64Array {
  const mean = cells.reduce((sum, cell) => sum + cell, 0) / cells.length;
  const size = Math.hypot(...cells.map((cell) => cell - mean));
  return cells.map((cell) => (size > 0 ? (cell - mean) / size : 0));
}

/**
 * Brightness at the middles of a marker's cells.
 *
 * @param toPicture - puts a point of the marker, 0 to 1 from its upper left corner, into the picture
 * @returns null where a part of it is outside the picture
 */
export function cellsOf(
  image: GrayImage,
  toPicture: (u: number, v: number, point: MovingPoint) => void,
): Float64Array | null {
  const point = { x: 0, y: 0 };
  const cells = new Float64Array(COUNT);
  for (let k = 0; k < COUNT; k++) {
    toPicture(((k % MARKER_CELLS) + 0.5) / MARKER_CELLS, (Math.floor(k / MARKER_CELLS) + 0.5) / MARKER_CELLS, point);
    const level = sampleAt(image, point.x, point.y);
    if (Number.isNaN(level)) return null;
    cells[k] = level;
  }
  return cells;
}

/** The same cells seen from the marker's side that was the right one: what was its upper right corner is upper left. */
export function turnedCells(cells: Float64Array): Float64Array {
  return cells.map((_, k) => {
    const [x, y] = [k % MARKER_CELLS, Math.floor(k / MARKER_CELLS)];
    return cells[x * MARKER_CELLS + MARKER_CELLS - 1 - y] as number;
  });
}

/** How like a marker cells are: their correlation, 1 for a perfect likeness, at any light. */
export function likeness(cells: Float64Array, marker: number): number {
  const pattern = PATTERNS[marker] as Float64Array;
  return standardized(cells).reduce((sum, cell, k) => sum + cell * (pattern[k] as number), 0);
}
