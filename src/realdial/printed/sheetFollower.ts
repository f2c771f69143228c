import { type GrayImage, sampleAt } from "../image/grayImage";
import { LeastSquares } from "../numerics/leastSquares";
import { MARKER_SIDE, MARKERS } from "../sheet/design";
import { type Edge, findEdge } from "./edge";
import { cellsOf, likeness } from "./markerCells";
import { pixelsPerMm, project, type View } from "./view";

/** A marker counts as seen from this correlation of its cells on, at the place where it is expected. */
const SEEN = 0.75;
/** Points along each side of a marker whose edge is looked for. */
const POINTS = 6;
/** How far from the edge expected it is looked for, pixels. */
const REACH = 5;
/** Farther from the fit than this, in pixels, an edge is something else's. */
const STRAY = 1.5;
/** A camera stands still while the edges of its markers are nearer than this, pixels, to where they were. */
const STILL = 0.6;
/** After so many frames with the camera standing still, one marker is enough. */
const PROVEN = 5;
/** A marker is remembered by its edges when at least so many are near the fit. */
const MEMORABLE = 3 * POINTS;
/** A sheet is where it is taken to be when this share of its markers' edges is near the fit: else they are something else's. */
const FITTING = 0.6;
/** So many markers, seen or remembered, show how the sheet lies: two would leave tilt and turn to chance. */
export const LEAST_MARKERS = 3;
/** Frames averaged at most. */
const LONGEST_MEAN = 12;

/** An edge of a marker: where it is on the sheet and in the picture, and the direction across it in the picture. */
interface SeenEdge {
  readonly x: number;
  readonly y: number;
  readonly px: number;
  readonly py: number;
  readonly nx: number;
  readonly ny: number;
}

/**
 * Follows the base sheet from frame to frame, from a view that is nearly right. While the camera stands still, markers under
 * a hand stay where they were seen last: two markers alone would show the tilt badly.
 */
export class SheetFollower {
  view: View;
  /** Of each marker whether it is seen. */
  seen: boolean[] = MARKERS.map(() => false);
  private memory: (readonly SeenEdge[])[] = MARKERS.map(() => []);
  private frames = 0;
  private readonly fit = new LeastSquares(9);
  private readonly step = new Float64Array(9);

  constructor(view: View) {
    this.view = view;
  }

  /** Takes the next frame. @returns whether the sheet is where it was, or near it */
  follow(image: GrayImage): boolean {
    this.seen = MARKERS.map((_, marker) => isSeen(image, this.view, marker));
    const edges = this.seen.map((isSeenNow, marker) => (isSeenNow ? edgesOf(image, this.view, marker) : []));
    const all = edges.flat();
    const isStill = all.length > 0 && medianOff(this.view, all) < STILL;
    if (!isStill) this.memory = MARKERS.map(() => []);
    const known = edges.map((one, marker) => (this.seen[marker] ? one : (this.memory[marker] as SeenEdge[])));
    const isTrusted = this.seen.filter(Boolean).length >= 2 || (isStill && this.frames >= PROVEN);
    if (!isTrusted || known.filter((one) => one.length > POINTS).length < LEAST_MARKERS) return false;
    let next = this.view;
    for (let k = 0; k < 3; k++) next = this.improved(next, known.flat(), k === 0 ? REACH : STRAY);
    const fitting = all.filter((edge) => Math.abs(offOf(next, edge)) < STILL).length;
    if (fitting < FITTING * 4 * POINTS * this.seen.filter(Boolean).length) return false;
    this.blend(next, isStill);
    this.remember(edges);
    return true;
  }

  private remember(edges: readonly (readonly SeenEdge[])[]): void {
    for (const [marker, seen] of edges.entries()) {
      const good = seen.filter((edge) => Math.abs(offOf(this.view, edge)) < STILL);
      if (good.length >= MEMORABLE) this.memory[marker] = good;
    }
  }

  /** One step of Gauss-Newton on the distances across the edges. The lens moves the less, the longer it was looked at. */
  private improved(view: View, edges: readonly SeenEdge[], farthest: number): View {
    const { fit, step } = this;
    const { h, lens, middle } = view;
    const point = { x: 0, y: 0 };
    const row = new Float64Array(9);
    fit.clear();
    for (const { x, y, px, py, nx, ny } of edges) {
      project(view, x, y, point);
      const error = (px - point.x) * nx + (py - point.y) * ny;
      if (Math.abs(error) > farthest) continue;
      const w = (h[6] as number) * x + (h[7] as number) * y + 1;
      const [u, v] = [point.x - middle.x, point.y - middle.y];
      const along = -(u * nx + v * ny) / w;
      row[0] = (x * nx) / w;
      row[1] = (y * nx) / w;
      row[2] = nx / w;
      row[3] = (x * ny) / w;
      row[4] = (y * ny) / w;
      row[5] = ny / w;
      row[6] = along * x;
      row[7] = along * y;
      row[8] = ((u * nx + v * ny) * (u * u + v * v)) / (middle.x * middle.x);
      fit.add(row, error);
    }
    row.fill(0, 0, 8);
    row[8] = 1;
    fit.add(row, 0, 300 * (1 + 10 * this.frames));
    if (fit.rows < 3 * POINTS || !fit.solveInto(step, 1e-9)) return view;
    return { h: h.map((one, k) => one + (k < 8 ? (step[k] as number) : 0)), lens: lens + (step[8] as number), middle };
  }

  private blend(next: View, isStill: boolean): void {
    this.frames = isStill ? Math.min(LONGEST_MEAN, this.frames + 1) : 1;
    const share = 1 / this.frames;
    const { h, lens } = this.view;
    this.view = {
      h: h.map((one, k) => one + share * ((next.h[k] as number) - one)),
      lens: lens + share * (next.lens - lens),
      middle: next.middle,
    };
  }
}

/** How far across an edge, in pixels, it is seen from where a view has it. */
function offOf(view: View, { x, y, px, py, nx, ny }: SeenEdge): number {
  const point = { x: 0, y: 0 };
  project(view, x, y, point);
  return (px - point.x) * nx + (py - point.y) * ny;
}

function medianOff(view: View, edges: readonly SeenEdge[]): number {
  const off = edges.map((edge) => Math.abs(offOf(view, edge))).sort((one, other) => one - other);
  return off[off.length >> 1] as number;
}

function isSeen(image: GrayImage, view: View, marker: number): boolean {
  const { x, y } = MARKERS[marker] as (typeof MARKERS)[number];
  const cells = cellsOf(image, (u, v, point) =>
    project(view, x + (u - 0.5) * MARKER_SIDE, y + (v - 0.5) * MARKER_SIDE, point),
  );
  return cells !== null && likeness(cells, marker) > SEEN;
}

const SIDES = [
  { x: 0, y: -1 },
  { x: 1, y: 0 },
  { x: 0, y: 1 },
  { x: -1, y: 0 },
] as const;

/** Looks for a marker's edges along lines across them, from the black border outward. */
function edgesOf(image: GrayImage, view: View, marker: number): SeenEdge[] {
  const edges: SeenEdge[] = [];
  const { x, y } = MARKERS[marker] as (typeof MARKERS)[number];
  const mm = 1 / pixelsPerMm(view, x, y);
  // Beyond a border's cell lies another edge.
  const reach = Math.max(3, Math.min(REACH, Math.floor((0.85 * MARKER_SIDE) / 6 / mm)));
  const samples = new Float64Array(2 * reach + 1);
  const [edge, point]: [Edge, { x: number; y: number }] = [
    { at: 0, strength: 0 },
    { x: 0, y: 0 },
  ];
  for (const side of SIDES) {
    for (let k = 0; k < POINTS; k++) {
      const along = ((k + 0.5) / POINTS - 0.5) * 0.8 * MARKER_SIDE;
      const ex = x + (side.x * MARKER_SIDE) / 2 - side.y * along;
      const ey = y + (side.y * MARKER_SIDE) / 2 + side.x * along;
      for (let s = 0; s < samples.length; s++) {
        project(view, ex + side.x * (s - reach) * mm, ey + side.y * (s - reach) * mm, point);
        samples[s] = sampleAt(image, point.x, point.y);
      }
      if (!findEdge(samples, samples.length, 1, edge) || edge.strength < 6) continue;
      const off = (edge.at - reach) * mm;
      project(view, ex, ey, point);
      const [fromX, fromY] = [point.x, point.y];
      project(view, ex + side.x * mm, ey + side.y * mm, point);
      const length = Math.hypot(point.x - fromX, point.y - fromY);
      const [nx, ny] = [(point.x - fromX) / length, (point.y - fromY) / length];
      project(view, ex + side.x * off, ey + side.y * off, point);
      edges.push({ x: ex, y: ey, px: point.x, py: point.y, nx, ny });
    }
  }
  return edges;
}
