import { useEffect, useLayoutEffect, useRef } from "react";
import { wantsLessMotion } from "../../parts/page/lessMotion";
import type { CutawayView } from "./cutawayView";
import { drawAngle, leverPose } from "./leverPose";
import { MovedValue } from "./movedValue";
import { type Scene, shiftTransform } from "./packScene";

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
 * Keeps fence, lever and bolt of a drawing where they are, without React: the nose falls and lifts in a short time of its
 * own, the bolt goes with the hand.
 *
 * @param depth - how far the nose falls, in units of the picture
 * @returns refs for the picture and for the groups of lever and bolt
 */
export function useMovedDrawing({ isNoseDown, retraction, draw, perTurn }: CutawayView, scene: Scene, depth: number) {
  const picture = useRef<SVGSVGElement>(null);
  const lever = useRef<SVGGElement>(null);
  const bolt = useRef<SVGGElement>(null);
  const shown = useRef(() => {});
  const showNow = () => shown.current();
  const fall = useMoved(isNoseDown ? 1 : 0, () => FALL, showNow);
  const drawn = useMoved(retraction, (from) => (Math.abs(retraction - from) > LEAP ? DRAW : 0), showNow);
  const wholeDraw = drawAngle(draw.travel, perTurn);
  useLayoutEffect(() => {
    shown.current = () => {
      const pose = leverPose(fall.now * depth, drawn.now * wholeDraw);
      picture.current?.style.setProperty("--cutaway-fall", `${fall.now * depth}px`);
      lever.current?.setAttribute("transform", pose.lever);
      bolt.current?.setAttribute("transform", shiftTransform(scene, pose.boltShift));
    };
    shown.current();
  }, [fall, drawn, scene, wholeDraw, depth]);
  return { picture, lever, bolt };
}
