import { type RefObject, useEffect, useRef } from "react";
import type { Graduations, Milliseconds } from "../../../lock/dial";

/** Graduations for one CSS pixel of the mouse wheel; with Shift a tenth of it. */
const PER_WHEEL_PIXEL = 0.03;

/** Pixels that one unit of a wheel event stands for, by its mode: pixels, lines, pages. */
const WHEEL_PIXELS: readonly number[] = [1, 33, 400];

/** How far a wheel event turns the dial, graduations. A wheel that only goes sideways, as with Shift, counts as well. */
function wheelTurn({ deltaX, deltaY, deltaMode, shiftKey }: WheelEvent): Graduations {
  const pixels = (deltaY === 0 ? deltaX : deltaY) * (WHEEL_PIXELS[deltaMode] ?? 1);
  return -pixels * PER_WHEEL_PIXEL * (shiftKey ? 0.1 : 1);
}

/**
 * Turns the dial by mouse wheel or trackpad while the dial has the focus; otherwise the wheel scrolls the page, as
 * anywhere else. The listener must not be passive, or the page scrolls along.
 *
 * @returns the ref of the dial
 */
export function useWheel(onTurn: (by: Graduations, at: Milliseconds) => void): RefObject<HTMLDivElement | null> {
  const dial = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const element = dial.current;
    const turn = (event: WheelEvent) => {
      // Pinching a trackpad arrives as a wheel with Ctrl: that is the page's zoom.
      if (event.ctrlKey || document.activeElement !== element) return;
      event.preventDefault();
      const by = wheelTurn(event);
      if (by !== 0) onTurn(by, event.timeStamp);
    };
    element?.addEventListener("wheel", turn, { passive: false });
    return () => element?.removeEventListener("wheel", turn);
  }, [onTurn]);
  return dial;
}
