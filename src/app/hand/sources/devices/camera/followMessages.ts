import type { GrayImage } from "../../../../../realdial/image/grayImage";
import type { PrintedSighting } from "../../../../../realdial/printed/printedDial";

/** What the follower is sent. */
export type FollowTask =
  /** @property at - capture time, ms */
  | { readonly kind: "frame"; readonly image: GrayImage; readonly at: number }
  /** Turns are no longer in doubt: where it is now is taken for right. */
  | { readonly kind: "settle" };

/** What it says of a frame, and how long it took for it, ms. */
export interface FollowAnswer {
  readonly sighting: PrintedSighting;
  readonly took: number;
}
