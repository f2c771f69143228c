import { useEffect, useLayoutEffect, useRef } from "react";
import { wantsLessMotion } from "../../parts/page/lessMotion";
import { MovedValue } from "./movedValue";

/** A leap of the bolt above this is eased; below it the bolt follows the hand, as the cam does. */
const LEAP = 0.25;

/** How long the nose falls and the bolt leaps, milliseconds. */
const FALL = 160;
const DRAW = 240;

/** A number that moves to each new target, and tells `show` on its way. */
function useMoved(target: number, duration_ms: (from: number) => number, show: () => void): MovedValue {
  const moved = useRef<MovedValue>(null);
  moved.current ??= new MovedValue(target, show);
  const { current } = moved;
  // biome-ignore lint/correctness/useExhaustiveDependencies: how long it takes is asked when it sets out
  useEffect(() => {
    current.goTo(target, wantsLessMotion() ? 0 : duration_ms(current.now));
    return () => current.stop();
  }, [current, target]);
  return current;
}

/**
 * Nose and bolt on their way: the nose falls and lifts in a short time of its own, the bolt goes with the hand.
 *
 * @param isNoseDown - where the nose is to be
 * @param retraction - where the bolt is to be, 0 to 1
 * @param show - puts the parts where they are now, fall and retraction from 0 to 1; must be stable
 */
export function useMovedParts(
  isNoseDown: boolean,
  retraction: number,
  show: (fall: number, retraction: number) => void,
): void {
  const shown = useRef(() => {});
  const showNow = () => shown.current();
  const fall = useMoved(isNoseDown ? 1 : 0, () => FALL, showNow);
  const drawn = useMoved(retraction, (from) => (Math.abs(retraction - from) > LEAP ? DRAW : 0), showNow);
  useLayoutEffect(() => {
    shown.current = () => show(fall.now, drawn.now);
    shown.current();
  }, [fall, drawn, show]);
}
