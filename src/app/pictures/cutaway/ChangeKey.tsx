import { memo } from "react";
import type { CutawayKey } from "./cutawayView";
import { planeTransform, project, type Scene, turnTransform } from "./packScene";

/** How far the key holes lie from the spindle: in the ring outside the flies. */
const HOLE_AT = 38;
const HOLE_RADIUS = 4.2;
/** The holes lie opposite the gates, where nothing hides them. */
const OPPOSITE = 180;

/** Where a wheel's key hole stands, degrees counter-clockwise from the top. */
export function keyHoleAngle({ errors, port }: CutawayKey, wheel: number, perTurn: number): number {
  return OPPOSITE + (((errors[wheel] ?? 0) + port) * 360) / perTurn;
}

/** The hole in a wheel's gate ring through which the key goes. */
export const KeyHole = memo(function KeyHole({ scene, depth, angle }: KeyHoleProps) {
  return (
    <g transform={planeTransform(scene, depth)}>
      <circle className="fill-well" strokeWidth={1.2} cy={-HOLE_AT} r={HOLE_RADIUS} transform={turnTransform(angle)} />
    </g>
  );
});

interface KeyHoleProps {
  readonly scene: Scene;
  readonly depth: number;
  readonly angle: number;
}

interface KeyRodProps {
  readonly scene: Scene;
  readonly changeKey: CutawayKey;
  readonly perTurn: number;
  readonly hasLeft: boolean;
  readonly far: number;
  readonly near: number;
}

/** The key from one depth to a nearer one; while it is out, the line on which it will go. */
export function KeyRod({ scene, changeKey, perTurn, hasLeft, far, near }: KeyRodProps) {
  const { place, port } = changeKey;
  const degrees = (OPPOSITE + (port * 360) / perTurn) * (hasLeft ? -1 : 1);
  const radians = (degrees * Math.PI) / 180;
  const at = (z: number) => project(scene, -HOLE_AT * Math.sin(radians), HOLE_AT * Math.cos(radians), z);
  const from = at(far);
  const to = at(near);
  const line = { x1: from.x, y1: from.y, x2: to.x, y2: to.y };
  if (place === "out") return <line className="stroke-accent" strokeWidth={1.2} strokeDasharray="3 3" {...line} />;
  return (
    <g>
      <line strokeWidth={6} {...line} />
      <line className="stroke-accent" strokeWidth={4} {...line} />
      {/* The bit stands out once the key is turned. */}
      {place === "turned" && <path className="fill-accent" d={`M${to.x - 2} ${to.y}v9h5v-9Z`} />}
    </g>
  );
}
