import { useCallback, useRef } from "react";
import type { CutawayView } from "./cutawayView";
import { drawAngle, leverPose } from "./leverPose";
import { type Scene, shiftTransform } from "./packScene";
import { useMovedParts } from "./useMovedParts";

/**
 * Keeps fence, lever and bolt of a drawing where they are, without React.
 *
 * @param depth - how far the nose falls, in units of the picture
 * @returns refs for the picture and for the groups of lever and bolt
 */
export function useMovedDrawing(view: CutawayView, scene: Scene, depth: number) {
  const picture = useRef<SVGSVGElement>(null);
  const lever = useRef<SVGGElement>(null);
  const bolt = useRef<SVGGElement>(null);
  const wholeDraw = drawAngle(view.draw.travel, view.perTurn);
  const show = useCallback(
    (fall: number, retraction: number) => {
      const pose = leverPose(fall * depth, retraction * wholeDraw);
      picture.current?.style.setProperty("--cutaway-fall", `${fall * depth}px`);
      lever.current?.setAttribute("transform", pose.lever);
      bolt.current?.setAttribute("transform", shiftTransform(scene, pose.boltShift));
    },
    [scene, wholeDraw, depth],
  );
  useMovedParts(view.isNoseDown, view.retraction, show);
  return { picture, lever, bolt };
}
