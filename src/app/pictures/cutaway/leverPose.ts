import type { Graduations } from "../../../lock/dial";
import { CAM_RADIUS, type Point } from "./packScene";

/** How far nose and fence fall. */
export const FALL = 13;

/** Where the lever hangs on the bolt: between the heights of the nose, so that its fall does not move the bolt. */
export const PIVOT: Point = { x: -74, y: CAM_RADIUS - FALL / 2 };

const NOSE: Point = { x: 0, y: CAM_RADIUS };

const REACH = Math.hypot(NOSE.x - PIVOT.x, NOSE.y - PIVOT.y);

const REST_ANGLE = Math.atan2(NOSE.y - PIVOT.y, NOSE.x - PIVOT.x);

/** Outline of the lever with its nose on the cam; y down, for a group in the plane of the cam. */
export const leverPath = `M${PIVOT.x - 1} ${-PIVOT.y - 7}L-10 -61Q-8 -62 -6 -62H4Q7 -62 7 -58V-46L3.5 ${-NOSE.y}H-3.5L-7 -47Q-8 -50 -12 -49L${PIVOT.x + 4} ${-PIVOT.y + 7}A7.5 7.5 0 1 1 ${PIVOT.x - 1} ${-PIVOT.y - 7}Z`;

/** How far the whole draw turns the cam, degrees; beyond a quarter turn a nose would slip out. */
export function drawAngle(travel: Graduations, perTurn: number): number {
  return Math.min(80, (travel * 360) / perTurn);
}

/**
 * The lever when its nose has fallen so far and the cam has carried it along so far.
 *
 * @param fall - 0 on the cam, `FALL` in its gate
 * @param angle - how far the cam has carried the nose, degrees
 * @returns how far the bolt has come along, and the attribute that lays the lever, both in the plane of the cam
 */
export function leverPose(fall: number, angle: number): { boltShift: number; lever: string } {
  const radians = (angle * Math.PI) / 180;
  const radius = CAM_RADIUS - FALL / 2;
  const x = radius * Math.sin(radians);
  const y = NOSE.y - fall - radius * (1 - Math.cos(radians));
  const rise = y - PIVOT.y;
  const run = Math.sqrt(REACH ** 2 - rise ** 2);
  const boltShift = x - run - PIVOT.x;
  const turned = ((Math.atan2(rise, run) - REST_ANGLE) * 180) / Math.PI;
  const lever = `translate(${boltShift.toFixed(2)} 0) rotate(${(-turned).toFixed(2)} ${PIVOT.x} ${-PIVOT.y})`;
  return { boltShift, lever };
}
