import type { GrayImage } from "../../image/grayImage";
import type { Point } from "../../numerics/homography";
import { CombSeeker } from "./comb";
import { type CoarsePose, type DialPose, poseOf } from "./dialPose";
import { type Flattened, flattened } from "./flatten";
import { AROUND, readRing } from "./ring";

/** Two taps on a picture: the middle of the knob, and the tip of the index at the rim. */
export interface Taps {
  readonly middle: Point;
  readonly index: Point;
}

/** Where the marks lie, in radii of the dial. */
const MARKS = [0.93, 0.95, 0.97] as const;
/** A guess of the focal length, in widths of the picture: a phone's or a laptop's camera. */
const FOCAL = 0.95;
/** Heights of the knob that are tried, in radii. */
const HEIGHTS = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9];
const STARTS = 48;

/** A knob's top is not seen farther from the middle of the face than this, in distances between the taps. */
const FARTHEST = 1.6;

/** Numbers that the search varies: middle x and y (distances between the taps), tilt x and y, size (a share). */
type Trial = readonly [number, number, number, number, number];

/** Finds the face of a dial from two taps: coarse places first, then the best of them by small steps. */
export class PoseSearch {
  private readonly image: GrayImage;
  private readonly taps: Taps;
  private readonly graduations: number;
  private readonly seeker: CombSeeker;
  private readonly focal: number;
  private readonly ring = new Float64Array(AROUND);

  constructor(image: GrayImage, taps: Taps, graduations: number) {
    this.image = image;
    this.taps = taps;
    this.graduations = graduations;
    this.seeker = new CombSeeker(graduations);
    this.focal = FOCAL * image.width;
  }

  /** The best pose; null where no ring of even marks is found. */
  find(): Flattened | null {
    const starts = startingTrials()
      .map((start) => this.seatedStart(start))
      .map((trial) => ({ trial, score: this.score(trial) }))
      .sort((one, other) => other.score - one.score)
      .slice(0, STARTS)
      .map(({ trial }) => this.climbed(trial, 0.08, 0.02))
      .sort((one, other) => other.score - one.score)
      .slice(0, 3)
      .map(({ trial }) => this.climbed(trial, 0.02, 0.004))
      .sort((one, other) => other.score - one.score);
    let best: Flattened | null = null;
    for (const { trial } of starts) {
      const found = this.finished(this.poseOf(trial));
      if (best === null || found.uneven < best.uneven) best = found;
      if (best.uneven < 0.05 && Math.abs(best.count - this.graduations) < 0.5) break;
    }
    return best;
  }

  /** A start whose middle lies so many radii from the tap: the radius it gives says how far that is, which moves the middle. */
  private seatedStart([x, y, tiltX, tiltY, size]: Trial): Trial {
    const { middle, index } = this.taps;
    const tapped = Math.hypot(index.x - middle.x, index.y - middle.y);
    let trial: Trial = [x, y, tiltX, tiltY, size];
    for (let round = 0; round < 3; round++) {
      const radii = this.coarse(trial).size / tapped;
      trial = [x * radii, y * radii, tiltX, tiltY, size];
    }
    return trial;
  }

  private finished(pose: DialPose): Flattened {
    let found = flattened(this.image, pose, this.graduations, MARKS);
    for (let round = 0; round < 2; round++) {
      const seated = this.seated(found.pose);
      found = flattened(this.image, seated, this.graduations, MARKS);
    }
    return found;
  }

  /** What the directions of the marks do not tell: size and perspective, by the strength of the marks. */
  private seated(pose: DialPose): DialPose {
    const [x, y] = pose.lean;
    const changed = ([size, toX, toY]: readonly number[]): DialPose => ({
      middle: pose.middle,
      shape: pose.shape.map((one) => one * (1 + (size ?? 0))) as unknown as DialPose["shape"],
      lean: [x + (toX ?? 0), y + (toY ?? 0)],
    });
    const best = climb([0, 0, 0], 0.02, 0.004, (trial) => this.strength(changed(trial)));
    return changed(best.trial);
  }

  private climbed(from: readonly number[], step: number, least: number) {
    return climb(from, step, least, (trial) => this.score(trial));
  }

  private poseOf(trial: readonly number[]): DialPose {
    return poseOf(this.coarse(trial), this.focal);
  }

  private coarse([x = 0, y = 0, tiltX = 0, tiltY = 0, size = 0]: readonly number[]): CoarsePose {
    const { middle, index } = this.taps;
    const tapped = Math.hypot(index.x - middle.x, index.y - middle.y);
    const at = { x: middle.x + tapped * x, y: middle.y - tapped * y };
    // The index lies at the rim: with a direction w and the lean g and shape A of a pose of size 1, it is seen at
    // r A w / (1 + r g · w), so that A u = what is seen gives r = |u| / (1 - g · u).
    const { shape, lean } = poseOf({ middle: at, tilt: [tiltX, tiltY], size: 1 }, this.focal);
    const [toX, toY] = [index.x - at.x, index.y - at.y];
    const area = shape[0] * shape[3] - shape[1] * shape[2];
    const [u, v] = [(shape[3] * toX - shape[1] * toY) / area, (shape[0] * toY - shape[2] * toX) / area];
    const radius = Math.hypot(u, v) / (1 - lean[0] * u - lean[1] * v);
    return { middle: at, tilt: [tiltX, tiltY], size: radius * (1 + size) };
  }

  private score(trial: readonly number[]): number {
    const [x = 0, y = 0, tiltX = 0, tiltY = 0, size = 0] = trial;
    if (Math.hypot(tiltX, tiltY) > 0.8 || Math.abs(size) > 0.16) return 0;
    if (Math.hypot(x, y) > FARTHEST) return 0;
    return this.strength(this.poseOf(trial));
  }

  private strength(pose: DialPose): number {
    return readRing(this.image, pose, MARKS, this.ring) ? this.seeker.strengthOf(this.ring) : 0;
  }
}

/** Sines of tilts that are tried, and to how many sides. */
const TILTS = [
  [0, 1],
  [0.2, 8],
  [0.38, 10],
  [0.54, 12],
  [0.66, 14],
] as const;

/** Tilts to all sides, and where (radii) the middle of the face lies below that of the knob, for knobs of some heights. */
function startingTrials(): Trial[] {
  return TILTS.flatMap(([sine, sides]) =>
    Array.from({ length: sides }, (_, k) => (2 * Math.PI * k) / sides).flatMap((angle) =>
      trialsOf(sine * Math.cos(angle), sine * Math.sin(angle)),
    ),
  );
}

const trialsOf = (tiltX: number, tiltY: number): Trial[] =>
  (tiltX === 0 && tiltY === 0 ? [0] : HEIGHTS).flatMap((height) =>
    [-0.06, -0.03, 0, 0.03, 0.06].map((size): Trial => [height * tiltX, height * tiltY, tiltX, tiltY, size]),
  );

interface Scored {
  readonly trial: readonly number[];
  readonly score: number;
}

type ScoreOf = (trial: readonly number[]) => number;

/** Climbs by steps along each number, which are halved when none leads up (pattern search: R. Hooke and T. Jeeves 1961). */
function climb(from: readonly number[], firstStep: number, leastStep: number, scoreOf: ScoreOf): Scored {
  let best: Scored = { trial: from, score: scoreOf(from) };
  for (let step = firstStep; step >= leastStep; step /= 2) best = climbedBy(step, best, scoreOf);
  return best;
}

function climbedBy(step: number, from: Scored, scoreOf: ScoreOf): Scored {
  let best = from;
  for (let rounds = 0; rounds < 6; rounds++) {
    const before = best;
    for (let k = 0; k < from.trial.length; k++) {
      for (const to of [step, -step]) best = better(best, best.trial.with(k, (best.trial[k] ?? 0) + to), scoreOf);
    }
    if (best === before) break;
    // On in the direction that led up.
    best = better(
      best,
      best.trial.map((one, i) => 2 * one - (before.trial[i] ?? 0)),
      scoreOf,
    );
  }
  return best;
}

function better(best: Scored, trial: readonly number[], scoreOf: ScoreOf): Scored {
  const score = scoreOf(trial);
  return score > best.score ? { trial, score } : best;
}
