import type { GrayImage } from "../image/grayImage";
import { CameraMotion, FEWEST } from "./camera/cameraMotion";
import { type DialPose, seenOfFace, sizeOf } from "./pose/dialPose";
import { PoseSearch, type Taps } from "./pose/poseSearch";
import type { SetupProblem } from "./reference";
import { SlowTurn } from "./slowTurn";

/** The smallest dial that is followed, pixels of its radius. */
const SMALLEST = 40;
/** Marks that lie less evenly than this are not the dial's, graduations. */
const EVEN = 0.12;

/**
 * Finds a dial that rests on 0, with no hand on it, from two taps.
 *
 * @returns what takes the pictures of the slow turn that comes next; or what is wrong
 */
export function dialFound(image: GrayImage, taps: Taps, graduations: number): SlowTurn | SetupProblem {
  const tapped = Math.hypot(taps.index.x - taps.middle.x, taps.index.y - taps.middle.y);
  // From aslant, the top of a high knob lies nearer to the index than the middle of the face does.
  if (tapped < SMALLEST / 2) return { code: "too-small", radius: tapped, needed: SMALLEST };
  const found = new PoseSearch(image, taps, graduations).find();
  if (found === null || !(found.uneven < EVEN)) return { code: "no-marks" };
  if (Math.round(found.count) !== graduations) {
    return { code: "wrong-count", counted: Math.round(found.count), expected: graduations };
  }
  if (sizeOf(found.pose) < SMALLEST) return { code: "too-small", radius: sizeOf(found.pose), needed: SMALLEST };
  if (!isInPicture(image, found.pose)) return { code: "out-of-picture" };
  const camera = new CameraMotion(image, found.pose);
  if (camera.patches.length < FEWEST) return { code: "bare-surroundings" };
  return new SlowTurn(image, found.pose, camera, graduations);
}

function isInPicture({ width, height }: GrayImage, pose: DialPose): boolean {
  return Array.from({ length: 32 }, (_, i) => (2 * Math.PI * i) / 32).every((angle) => {
    const { x, y } = seenOfFace(pose, Math.cos(angle), Math.sin(angle));
    return x >= 0 && y >= 0 && x < width - 1 && y < height - 1;
  });
}
