import type { GrayImage } from "../../image/grayImage";
import { inverse, mapped, type Point } from "../../numerics/homography";
import { type DialPose, homographyOf } from "../pose/dialPose";
import { Patch, REACH } from "./patch";
import { movedPoint, type Similarity, similarityThrough, UNMOVED } from "./similarity";

/** Patches at most, and the fewest that say anything. */
const MOST = 28;
/** As many patches as must agree before they tell how a camera has moved. */
export const FEWEST = 4;
/** At most so many in an eighth of the way around, so that a hand does not cover all of them. */
const IN_AN_EIGHTH = 5;
/** Pixels between the middles of patches that are tried, and of those that are taken. */
const GRID = 5;
const APART = 13;
/** Radii of the dial between which patches lie: off the dial's rim and its shadow, near enough to belong to the lock. */
const NEAREST = 1.06;
const FARTHEST = 3;
/** A patch agrees with the others within so many pixels. */
const AGREES = 0.7;
/** Part of the patches found that must agree. */
const MAJORITY = 0.6;
/** A camera has moved when a fit leaves less unexplained by so many variances: once in a thousand pictures by chance (4 unknowns). */
const MOVED = 18.5;
/** SD of where a patch is found at least, pixels. */
const LEAST_NOISE = 0.05;

/** What patches say of a picture. */
export interface SeenMotion {
  readonly motion: Similarity;
  /** Patches that are found and agree. */
  readonly alive: number;
  /** Standard error of how far the picture is turned, radians; 0 where nothing speaks against where it was. */
  readonly error: number;
}

/** How the camera moved since set-up, by small patches of what lies around the dial. */
export class CameraMotion {
  readonly patches: readonly Patch[];
  private last: Similarity = UNMOVED;

  constructor(image: GrayImage, pose: DialPose) {
    this.patches = chosenPatches(image, pose);
  }

  /** Looks at the next picture; null where too few patches are found, or no two thirds of them agree. */
  follow(image: GrayImage): SeenMotion | null {
    const { seen: near, staying } = this.lookFrom(image, this.last);
    const found = near !== null && near.alive >= staying ? near : this.lookAround(image, staying);
    // A hand may have carried a few patches along, and the camera stands where it stood at set-up.
    const back = this.last === UNMOVED ? null : this.lookFrom(image, UNMOVED).seen;
    const seen = back?.motion === UNMOVED && back.alive > (found?.alive ?? 0) ? back : found;
    if (seen !== null) this.last = seen.motion;
    return seen;
  }

  /** After a push: the neighborhood, in steps that a patch can make up for. More must follow a push than stay. */
  private lookAround(image: GrayImage, staying: number): SeenMotion | null {
    let best: SeenMotion | null = null;
    for (const x of PUSHES) {
      for (const y of PUSHES) {
        const { seen } = this.lookFrom(image, { ...this.last, x: this.last.x + x, y: this.last.y + y });
        if (seen !== null && seen.alive > (best?.alive ?? staying)) best = seen;
      }
    }
    return best;
  }

  private lookFrom(image: GrayImage, start: Similarity): Look {
    const from: Point[] = [];
    const to: Point[] = [];
    for (const patch of this.patches) {
      const found = patch.find(image, start);
      if (found === null) continue;
      from.push(patch.at);
      to.push(found);
    }
    const staying = countOf(followersOf(start, from, to));
    // A camera on a stand is where it was: a fit in each picture would hand its own error on to the reading.
    const seen = held(UNMOVED, from, to) ?? held(start, from, to) ?? agreed(from, to);
    return { seen, staying };
  }
}

interface Look {
  readonly seen: SeenMotion | null;
  /** Patches that are where they were looked for. */
  readonly staying: number;
}

/** Pixels each way. */
const PUSHES = [-8, -4, 0, 4, 8];

/**
 * The motion on which most pairs agree: from the motion of each two far apart, the one with the most followers, then
 * fitted to those alone (consensus of samples: M. Fischler and R. Bolles 1981; all pairs, so nothing is left to chance).
 */
function agreed(from: readonly Point[], to: readonly Point[]): SeenMotion | null {
  let best: readonly number[] = [];
  let most = 0;
  for (let i = 0; i < from.length; i++) {
    const j = (i + (from.length >> 1)) % from.length;
    const fit = similarityThrough(
      from,
      to,
      from.map((_, k) => (k === i || k === j ? 1 : 0)),
    );
    if (fit === null) continue;
    const followers = followersOf(fit.motion, from, to);
    const count = countOf(followers);
    if (count > most) [best, most] = [followers, count];
  }
  if (most < Math.max(FEWEST, MAJORITY * from.length)) return null;
  const fit = similarityThrough(from, to, best);
  return fit && fitted(followersOf(fit.motion, from, to), from, to);
}

/** A motion that most patches follow, if no other explains them better than by chance. */
function held(motion: Similarity, from: readonly Point[], to: readonly Point[]): SeenMotion | null {
  const followers = followersOf(motion, from, to);
  const alive = countOf(followers);
  const fit = alive < Math.max(FEWEST, MAJORITY * from.length) ? null : fitted(followers, from, to);
  if (fit === null) return null;
  const left = leftBy(fit.motion, followers, from, to);
  const gain = leftBy(motion, followers, from, to) - left;
  return gain > MOVED * varianceOf(left, alive) ? null : { motion, alive, error: 0 };
}

function fitted(followers: readonly number[], from: readonly Point[], to: readonly Point[]): SeenMotion | null {
  const fit = similarityThrough(from, to, followers);
  if (fit === null) return null;
  const alive = countOf(followers);
  const variance = varianceOf(leftBy(fit.motion, followers, from, to), alive);
  return { motion: fit.motion, alive, error: Math.sqrt(variance / fit.spread) };
}

/** Variance of where patches are found, by what four unknowns leave. */
const varianceOf = (left: number, alive: number): number =>
  Math.max(LEAST_NOISE ** 2, left / Math.max(1, 2 * alive - 4));

const countOf = (followers: readonly number[]): number => followers.reduce((sum, one) => sum + one, 0);

/** Sum of squares that a motion leaves, square pixels. */
const leftBy = (motion: Similarity, followers: readonly number[], from: readonly Point[], to: readonly Point[]) =>
  offsOf(motion, from, to).reduce((sum, off, k) => sum + (followers[k] as number) * off * off, 0);

const followersOf = (motion: Similarity, from: readonly Point[], to: readonly Point[]): number[] =>
  offsOf(motion, from, to).map((off) => (off < AGREES ? 1 : 0));

/** How far points lie from where a motion takes them, pixels. */
const offsOf = (motion: Similarity, from: readonly Point[], to: readonly Point[]): number[] =>
  from.map((at, k) => {
    const there = movedPoint(motion, at);
    return Math.hypot(there.x - (to[k] as Point).x, there.y - (to[k] as Point).y);
  });

interface Candidate {
  readonly patch: Patch;
  readonly eighth: number;
}

function chosenPatches(image: GrayImage, pose: DialPose): Patch[] {
  const chosen: Candidate[] = [];
  for (const one of candidates(image, pose).sort((a, b) => b.patch.hold - a.patch.hold)) {
    if (chosen.length >= MOST) break;
    if (hasRoomFor(one, chosen)) chosen.push(one);
  }
  return chosen.map(({ patch }) => patch);
}

function hasRoomFor({ patch: { at }, eighth }: Candidate, chosen: readonly Candidate[]): boolean {
  const beside = chosen.filter((other) => other.eighth === eighth);
  if (beside.length >= IN_AN_EIGHTH) return false;
  return chosen.every(({ patch }) => Math.hypot(patch.at.x - at.x, patch.at.y - at.y) >= APART);
}

function candidates(image: GrayImage, pose: DialPose): Candidate[] {
  const toFace = inverse(homographyOf(pose));
  const nearest = NEAREST + nearRim(pose);
  const found: Candidate[] = [];
  const edge = REACH + 4;
  for (let y = edge; y < image.height - edge; y += GRID) {
    for (let x = edge; x < image.width - edge; x += GRID) {
      const face = mapped(toFace, x, y);
      const radius = Math.hypot(face.x, face.y);
      if (radius < nearest || radius > FARTHEST) continue;
      const patch = new Patch(image, { x, y });
      if (patch.hold > HOLD) found.push({ patch, eighth: Math.floor((4 * Math.atan2(face.y, face.x)) / Math.PI) });
    }
  }
  return found;
}

/** Sum of squared slopes that holds a patch against noise. */
const HOLD = 600;

/** Half a patch in radii of the dial, so that none reaches over the rim. */
const nearRim = ({ shape }: DialPose): number => (REACH + 1) / Math.hypot(shape[0], shape[2]);
