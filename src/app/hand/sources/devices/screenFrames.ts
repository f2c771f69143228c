import type { Milliseconds } from "../../../../lock/dial";

/** The frames of a screen. */
export interface ScreenFrames {
  /** Does it as the next frame is made; at once on a page that is hidden, which makes none. */
  readonly inFrame: (make: () => void) => void;
  readonly isHidden: () => boolean;
  /** Called while a frame is made: calls back once that is painted, with the time. */
  readonly afterPaint: (painted: (at: Milliseconds) => void) => void;
}

const isHidden = () => document.visibilityState === "hidden";

/** Those of this page. */
export const SCREEN_FRAMES: ScreenFrames = {
  isHidden,
  inFrame: (make) => {
    if (isHidden()) make();
    else requestAnimationFrame(make);
  },
  afterPaint: (painted) => {
    // A task that is queued while a frame is made runs after it was painted.
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      painted(performance.now());
    };
    port2.postMessage(null);
  },
};
