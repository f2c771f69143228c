import { animateValue, type MotionValue, useMotionValue, useReducedMotion } from "framer-motion";
import { useEffect, useLayoutEffect } from "react";

/** A leap of the bolt above this is eased; below it the bolt follows the hand, as the cam does. */
const LEAP = 0.25;

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
  const isStill = useReducedMotion() === true;
  const fall = useMotionValue(isNoseDown ? 1 : 0);
  const drawn = useMotionValue(retraction);
  useLayoutEffect(() => {
    const showNow = () => show(fall.get(), drawn.get());
    showNow();
    const stops = [fall.on("change", showNow), drawn.on("change", showNow)];
    return () => {
      for (const stop of stops) stop();
    };
  }, [fall, drawn, show]);
  useEffect(() => goTo(fall, isNoseDown ? 1 : 0, isStill ? 0 : 0.16), [fall, isNoseDown, isStill]);
  useEffect(() => {
    const isLeap = Math.abs(retraction - drawn.get()) > LEAP;
    return goTo(drawn, retraction, isLeap && !isStill ? 0.24 : 0);
  }, [drawn, retraction, isStill]);
}

function goTo(value: MotionValue<number>, target: number, duration: number): (() => void) | undefined {
  if (duration === 0) {
    value.jump(target);
    return undefined;
  }
  if (value.get() === target) return undefined;
  // The plain animation of a number: the page needs no more of the library, and stays small.
  const keyframes = [value.get(), target];
  const onUpdate = (now: number) => value.set(now);
  const way = animateValue({ keyframes, duration: duration * 1000, ease: "easeIn", onUpdate });
  return () => way.stop();
}
