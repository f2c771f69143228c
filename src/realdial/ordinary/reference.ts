import type { CameraMotion } from "./camera/cameraMotion";
import type { DialPose } from "./pose/dialPose";
import type { LightMap } from "./strip/lightMap";

/** All that is known of a dial once it was turned round slowly: nothing of it changes later, so nothing drifts. */
export interface DialReference {
  readonly graduations: number;
  readonly pose: DialPose;
  /** How far left each cell lies of where the pose says, radians. */
  readonly bent: Float32Array;
  readonly light: LightMap;
  /** The print as it lies on 0. */
  readonly print: Float32Array;
  readonly camera: CameraMotion;
}

/** What can be wrong with a dial that is to be set up. */
export type SetupProblem =
  /** No ring of even marks was found where the taps say. */
  | { readonly code: "no-marks" }
  /** The marks found are not as many as the dial has. */
  | { readonly code: "wrong-count"; readonly counted: number; readonly expected: number }
  /** The dial is too small in the picture, pixels of its radius. */
  | { readonly code: "too-small"; readonly radius: number; readonly needed: number }
  /** The dial is not wholly in the picture. */
  | { readonly code: "out-of-picture" }
  /** Nothing around the dial holds the camera's place. */
  | { readonly code: "bare-surroundings" }
  /** Less than a whole turn was seen, as a part of one. */
  | { readonly code: "turn-not-seen"; readonly part: number }
  /** The dial was not recognized in too many pictures of the turn: their part. */
  | { readonly code: "turn-not-followed"; readonly lost: number }
  /** Turned by some graduations it looks as it did: nothing is printed that tells them apart, or it is not seen. */
  | { readonly code: "no-numerals" };
