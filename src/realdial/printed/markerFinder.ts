import type { GrayImage } from "../image/grayImage";
import { homographyThrough, mapped, type Point } from "../numerics/homography";
import { MARKER_SIDE, MARKERS } from "../sheet/design";
import { type DarkSpot, DarkSpots } from "./darkSpots";
import { cellsOf, likeness, turnedCells } from "./markerCells";
import { LEAST_MARKERS } from "./sheetFollower";
import type { View } from "./view";

const UNIT: readonly Point[] = [
  { x: 0, y: 0 },
  { x: 1, y: 0 },
  { x: 1, y: 1 },
  { x: 0, y: 1 },
];

/** A spot is a marker from this correlation of its cells on. */
const ALIKE = 0.7;

/** A marker in a picture: which one, and its corners from its upper left on, clockwise. */
interface FoundMarker {
  readonly marker: number;
  readonly corners: readonly Point[];
  readonly likeness: number;
}

/** Finds the base sheet in a picture of which nothing is known. */
export class MarkerFinder {
  private readonly spots = new DarkSpots();

  /** @returns how it lies, to about a pixel and without a lens; null where fewer than three markers are seen */
  find(image: GrayImage): View | null {
    const found = new Map<number, FoundMarker>();
    for (const spot of this.spots.find(image, image.height / 30, image.height / 2)) {
      const marker = markerOf(image, spot);
      if (marker !== null && marker.likeness > (found.get(marker.marker)?.likeness ?? ALIKE)) {
        found.set(marker.marker, marker);
      }
    }
    return found.size < LEAST_MARKERS ? null : viewThrough(image, [...found.values()]);
  }
}

function markerOf(image: GrayImage, { corners, area }: DarkSpot): FoundMarker | null {
  const square = areaOf(corners);
  if (area < 0.3 * square || area > 1.3 * square) return null;
  const toPicture = homographyThrough(UNIT, corners);
  if (toPicture === null) return null;
  let cells = cellsOf(image, (u, v, point) => Object.assign(point, mapped(toPicture, u, v)));
  if (cells === null) return null;
  let best: FoundMarker | null = null;
  for (let turns = 0; turns < 4; turns++) {
    const marker = mostAlike(cells);
    const alike = likeness(cells, marker);
    if (alike > (best?.likeness ?? 0)) {
      best = { marker, corners: [...corners.slice(turns), ...corners.slice(0, turns)], likeness: alike };
    }
    cells = turnedCells(cells);
  }
  return best;
}

function mostAlike(cells: Float64Array): number {
  const alike = MARKERS.map((_, marker) => likeness(cells, marker));
  return alike.indexOf(Math.max(...alike));
}

function areaOf([a, b, c, d]: DarkSpot["corners"]): number {
  return Math.abs((c.x - a.x) * (d.y - b.y) - (c.y - a.y) * (d.x - b.x)) / 2;
}

function viewThrough({ width, height }: GrayImage, found: readonly FoundMarker[]): View | null {
  const middle = { x: (width - 1) / 2, y: (height - 1) / 2 };
  const onSheet = found.flatMap(({ marker }) => cornersOnSheet(marker));
  const inPicture = found.flatMap(({ corners }) => corners.map(({ x, y }) => ({ x: x - middle.x, y: y - middle.y })));
  const h = homographyThrough(onSheet, inPicture);
  return h === null || !(Math.abs(h[8] as number) > 0)
    ? null
    : { h: h.map((one) => one / (h[8] as number)), lens: 0, middle };
}

function cornersOnSheet(marker: number): Point[] {
  const { x, y } = MARKERS[marker] as (typeof MARKERS)[number];
  return UNIT.map((corner) => ({ x: x + (corner.x - 0.5) * MARKER_SIDE, y: y + (corner.y - 0.5) * MARKER_SIDE }));
}
