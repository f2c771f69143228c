import type { Graduations } from "../../../lock/dial";
import { dialRotation, pointAt } from "./dialGeometry";

/** The wind-up is under one graduation: drawn so many times larger, so that one sees it. */
const MAGNIFIED = 6;
const RADIUS = 136;

/** How far the hand is ahead of a heavy dial: an arc from under the index, the way the hand pulls. */
export function WindUp({ windUp, graduations }: { readonly windUp: Graduations; readonly graduations: number }) {
  if (windUp === 0) return null;
  const end = dialRotation(windUp * MAGNIFIED, graduations);
  return (
    <path
      className="fill-none stroke-accent"
      strokeWidth={7}
      d={`M ${pointAt(RADIUS, 0)} A ${RADIUS} ${RADIUS} 0 0 ${end > 0 ? 1 : 0} ${pointAt(RADIUS, end)}`}
    />
  );
}
