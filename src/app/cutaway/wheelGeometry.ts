import type { Graduations } from "../../lock/dial";
import type { CutawayView } from "./cutawayView";

/*
 * The picture is a parallel projection. In the lock, x goes right and y up as the operator sees the dial; z counts discs
 * from the cam (0) back to wheel 1. A disc keeps its height and is narrowed; going back is going right and a little up.
 * Units are those of the viewBox; angles are degrees, counter-clockwise from the top.
 */

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** Whether the picture is seen from the other side: the bolt lies where the draw pulls it from. */
export function isMirrored({ draw }: Pick<CutawayView, "draw">): boolean {
  return draw.turn === "left";
}

/** Where the parts of a pack lie in the picture. */
export interface Scene {
  /** Number of wheels. */
  readonly count: number;
  /** Middle of the cam. */
  readonly cam: Point;
  /** From one disc to the next one back. */
  readonly step: Point;
  /** How much narrower than high a disc looks. */
  readonly squash: number;
}

export const WIDTH = 470;
export const HEIGHT = 143;
export const WHEEL_RADIUS = 46;
/** Smaller than a wheel by more than the fence falls, so that the fence clears it. */
export const CAM_RADIUS = 36;
export const GATE_DEPTH = 15;
export const PIN_RADIUS = 25;
/** From the face of a disc to its back. */
export const THICKNESS: Point = { x: 7, y: -1.2 };
const CAM_GATE_HALF_WIDTH = 6.5;
const FENCE_HALF_WIDTH = 3.5;
const FENCE_HEIGHT = 9;
const FENCE_BOTTOM = WHEEL_RADIUS + 4;
/** How far nose and fence fall. */
export const FALL = 13;
/** How far x leads down: one looks at the pack from above. */
const LEAN = 0.09;
const WIDEST_SQUASH = 0.74;
/** How far the thrown bolt reaches from the middle of the cam. */
export const BOLT_LENGTH = 160;
const LAST_WHEEL_X = 426;
const WIDEST_STEP = 98;
const RISE = 18;

/** Lays out a pack of so many wheels; the more there are, the narrower they look. */
export function packScene(count: number): Scene {
  const squash = Math.min(WIDEST_SQUASH, (0.6 * (LAST_WHEEL_X - 132)) / count / WHEEL_RADIUS);
  const firstX = 14 + BOLT_LENGTH * squash;
  const room = LAST_WHEEL_X - firstX;
  const stepX = Math.min(WIDEST_STEP, room / count);
  const spare = room - stepX * count;
  return {
    count,
    cam: { x: firstX + spare / 2, y: 95 },
    step: { x: stepX, y: -Math.min(RISE / count, 7) },
    squash,
  };
}

/** Middle of the disc at depth z. */
export function centerAt({ cam, step }: Scene, z: number): Point {
  return { x: cam.x + z * step.x, y: cam.y + z * step.y };
}

/** Depth at which the spindle is cut off, toward the dial. */
export function spindleFront({ step }: Scene): number {
  return -60 / step.x;
}

/** A point of the lock in the picture. */
export function project(scene: Scene, x: number, y: number, z: number): Point {
  const center = centerAt(scene, z);
  return { x: center.x + x * scene.squash, y: center.y + x * LEAN - y };
}

/** Attribute that lays what is drawn about (0, 0) into the plane of a disc. */
export function planeTransform(scene: Scene, z: number, shift: Point = { x: 0, y: 0 }): string {
  const { x, y } = centerAt(scene, z);
  return `matrix(${scene.squash} ${LEAN} 0 1 ${x + shift.x} ${y + shift.y})`;
}

/** Attribute that turns what stands at the top by an angle, counter-clockwise. */
export function turnTransform(angle: number): string {
  return `rotate(${(-angle).toFixed(2)})`;
}

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

/** Angles that a drive pin and a fly take up, half of each. */
const PIN_HALF_ANGLE = 8;
const FLY_HALF_ANGLE = 9;

/** Half the angle that a pin cannot use: the fly's and its own. A fixed fly is as wide as its joint lacks play. */
function blockedAngle(freePlay: Graduations, perTurn: number): number {
  return Math.max(PIN_HALF_ANGLE + FLY_HALF_ANGLE, 180 - (180 * freePlay) / perTurn);
}

/** Half the angle that a fly takes up, degrees. */
export function flyHalfAngle(freePlay: Graduations, perTurn: number): number {
  return blockedAngle(freePlay, perTurn) - PIN_HALF_ANGLE;
}

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

/** How far the parts of one wheel have turned, degrees. */
export interface WheelAngles {
  readonly gate: number;
  readonly fly: number;
  /** Of the drive pin that reaches it from its driver. */
  readonly pin: number;
}

/**
 * How far everything has turned, wheel 1 first.
 *
 * A fly moves in its wheel by just what makes up for the width of fly and pin; where it hangs between its two ends nobody
 * can tell, so it is drawn as far along as the play is used up.
 */
export function packAngles({ wheels, cam, perTurn }: Pick<CutawayView, "wheels" | "cam" | "perTurn">): WheelAngles[] {
  const degrees = 360 / perTurn;
  let driver = cam.position;
  return wheels
    .toReversed()
    .map(({ error, slack, freePlay }) => {
      const pin = (driver * degrees) % 360;
      const blocked = blockedAngle(freePlay, perTurn);
      const used = freePlay > 0 ? slack / freePlay : 0;
      driver += slack;
      return { gate: error * degrees, fly: pin + blocked + used * (360 - 2 * blocked), pin };
    })
    .reverse();
}

/** How far the cam gate has turned from the nose, degrees. */
export function camAngle({ cam, perTurn }: Pick<CutawayView, "cam" | "perTurn">): number {
  return ((cam.pastNose * 360) / perTurn) % 360;
}

/** Attribute that carries a drive pin, drawn on the spindle, out to its place. */
export function pinTransform({ squash }: Scene, angle: number): string {
  const radians = (angle * Math.PI) / 180;
  const x = -PIN_RADIUS * Math.sin(radians);
  const y = PIN_RADIUS * Math.cos(radians);
  return `translate(${(x * squash).toFixed(2)} ${(x * LEAN - y).toFixed(2)})`;
}

/** Corners as the `points` of a polygon. */
export function corners(points: readonly Point[]): string {
  return points.map(({ x, y }) => `${x.toFixed(2)},${y.toFixed(2)}`).join(" ");
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

/** The three faces of a block that one sees, as corners of polygons. */
export interface Block {
  readonly front: string;
  readonly top: string;
  readonly end: string;
}

/** Where a block lies: x and y from and to, its depth, and how many times as thick as a disc it is. */
export interface BlockPlace {
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
  readonly z?: number;
  readonly thick?: number;
}

/** The faces of a block. */
export function blockFaces(scene: Scene, { x, y, z = 0, thick = 1 }: BlockPlace): Block {
  const back = (point: Point): Point => ({ x: point.x + THICKNESS.x * thick, y: point.y + THICKNESS.y * thick });
  const lowLeft = project(scene, x[0], y[0], z);
  const lowRight = project(scene, x[1], y[0], z);
  const highLeft = project(scene, x[0], y[1], z);
  const highRight = project(scene, x[1], y[1], z);
  return {
    front: corners([lowLeft, lowRight, highRight, highLeft]),
    top: corners([highLeft, highRight, back(highRight), back(highLeft)]),
    end: corners([lowRight, highRight, back(highRight), back(lowRight)]),
  };
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

/** Attribute that moves a thing drawn in the picture along x of the lock. */
export function shiftTransform({ squash }: Scene, by: number): string {
  return `translate(${(by * squash).toFixed(2)} ${(by * LEAN).toFixed(2)})`;
}

/** Widths of the columns under the picture, from the bolt to the margin behind wheel 1. */
export function columnWidths({ count, cam, step }: Scene): number[] {
  const first = cam.x - step.x / 2;
  const discs = Array.from({ length: count + 1 }, () => step.x);
  return [first, ...discs, Math.max(0, WIDTH - first - step.x * (count + 1))];
}
