import { type GrayImage, sampleAt } from "../image/grayImage";
import { solve } from "../numerics/linearSystem";
import type { Track } from "../sheet/design";
import { type LocalLight, SECTORS } from "./localLight";
import type { Seating } from "./seating";
import { type MovingPoint, project, type View } from "./view";

/** What one track shows. */
export interface Phase {
  /** How far the track is turned to the left, in radians of its own cycle. */
  readonly phase: number;
  /** Standard deviation of that. */
  readonly spread: number;
  /** Half the way from its darkest to its lightest, 1 for black and white: its first harmonic is 4/π/2. */
  readonly amplitude: number;
}

/** Samples along the ring are alike to their neighbors: so many of them count as one. */
const ALIKE = 6;
/**
 * No phase is trusted further than this, in radians: print and lens are not perfect, and light falls off around a turn. Where
 * less than half of the ring is in sight, such things do not cancel out.
 */
const finestOf = (cycles: number, inSight: number) => (0.04 + 0.2 / cycles) / Math.min(1, 2 * inSight);
/** Residuals above this, on the way from black to white, are something else than the track. */
const STRANGE = 0.3;

/** Reads one track: how far it is turned within its cycle, by least squares of 1, cos and sin over what is in sight. */
export class TrackReader {
  readonly track: Track;
  private readonly count: number;
  private readonly cosines: Float64Array;
  private readonly sines: Float64Array;
  private readonly cycleCosines: Float64Array;
  private readonly cycleSines: Float64Array;
  private readonly sectors: Uint8Array;
  /** Rows from the picture's middle, in heights of it. */
  private readonly rows: Float64Array;
  private readonly values: Float64Array;
  private readonly weights: Float64Array;
  /** The same before anything was dropped. */
  private readonly inSight: Float64Array;

  constructor(track: Track) {
    this.track = track;
    // Twelve samples in a cycle, and one at least in each sector.
    this.count = SECTORS * Math.max(2, Math.ceil((12 * track.cycles) / SECTORS));
    const angles = Float64Array.from({ length: this.count }, (_, k) => (2 * Math.PI * (k + 0.5)) / this.count);
    this.cosines = angles.map(Math.cos);
    this.sines = angles.map(Math.sin);
    this.cycleCosines = new Float64Array(this.count);
    this.cycleSines = new Float64Array(this.count);
    this.sectors = Uint8Array.from(angles, (_, k) => Math.floor((k * SECTORS) / this.count));
    this.rows = new Float64Array(this.count);
    this.values = new Float64Array(this.count);
    this.weights = new Float64Array(this.count);
    this.inSight = new Float64Array(this.count);
  }

  /** Looks at the next frame. */
  look(image: GrayImage, view: View, seating: Seating, light: LocalLight): void {
    this.sample(image, view, seating, light);
    this.inSight.set(this.weights);
  }

  /**
   * What the frame shows that was looked at.
   *
   * @param twist - by how much the disc is seen turned further from the picture's first row to its last, turns
   * @returns null where too little of it is in sight
   */
  read(twist: number): Phase | null {
    this.weights.set(this.inSight);
    this.setAngles(twist);
    const first = this.fit();
    if (first === null) return null;
    this.dropStrange(first);
    const second = this.fit();
    if (second === null) return null;
    this.dropOvertones(second);
    const third = this.fit();
    return third === null ? null : this.phaseOf(third);
  }

  /** How much of light and dark is explained by a twist: the square of the first harmonic, as in `read`; 0 where nothing is. */
  sharpnessAt(twist: number): number {
    this.weights.set(this.inSight);
    this.setAngles(twist);
    const fit = this.fit();
    return fit === null ? 0 : (fit.values[1] as number) ** 2 + (fit.values[2] as number) ** 2;
  }

  /** How far from the picture's middle row, in its heights, what was read lies on the whole. */
  get middleRow(): number {
    let [sum, weights] = [0, 0];
    for (let k = 0; k < this.count; k++) {
      sum += (this.weights[k] as number) * (this.rows[k] as number);
      weights += this.weights[k] as number;
    }
    return weights > 0 ? sum / weights : 0;
  }

  private sample(image: GrayImage, view: View, seating: Seating, light: LocalLight): void {
    const { inner, outer } = this.track;
    const radii = [0.25, 0.5, 0.75].map((share) => inner + share * (outer - inner));
    const point: MovingPoint = { x: 0, y: 0 };
    for (let k = 0; k < this.count; k++) {
      const sector = this.sectors[k] as number;
      this.weights[k] = light.isClear[sector] as number;
      if (light.isClear[sector] === 0) continue;
      let sum = 0;
      for (const radius of radii) {
        seating.place(radius, this.sines[k] as number, this.cosines[k] as number, point);
        project(view, point.x, point.y, point);
        sum += light.normalized(sampleAt(image, point.x, point.y), radius, sector);
      }
      const value = sum / radii.length;
      this.rows[k] = (point.y - view.middle.y) / image.height;
      if (Number.isFinite(value)) this.values[k] = Math.min(1.3, Math.max(-0.3, value));
      else this.weights[k] = 0;
    }
  }

  /** Sets where in its cycle each sample lies, on a disc as it was when the middle row was read. */
  private setAngles(twist: number): void {
    const { cycles } = this.track;
    for (let k = 0; k < this.count; k++) {
      const angle = 2 * Math.PI * cycles * ((k + 0.5) / this.count + twist * (this.rows[k] as number));
      this.cycleCosines[k] = Math.cos(angle);
      this.cycleSines[k] = Math.sin(angle);
    }
  }

  /** Mean, cos and sin that fit best, and the inverse of their equations, row by row. */
  private fit(): Fit | null {
    const normal = new Float64Array(9);
    const right = new Float64Array(3);
    let weights = 0;
    for (let k = 0; k < this.count; k++) {
      const weight = this.weights[k] as number;
      if (weight === 0) continue;
      const [c, s, value] = [this.cycleCosines[k] as number, this.cycleSines[k] as number, this.values[k] as number];
      weights += weight;
      addRow(normal, right, c, s, value, weight);
    }
    if (weights < 0.1 * this.count) return null;
    // The mean is near one half: this holds the fit where less than a cycle is in sight.
    const hold = 0.3 * weights;
    normal[0] = (normal[0] as number) + hold;
    right[0] = (right[0] as number) + 0.5 * hold;
    const values = right.slice();
    return solve(normal.slice(), values) ? { values, normal, weights } : null;
  }

  private dropStrange({ values }: Fit): void {
    const [mean = 0, c = 0, s = 0] = values;
    const perSector = this.count / SECTORS;
    for (let sector = 0; sector < SECTORS; sector++) {
      let sum = 0;
      for (let k = sector * perSector; k < (sector + 1) * perSector; k++) {
        const model = mean + c * (this.cycleCosines[k] as number) + s * (this.cycleSines[k] as number);
        sum += Math.abs((this.values[k] as number) - squared(model));
      }
      if (sum / perSector > STRANGE) this.weights.fill(0, sector * perSector, (sector + 1) * perSector);
    }
  }

  /**
   * A square wave of first harmonic A cos p goes on with -A/3 cos 3p and A/5 cos 5p. Over all of the ring they do not matter;
   * where a part of it is hidden they would pull at the phase. They are as strong as blur has left them.
   */
  private dropOvertones({ values: [mean = 0, c = 0, s = 0] }: Fit): void {
    const amplitude = Math.hypot(c, s);
    for (const overtone of [thirdOf, fifthOf]) {
      let [along, square] = [0, 0];
      for (let k = 0; k < this.count; k++) {
        const first = c * (this.cycleCosines[k] as number) + s * (this.cycleSines[k] as number);
        const shape = overtone(first / amplitude);
        along += (this.weights[k] as number) * shape * ((this.values[k] as number) - mean - first);
        square += (this.weights[k] as number) * shape * shape;
      }
      const strength = Math.min(amplitude, Math.max(0, along / square));
      for (let k = 0; k < this.count; k++) {
        const first = c * (this.cycleCosines[k] as number) + s * (this.cycleSines[k] as number);
        this.values[k] = (this.values[k] as number) - strength * overtone(first / amplitude);
      }
    }
  }

  private phaseOf({ values, normal, weights }: Fit): Phase {
    const [mean = 0, c = 0, s = 0] = values;
    let rest = 0;
    for (let k = 0; k < this.count; k++) {
      const model = mean + c * (this.cycleCosines[k] as number) + s * (this.cycleSines[k] as number);
      rest += (this.weights[k] as number) * ((this.values[k] as number) - model) ** 2;
    }
    const amplitude = Math.hypot(c, s);
    // Turned by p, the track shows cos(cycles (angle + p)): its sine is negative.
    const across = Float64Array.of(0, -s / amplitude, c / amplitude);
    const variance = varianceAlong(normal, across) * (rest / weights) * ALIKE;
    return {
      phase: Math.atan2(-s, c),
      spread: Math.hypot(finestOf(this.track.cycles, weights / this.count), Math.sqrt(variance) / amplitude),
      amplitude: (amplitude * Math.PI) / 2,
    };
  }
}

interface Fit {
  readonly values: Float64Array;
  readonly normal: Float64Array;
  readonly weights: number;
}

/** Overtones of a square wave whose first harmonic is at x = cos p. */
const thirdOf = (x: number) => -(4 * x * x - 3) * (x / 3);
const fifthOf = (x: number) => ((16 * x * x - 20) * x * x + 5) * (x / 5);

/** A square wave has steeper flanks than its first harmonic: what the model says, drawn toward black and white. */
const squared = (model: number) => Math.min(1, Math.max(0, 0.5 + 1.5 * (model - 0.5)));

function addRow(normal: Float64Array, right: Float64Array, c: number, s: number, value: number, weight: number): void {
  normal[0] = (normal[0] as number) + weight;
  normal[1] = normal[3] = (normal[1] as number) + weight * c;
  normal[2] = normal[6] = (normal[2] as number) + weight * s;
  normal[4] = (normal[4] as number) + weight * c * c;
  normal[5] = normal[7] = (normal[5] as number) + weight * c * s;
  normal[8] = (normal[8] as number) + weight * s * s;
  right[0] = (right[0] as number) + weight * value;
  right[1] = (right[1] as number) + weight * c * value;
  right[2] = (right[2] as number) + weight * s * value;
}

/** The variance of a combination of fitted values, for residuals of variance 1. */
function varianceAlong(normal: Float64Array, along: Float64Array): number {
  const solution = along.slice();
  if (!solve(normal.slice(), solution)) return Number.POSITIVE_INFINITY;
  return solution.reduce((sum, one, k) => sum + one * (along[k] as number), 0);
}
