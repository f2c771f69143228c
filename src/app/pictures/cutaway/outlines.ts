import type { Graduations } from "../../../lock/dial";
import { CAM_RADIUS, corners, LEAN, project, type Scene, WHEEL_RADIUS } from "./packScene";

export const GATE_DEPTH = 15;
export const PIN_RADIUS = 25;
const CAM_GATE_HALF_WIDTH = 6.5;
const FENCE_HALF_WIDTH = 3.5;
const FENCE_HEIGHT = 9;
const FENCE_BOTTOM = WHEEL_RADIUS + 4;

/** Half the width of a gate that lets the fence in exactly when it is true. */
export function gateHalfWidth(tolerance: Graduations, perTurn: number): number {
  const angle = Math.min((2 * Math.PI * tolerance) / perTurn, 0.3);
  return FENCE_HALF_WIDTH + WHEEL_RADIUS * Math.sin(angle);
}

/** Outline of a disc with its gate at the top. */
export function discPath(radius: number, halfWidth: number): string {
  const top = -Math.sqrt(radius ** 2 - halfWidth ** 2);
  const bottom = GATE_DEPTH - radius;
  return `M${-halfWidth} ${top}A${radius} ${radius} 0 1 0 ${halfWidth} ${top}V${bottom}H${-halfWidth}Z`;
}

export const camPath = discPath(CAM_RADIUS, CAM_GATE_HALF_WIDTH);

/** Outline of a fly about the top of its wheel. */
export function flyPath(halfAngle: number): string {
  const half = (halfAngle * Math.PI) / 180;
  const at = (radius: number, angle: number) =>
    `${(radius * Math.sin(angle)).toFixed(2)} ${(-radius * Math.cos(angle)).toFixed(2)}`;
  const large = half > Math.PI / 2 ? 1 : 0;
  const inner = 12;
  const outer = PIN_RADIUS + 6;
  return `M${at(inner, -half)}L${at(outer, -half)}A${outer} ${outer} 0 ${large} 1 ${at(outer, half)}L${at(inner, half)}A${inner} ${inner} 0 ${large} 0 ${at(inner, -half)}Z`;
}

/** Attribute that carries a drive pin, drawn on the spindle, out to its place. */
export function pinTransform({ squash }: Scene, angle: number): string {
  const radians = (angle * Math.PI) / 180;
  const x = -PIN_RADIUS * Math.sin(radians);
  const y = PIN_RADIUS * Math.cos(radians);
  return `translate(${(x * squash).toFixed(2)} ${(x * LEAN - y).toFixed(2)})`;
}

/** The top and the right side of the fence between two depths, far one first. */
export function fenceFaces(scene: Scene, far: number, near: number): { top: string; side: string } {
  const bottom = FENCE_BOTTOM;
  const top = FENCE_BOTTOM + FENCE_HEIGHT;
  const at = (x: number, y: number, z: number) => project(scene, x, y, z);
  const w = FENCE_HALF_WIDTH;
  return {
    top: corners([at(-w, top, near), at(w, top, near), at(w, top, far), at(-w, top, far)]),
    side: corners([at(w, bottom, near), at(w, top, near), at(w, top, far), at(w, bottom, far)]),
  };
}

/** A mark on top of the fence, over the disc at a depth, that shows where its gate must come to stand. */
export function fenceMark(scene: Scene, depth: number): string {
  const { x, y } = project(scene, 0, FENCE_BOTTOM + FENCE_HEIGHT + 2, depth);
  return `M${(x - 4.5).toFixed(2)} ${(y - 7).toFixed(2)}h9l-4.5 7Z`;
}

/** Outline of the toothed disc in an encoder lock, which a nose can enter anywhere. */
export function toothedPath(radius: number, teeth: number): string {
  const points = Array.from({ length: teeth * 4 }, (_, k) => {
    const angle = (2 * Math.PI * (k + 0.5)) / (teeth * 4);
    const r = k % 4 < 2 ? radius : radius - 6;
    return `${(r * Math.sin(angle)).toFixed(2)} ${(-r * Math.cos(angle)).toFixed(2)}`;
  });
  return `M${points.join("L")}Z`;
}
