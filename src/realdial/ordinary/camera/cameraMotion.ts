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

/** What patches say of a picture. */
export interface SeenMotion {
  readonly motion: Similarity;
  /** Patches that are found and agree. */
  readonly alive: number;
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
    const seen = this.lookFrom(image, this.last) ?? this.lookAround(image);
    if (seen !== null) this.last = seen.motion;
    return seen;
  }

  /** After a push: the neighborhood, in steps that a patch can make up for. */
  private lookAround(image: GrayImage): SeenMotion | null {
    let best: SeenMotion | null = null;
    for (const [dx, dy] of PUSHES) {
      const seen = this.lookFrom(image, { ...this.last, x: this.last.x + dx, y: this.last.y + dy });
      if (seen !== null && seen.alive > (best?.alive ?? 0)) best = seen;
    }
    return best;
  }

  private lookFrom(image: GrayImage, start: Similarity): SeenMotion | null {
    const from: Point[] = [];
    const to: Point[] = [];
    for (const patch of this.patches) {
      const found = patch.find(image, start);
      if (found === null) continue;
      from.push(patch.at);
      to.push(found);
    }
    return from.length < FEWEST ? null : agreed(from, to);
  }
}

const PUSHES = [-8, -4, 0, 4, 8].flatMap((dx) => [-8, -4, 0, 4, 8].map((dy) => [dx, dy] as const));

/**
 * The motion on which most pairs agree: from the motion of each two far apart, the one with the most followers, then
 * fitted to those alone (consensus of samples: M. Fischler and R. Bolles 1981; all pairs, so nothing is left to chance).
 */
function agreed(from: readonly Point[], to: readonly Point[]): SeenMotion | null {
  let best: readonly number[] = [];
  let most = 0;
  for (let i = 0; i < from.length; i++) {
    const j = (i + (from.length >> 1)) % from.length;
    const motion = similarityThrough(
      from,
      to,
      from.map((_, k) => (k === i || k === j ? 1 : 0)),
    );
    if (motion === null) continue;
    const followers = followersOf(motion, from, to);
    const count = followers.reduce((sum, one) => sum + one, 0);
    if (count > most) [best, most] = [followers, count];
  }
  if (most < Math.max(FEWEST, 0.6 * from.length)) return null;
  const motion = similarityThrough(from, to, best);
  if (motion === null) return null;
  const followers = followersOf(motion, from, to);
  const last = similarityThrough(from, to, followers);
  return last === null ? null : { motion: last, alive: followers.reduce((sum, one) => sum + one, 0) };
}

function followersOf(motion: Similarity, from: readonly Point[], to: readonly Point[]): number[] {
  return from.map((at, k) => {
    const there = movedPoint(motion, at);
    return Math.hypot(there.x - (to[k] as Point).x, there.y - (to[k] as Point).y) < AGREES ? 1 : 0;
  });
}

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
