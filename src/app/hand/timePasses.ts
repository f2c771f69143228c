import { useEffect, useState } from "react";
import type { Milliseconds } from "../../lock/dial";
import type { EncoderMemory } from "../../lock/dialEncoder";
import { wantsLessMotion } from "../parts/page/lessMotion";
import type { HeldDial } from "./heldDial";

/** By then a light dial has come to rest, whatever its speed, milliseconds. */
const ALL_OF_IT: Milliseconds = 800;

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

/** Seconds that an encoder lock still refuses every try; 0 where it does not wait. Redraws once a second. */
export function useWaitingSeconds({ waitsUntil_ms }: EncoderMemory): number {
  const [now, setNow] = useState(() => performance.now());
  useEffect(() => {
    if (waitsUntil_ms === null) return;
    setNow(performance.now());
    const timer = setInterval(() => setNow(performance.now()), 1000);
    return () => clearInterval(timer);
  }, [waitsUntil_ms]);
  return waitsUntil_ms === null ? 0 : Math.max(0, Math.ceil((waitsUntil_ms - now) / 1000));
}
