import { useEffect, useRef, useState } from "react";
import { wantsLessMotion } from "../../../parts/page/lessMotion";

/** How long a glide takes, milliseconds: what a short one does, and what each unit adds, up to the longest. */
const SHORTEST_ms = 120;
const PER_UNIT_ms = 6;
const LONGEST_ms = 900;

/**
 * A number that glides to where it is to be; who asks for less motion sees it step.
 *
 * @param isHeld - while a hand moves it, it follows at once
 */
export function useGlide(target: number, isHeld: boolean): number {
  const [shown, setShown] = useState(target);
  const now = useRef(target);
  useEffect(() => {
    const from = now.current;
    const whole_ms = Math.min(LONGEST_ms, SHORTEST_ms + PER_UNIT_ms * Math.abs(target - from));
    const began = performance.now();
    let frame = 0;
    const step = (at: number) => {
      const part = isHeld || wantsLessMotion() ? 1 : Math.min(1, Math.max(0, (at - began) / whole_ms));
      now.current = from + (target - from) * part;
      setShown(now.current);
      if (part < 1) frame = requestAnimationFrame(step);
    };
    step(began);
    return () => cancelAnimationFrame(frame);
  }, [target, isHeld]);
  return isHeld ? target : shown;
}
