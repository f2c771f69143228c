import type { GrayImage } from "../../../../../realdial/image/grayImage";
import type { ShownSighting } from "../../../../../realdial/printed/shownDial";

/** Something to look for in a picture. */
export interface PictureTask {
  readonly image: GrayImage;
}

/** The next frame. */
export interface FollowTask extends PictureTask {
  readonly kind: "frame";
  /** Capture time, ms, later than the last. */
  readonly at: number;
}

/** Turns are no longer in doubt: where the dial is now is taken for right. */
export interface SettleTask {
  readonly kind: "settle";
}

/** What a frame says, and how long it took to find out, ms. */
export interface FollowAnswer {
  readonly sighting: ShownSighting;
  readonly took: number;
}
