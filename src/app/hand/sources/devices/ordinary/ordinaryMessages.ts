import type { OrdinarySeen } from "../../../../../realdial/ordinary/ordinaryDial";
import type { Taps } from "../../../../../realdial/ordinary/pose/poseSearch";
import type { FollowTask, PictureTask } from "../camera/followMessages";

/** A dial is to be looked for in a picture. */
interface FindTask extends PictureTask {
  readonly kind: "find";
  /** In pixels of the picture. */
  readonly taps: Taps;
  readonly graduations: number;
}

/** What is asked of a picture. */
export type OrdinaryTask = FindTask | FollowTask;

/** What a picture comes to, and how long it took to find out, ms. */
export interface OrdinaryAnswer {
  readonly seen: OrdinarySeen;
  readonly took: number;
}
