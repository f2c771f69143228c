import { litAt } from "./lighting";
import type { RayField } from "./rayField";
import type { Finger, Hand, Light } from "./scene";
import { sampled, type Texture } from "./texture";

const RADIANS = Math.PI / 180;
/** Of the map, millimeters around the hand's fingers. */
const RIM = 6;
/** What the map says far from any finger. */
const FAR = -1;
/** Nearer to a finger than this the map is read: from here outward there is not even shadow. */
const NEAR = -0.25;
/** From this far from a finger on, millimeters, neighboring rays do not meet it either. */
const WELL_AWAY = 20;
/** Side of a field of which it is known whether it is near a finger, millimeters. */
const FIELD = 4;

/**
 * A scene's hand at one moment.
 *
 * How deep a point lies in a finger (1 on its line, 0 at its edge, less outside) is drawn once, as a map that moves with the hand.
 */
export class HandMap {
  isOn = false;
  private readonly hand: Hand | undefined;
  private readonly light: Light;
  private readonly map: Texture;
  /** Of each field whether any of it is near a finger, row by row from below. */
  private readonly near: Uint8Array;
  /** The same for being not well away. */
  private readonly nearby: Uint8Array;
  private readonly fields: number;
  private readonly reach: number;
  private readonly seat: { readonly x: number; readonly y: number };
  private cos = 1;
  private sin = 0;
  private x = 0;
  private y = 0;

  constructor(hand: Hand | undefined, light: Light, seat: { readonly x: number; readonly y: number }) {
    this.hand = hand;
    this.light = light;
    this.seat = seat;
    const fingers = hand?.fingers ?? [];
    this.reach =
      RIM +
      Math.max(1, ...fingers.map((f) => Math.max(Math.hypot(f.fromX, f.fromY), Math.hypot(f.toX, f.toY)) + f.radius));
    this.map =
      hand === undefined ? { width: 2, height: 2, texelsPerMm: 1, data: new Float32Array(4) } : mapOf(hand, this.reach);
    this.fields = Math.ceil((2 * this.reach) / FIELD);
    this.near = nearFields(fingers, this.fields, this.reach, 1);
    this.nearby = nearFields(fingers, this.fields, this.reach, WELL_AWAY);
  }

  /** Puts it where it is at a time, ms. */
  goTo(at: number): void {
    const place = this.hand?.place(at);
    this.isOn = place !== undefined;
    if (place === undefined) return;
    this.cos = Math.cos(place.angle * RADIANS);
    this.sin = Math.sin(place.angle * RADIANS);
    this.x = this.seat.x + place.x;
    this.y = this.seat.y + place.y;
  }

  /** Its shade at a point of its own height; -1 beside it. */
  shadeAt(x: number, y: number): number {
    const deep = this.depthAt(x, y);
    if (deep <= 0) return -1;
    const round = Math.sqrt(Math.min(1, deep * (2 - deep)));
    // Skin is not even: folds across a finger.
    const skin = 1 + 0.06 * Math.sin(0.9 * x + 0.4 * y) * Math.sin(0.5 * y - 0.3 * x);
    return (this.hand?.reflectance ?? 0) * (0.35 + 0.65 * round) * skin * litAt(this.light, x, y);
  }

  /** What is left of the light that passes its height at a point. */
  shadowAt(x: number, y: number): number {
    const deep = this.depthAt(x, y);
    return deep <= NEAR ? 1 : 1 - this.light.cast.depth * Math.min(1, 0.5 + 2 * deep);
  }

  /** Whether it, or its shadow, may be seen along the rays around one of them. */
  isNearby({ handX, handY, shadowX, shadowY }: RayField, i: number): boolean {
    return (
      this.isIn(this.nearby, handX[i] as number, handY[i] as number) ||
      this.isIn(this.nearby, shadowX[i] as number, shadowY[i] as number)
    );
  }

  private depthAt(x: number, y: number): number {
    if (!this.isIn(this.near, x, y)) return FAR;
    const [toX, toY] = [x - this.x, y - this.y];
    return sampled(this.map, toX * this.cos + toY * this.sin, toY * this.cos - toX * this.sin);
  }

  private isIn(fields: Uint8Array, x: number, y: number): boolean {
    const toX = x - this.x;
    const toY = y - this.y;
    const across = toX * this.cos + toY * this.sin;
    const up = toY * this.cos - toX * this.sin;
    const { reach } = this;
    if (across <= -reach || across >= reach || up <= -reach || up >= reach) return false;
    return fields[(((up + reach) / FIELD) | 0) * this.fields + (((across + reach) / FIELD) | 0)] === 1;
  }
}

function mapOf({ fingers }: Hand, reach: number): Texture {
  const texelsPerMm = 2;
  const size = Math.ceil(2 * reach * texelsPerMm);
  const data = new Float32Array(size * size).fill(FAR);
  const placeOf = (mm: number) => Math.min(size - 1, Math.max(0, Math.round(size / 2 + mm * texelsPerMm)));
  for (const finger of fingers) {
    const { fromX, fromY, toX, toY } = finger;
    const around = (1 - NEAR) * finger.radius + 2;
    const [left, right] = [placeOf(Math.min(fromX, toX) - around), placeOf(Math.max(fromX, toX) + around)];
    const [top, bottom] = [placeOf(-Math.max(fromY, toY) - around), placeOf(-Math.min(fromY, toY) + around)];
    for (let row = top; row <= bottom; row++) {
      const y = (size / 2 - row - 0.5) / texelsPerMm;
      for (let column = left; column <= right; column++) {
        const depth = depthIn(finger, (column + 0.5 - size / 2) / texelsPerMm, y);
        const i = row * size + column;
        if (depth > (data[i] as number)) data[i] = depth;
      }
    }
  }
  return { width: size, height: size, texelsPerMm, data };
}

/** Of each field whether any of it is within so much (millimeters) of where a finger or its shadow is seen. */
function nearFields(fingers: readonly Finger[], fields: number, reach: number, within: number): Uint8Array {
  const halfDiagonal = FIELD / Math.SQRT2;
  return Uint8Array.from({ length: fields * fields }, (_, field) => {
    const x = ((field % fields) + 0.5) * FIELD - reach;
    const y = (Math.floor(field / fields) + 0.5) * FIELD - reach;
    return fingers.some((finger) => (depthIn(finger, x, y) - NEAR) * finger.radius > -within - halfDiagonal) ? 1 : 0;
  });
}

function depthIn({ fromX, fromY, toX, toY, radius }: Finger, x: number, y: number): number {
  const [wayX, wayY] = [toX - fromX, toY - fromY];
  const along = ((x - fromX) * wayX + (y - fromY) * wayY) / Math.max(1e-6, wayX * wayX + wayY * wayY);
  const part = Math.min(1, Math.max(0, along));
  return 1 - Math.hypot(x - fromX - part * wayX, y - fromY - part * wayY) / radius;
}
