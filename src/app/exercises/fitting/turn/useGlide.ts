import { useEffect, useRef, useState } from "react";
import { wantsLessMotion } from "../../../parts/page/lessMotion";
import { MovedValue } from "../../../pictures/cutaway/movedValue";

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
  const [, draw] = useState(0);
  const moved = useRef<MovedValue>(null);
  moved.current ??= new MovedValue(target, () => draw((count) => count + 1));
  const { current } = moved;
  useEffect(() => {
    const far = Math.abs(target - current.now);
    const duration_ms = Math.min(LONGEST_ms, SHORTEST_ms + PER_UNIT_ms * far);
    current.goTo(target, isHeld || wantsLessMotion() ? 0 : duration_ms);
    return () => current.stop();
  }, [current, target, isHeld]);
  return isHeld ? target : current.now;
}
