import { useEffect } from "react";
import type { Milliseconds } from "../../lock/dial";
import type { HeldDial } from "./heldDial";

/** By then a light dial has come to rest, whatever its speed, milliseconds. */
const ALL_OF_IT: Milliseconds = 800;

const wantsLessMotion = () => matchMedia("(prefers-reduced-motion: reduce)").matches;

/** How often a resting hand is looked at, milliseconds. */
const REST_WATCH: Milliseconds = 200;

/** Lets time pass over a resting hand. @param rest - by the page's steady clock; keeps its identity */
export function useRest(rest: (at: Milliseconds) => void): void {
  useEffect(() => {
    const timer = setInterval(() => rest(performance.now()), REST_WATCH);
    return () => clearInterval(timer);
  }, [rest]);
}

/**
 * Moves a light dial on while nobody turns it: frame by frame, or in one step for whoever wants less motion. The dial
 * comes to rest at the same place either way.
 */
export function useRunOn(dial: HeldDial): void {
  useEffect(() => {
    let frame = 0;
    let timer = 0;
    const step = () => {
      frame = 0;
      dial.runOn(performance.now());
      follow();
    };
    const follow = () => {
      if (!dial.isRunningOn) return;
      if (wantsLessMotion()) {
        clearTimeout(timer);
        timer = window.setTimeout(step, ALL_OF_IT);
      } else if (frame === 0) frame = requestAnimationFrame(step);
    };
    const forget = dial.subscribe(follow);
    follow();
    return () => {
      forget();
      cancelAnimationFrame(frame);
      clearTimeout(timer);
    };
  }, [dial]);
}
