import type { ScreenFrames } from "../../../src/app/hand/sources/devices/screenFrames";

/** A stub of a screen that makes a frame at once, or when a test says so. */
export class StubFrames implements ScreenFrames {
  /** Whether frames wait for `frame`. */
  isHeld = false;
  hidden = false;
  private due: (() => void)[] = [];

  readonly isHidden = () => this.hidden;
  readonly inFrame = (make: () => void) => {
    if (this.isHeld && !this.hidden) this.due.push(make);
    else make();
  };
  readonly afterPaint = () => undefined;

  frame(): void {
    const due = this.due;
    this.due = [];
    for (const make of due) make();
  }
}
