import { type GrayImage, sampleAt } from "../image/grayImage";
import { LeastSquares } from "../numerics/leastSquares";
import { INNER_GAP, INNER_RING, OUTER_GAP, OUTER_RING, type Ring } from "../sheet/design";
import { type Edge, findEdge } from "./edge";
import { type MovingPoint, pixelsPerMm, project, shiftOfHeight, type View } from "./view";

/**
 * How the disc seems to lie on the base's plane. It is raised, off the middle, it wobbles, it may be a cone: its rings
 * are seen moved, scaled and drawn out, and the inner one otherwise than the outer one, which is taken as a straight line
 * between them. `values`: shift x and y (mm), scale less 1, drawn out along x (and pressed along y), drawn out along the
 * diagonal; then how shift x, y and scale differ from the rings' mean at the outer ring.
 */
const VALUES = 8;

const MIDDLE = (OUTER_RING.inner + OUTER_RING.outer + INNER_RING.inner + INNER_RING.outer) / 4;
const HALF = (OUTER_RING.inner + OUTER_RING.outer) / 2 - MIDDLE;

/** An edge of a ring: where it is, and 1 where it grows lighter outward. */
interface RingEdge {
  readonly radius: number;
  readonly sign: 1 | -1;
}

const EDGES: readonly RingEdge[] = [
  { radius: OUTER_RING.outer, sign: 1 },
  { radius: OUTER_RING.inner, sign: -1 },
  { radius: INNER_RING.outer, sign: 1 },
  { radius: INNER_RING.inner, sign: -1 },
];

const ANGLES = 48;
/** What each value may change between frames, one standard deviation: an off-center disc moves as it turns. */
const DRIFT = [0.5, 0.5, 0.004, 0.004, 0.004, 0.12, 0.12, 0.002];
/** How far off an edge of a ring may be, mm: less than the ring's width away the next one begins. */
const REACH = 1.7;
/** Measured edges scatter by so much, mm, at least. */
const SCATTER = 0.12;

/** Follows how the disc is seated. */
export class Seating {
  readonly values = new Float64Array(VALUES);
  /** Share of the rings' edges that are where they should be. */
  share = 0;
  /** Typical distance of those from the fit, mm. */
  scatter = 0;
  private readonly fit = new LeastSquares(VALUES);
  private readonly step = new Float64Array(VALUES);
  private readonly measured = new Float64Array(EDGES.length * ANGLES);
  private readonly strengths = new Float64Array(EDGES.length * ANGLES);

  /** Puts a point of the disc, before it is turned, on the base's plane. @param point - is set */
  place(radius: number, sine: number, cosine: number, point: MovingPoint): void {
    const [x = 0, y = 0, scale = 0, along = 0, aslant = 0, dx = 0, dy = 0, ds = 0] = this.values;
    const q = (radius - MIDDLE) / HALF;
    const r = radius * (1 + scale + q * ds);
    point.x = x + q * dx + r * sine + radius * (along * sine - aslant * cosine);
    point.y = y + q * dy - r * cosine + radius * (aslant * sine + along * cosine);
  }

  /** Looks for a disc of which nothing is known, by its rings, at any height and near the middle. */
  search(image: GrayImage, view: View): void {
    this.values.fill(0);
    const shift = shiftOfHeight(view);
    const best = new Float64Array(VALUES);
    let most = Number.NEGATIVE_INFINITY;
    for (let scale = 0; scale < 0.14; scale += 0.01) {
      // A camera stands some 350 mm away, more or less: the search is wide enough to take the rest.
      const height = 350 * scale;
      for (let k = 0; k < 49; k++) {
        const candidate = [shift.x * height + 2 * ((k % 7) - 3), shift.y * height + 2 * (Math.floor(k / 7) - 3), scale];
        this.values.set(candidate);
        const now = this.contrast(image, view);
        if (now > most) {
          most = now;
          best.set(candidate);
        }
      }
    }
    this.values.set(best);
    for (let k = 0; k < 4; k++) this.improve(image, view, 5);
  }

  /** Takes the next frame: fits the rings' edges near where they were. */
  follow(image: GrayImage, view: View): void {
    this.improve(image, view, 1);
    this.improve(image, view, 1);
  }

  /** How much lighter the gaps are than the rings, the half that shows it best. */
  private contrast(image: GrayImage, view: View): number {
    const point = { x: 0, y: 0 };
    const level = ({ inner, outer }: Ring, angle: number) => {
      this.place((inner + outer) / 2, Math.sin(angle), Math.cos(angle), point);
      project(view, point.x, point.y, point);
      return sampleAt(image, point.x, point.y) || 0;
    };
    const found: number[] = [];
    for (let k = 0; k < 20; k++) {
      const angle = (2 * Math.PI * k) / 20;
      found.push(
        level(OUTER_GAP, angle) - level(OUTER_RING, angle) + level(INNER_GAP, angle) - level(INNER_RING, angle),
      );
    }
    found.sort((one, other) => other - one);
    return found.slice(0, 10).reduce((sum, one) => sum + one, 0);
  }

  /** @param looseness - how many times the usual drift is allowed for */
  private improve(image: GrayImage, view: View, looseness: number): void {
    this.measure(image, view);
    this.step.fill(0);
    for (const limit of [REACH, 0.8, 0.4]) this.fitWithin(limit, looseness);
    for (let k = 0; k < VALUES; k++) this.values[k] = (this.values[k] as number) + (this.step[k] as number);
  }

  /** Sets for each edge and angle how far outward, mm, it lies of where it should. NaN: not seen, or faint. */
  private measure(image: GrayImage, view: View): void {
    const { measured, strengths } = this;
    const mm = Math.min(0.7, 0.8 / pixelsPerMm(view, this.values[0] as number, this.values[1] as number));
    const reach = Math.ceil(REACH / mm);
    const samples = new Float64Array(2 * reach + 1);
    const edge: Edge = { at: 0, strength: 0 };
    for (let k = 0; k < measured.length; k++) {
      this.sampleAcross(image, view, k, mm, samples);
      const isFound = findEdge(samples, samples.length, (EDGES[k % EDGES.length] as RingEdge).sign, edge);
      measured[k] = isFound ? (edge.at - reach) * mm : Number.NaN;
      strengths[k] = isFound ? edge.strength : 0;
    }
    const found = strengths.filter((one) => one > 0).sort();
    const faintest = 0.3 * (found[Math.floor(0.7 * found.length)] ?? 0);
    for (let k = 0; k < measured.length; k++) if ((strengths[k] as number) < faintest) measured[k] = Number.NaN;
  }

  /** Brightness along a line outward across an edge. */
  private sampleAcross(image: GrayImage, view: View, k: number, mm: number, samples: Float64Array): void {
    const { radius } = EDGES[k % EDGES.length] as RingEdge;
    const [sine, cosine] = directionOf(k);
    const reach = (samples.length - 1) / 2;
    const point = { x: 0, y: 0 };
    for (let s = 0; s < samples.length; s++) {
      this.place(radius + (s - reach) * mm, sine, cosine, point);
      project(view, point.x, point.y, point);
      samples[s] = sampleAt(image, point.x, point.y);
    }
  }

  /** Fits anew what lies within a limit (mm) of the last fit. */
  private fitWithin(limit: number, looseness: number): void {
    const { fit, step, measured } = this;
    const row = new Float64Array(VALUES);
    fit.clear();
    let [sum, count] = [0, 0];
    for (let k = 0; k < measured.length; k++) {
      const off = measured[k] as number;
      setSlopes(row, k);
      const rest = Math.abs(off - product(row, step));
      if (!(rest <= limit)) continue;
      fit.add(row, off, 1 / (SCATTER * SCATTER));
      sum += rest;
      count++;
    }
    for (let k = 0; k < VALUES; k++) {
      row.fill(0);
      row[k] = 1;
      fit.add(row, 0, (looseness * (DRIFT[k] as number)) ** -2);
    }
    if (!fit.solveInto(step)) step.fill(0);
    this.share = count / measured.length;
    this.scatter = count > 0 ? sum / count : limit;
  }
}

const directionOf = (k: number) => {
  const angle = (2 * Math.PI * Math.floor(k / EDGES.length)) / ANGLES;
  return [Math.sin(angle), Math.cos(angle)] as const;
};

/** How an edge moves outward, mm, with each value. */
function setSlopes(row: Float64Array, k: number): void {
  const { radius } = EDGES[k % EDGES.length] as RingEdge;
  const [sine, cosine] = directionOf(k);
  const q = (radius - MIDDLE) / HALF;
  row[0] = sine;
  row[1] = -cosine;
  row[2] = radius;
  row[3] = radius * (sine * sine - cosine * cosine);
  row[4] = -2 * radius * sine * cosine;
  row[5] = q * sine;
  row[6] = -q * cosine;
  row[7] = q * radius;
}

function product(one: Float64Array, other: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < one.length; k++) sum += (one[k] as number) * (other[k] as number);
  return sum;
}
