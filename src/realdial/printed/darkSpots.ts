import type { GrayImage } from "../image/grayImage";
import { SummedArea } from "../image/summedArea";
import type { Point } from "../numerics/homography";

/** A connected dark spot of a picture, and its four outermost corners in order around it. */
export interface DarkSpot {
  readonly corners: readonly [Point, Point, Point, Point];
  /** Pixels of it. */
  readonly area: number;
}

/** How much darker than its surroundings a pixel of a dark spot is, as a share of them. */
const DARKER = 0.85;

/** A line of dark pixels, and the spot it belongs to: the index of a line of that spot, itself for the first. */
interface Line {
  readonly row: number;
  readonly start: number;
  readonly end: number;
  spot: number;
}

/** Finds spots darker than their surroundings that could be a square seen aslant. */
export class DarkSpots {
  private readonly areas = new SummedArea();

  /** @param least,most - pixels along their longer side of the spots wanted */
  find(image: GrayImage, least: number, most: number): DarkSpot[] {
    this.areas.fill(image);
    const lines = this.darkLines(image);
    joinLines(lines);
    const spots = new Map<number, Line[]>();
    for (const line of lines) {
      const spot = rootOf(lines, line.spot);
      const others = spots.get(spot);
      if (others === undefined) spots.set(spot, [line]);
      else others.push(line);
    }
    return [...spots.values()].filter((spot) => isOfSize(spot, least, most)).map(spotOf);
  }

  private darkLines(image: GrayImage): Line[] {
    const limits = new Float64Array(image.width);
    const lines: Line[] = [];
    for (let row = 0; row < image.height; row++) {
      this.setLimits(limits, image.width, row);
      addLines(lines, image, row, limits);
    }
    return lines;
  }

  /** Sets below which brightness each pixel of a row is dark. The surroundings change slowly: every fourth is looked at. */
  private setLimits(limits: Float64Array, width: number, row: number): void {
    const reach = Math.round(width / 16);
    for (let column = 0; column < width; column += 4) {
      limits.fill(DARKER * this.areas.meanAround(column, row, reach), column, column + 4);
    }
  }
}

function addLines(lines: Line[], { width, data }: GrayImage, row: number, limits: Float64Array): void {
  let start = -1;
  for (let column = 0; column <= width; column++) {
    const isDark = column < width && (data[row * width + column] as number) < (limits[column] as number);
    if (isDark === start >= 0) continue;
    if (!isDark) lines.push({ row, start, end: column - 1, spot: lines.length });
    start = isDark ? column : -1;
  }
}

/** Joins lines of neighboring rows that touch, by union and find. */
function joinLines(lines: Line[]): void {
  let above = 0;
  for (let k = 0; k < lines.length; k++) {
    const line = lines[k] as Line;
    while ((lines[above] as Line).row < line.row - 1 || endsBefore(lines[above] as Line, line)) above++;
    for (let other = above; other < k; other++) {
      const { row, start } = lines[other] as Line;
      if (row >= line.row || start > line.end) break;
      const [one, two] = [rootOf(lines, other), rootOf(lines, k)];
      (lines[Math.max(one, two)] as Line).spot = Math.min(one, two);
    }
  }
}

const endsBefore = (above: Line, line: Line) => above.row === line.row - 1 && above.end < line.start;

function rootOf(lines: Line[], from: number): number {
  let spot = from;
  while ((lines[spot] as Line).spot !== spot) {
    const line = lines[spot] as Line;
    line.spot = (lines[line.spot] as Line).spot;
    spot = line.spot;
  }
  return spot;
}

function isOfSize(spot: readonly Line[], least: number, most: number): boolean {
  const height = (spot.at(-1) as Line).row - (spot[0] as Line).row + 1;
  if (height < least / 2 || height > most) return false;
  let [left, right] = [Number.POSITIVE_INFINITY, 0];
  for (const { start, end } of spot) {
    left = Math.min(left, start);
    right = Math.max(right, end);
  }
  const width = right - left + 1;
  return width >= least / 2 && width <= most && Math.max(width, height) >= least;
}

/** Corners: the farthest point from the middle, the farthest from that, and the farthest from their line on either side. */
function spotOf(lines: readonly Line[]): DarkSpot {
  const points = lines.flatMap(({ row, start, end }) => [
    { x: start, y: row },
    { x: end, y: row },
  ]);
  const middle = {
    x: points.reduce((sum, { x }) => sum + x, 0) / points.length,
    y: points.reduce((sum, { y }) => sum + y, 0) / points.length,
  };
  const one = outermost(points, ({ x, y }) => Math.hypot(x - middle.x, y - middle.y));
  const two = outermost(points, ({ x, y }) => Math.hypot(x - one.x, y - one.y));
  const side = ({ x, y }: Point) => (two.x - one.x) * (y - one.y) - (two.y - one.y) * (x - one.x);
  const right = outermost(points, side);
  const left = outermost(points, (point) => -side(point));
  return { corners: [one, left, two, right], area: lines.reduce((sum, { start, end }) => sum + end - start + 1, 0) };
}

function outermost(points: readonly Point[], measure: (point: Point) => number): Point {
  let best = points[0] as Point;
  let most = measure(best);
  for (const point of points) {
    const here = measure(point);
    if (here > most) [best, most] = [point, here];
  }
  return best;
}
