import type { Graduations } from "../../../lock/dial";
import { type DialSource, listen } from "./dialSource";

/** Graduations for one CSS pixel of the mouse wheel; with Shift a tenth of it. */
const PER_WHEEL_PIXEL = 0.03;

/** Pixels that one unit of a wheel event stands for, by its mode: pixels, lines, pages. */
const WHEEL_PIXELS: readonly number[] = [1, 33, 400];

/** How far a wheel event turns the dial, graduations. A wheel that only goes sideways, as with Shift, counts as well. */
function wheelTurn({ deltaX, deltaY, deltaMode, shiftKey }: WheelEvent): Graduations {
  const pixels = (deltaY === 0 ? deltaX : deltaY) * (WHEEL_PIXELS[deltaMode] ?? 1);
  return -pixels * PER_WHEEL_PIXEL * (shiftKey ? 0.1 : 1);
}

/** Mouse wheel or trackpad, while the dial has the focus; otherwise the wheel scrolls the page, as anywhere else. */
export const WHEEL: DialSource = {
  name: "wheel",
  help: ["The mouse wheel turns the dial once you have clicked it."],
  start: ({ element }, turn) =>
    listen(element, {
      wheel: (event) => {
        // Pinching a trackpad arrives as a wheel with Ctrl: that is the page's zoom.
        if (event.ctrlKey || document.activeElement !== element) return;
        event.preventDefault();
        turn(wheelTurn(event), event.timeStamp);
      },
    }),
};
