import { litAt } from "./lighting";
import type { Hand, Light } from "./scene";
import { sampled, type Texture } from "./texture";

const RADIANS = Math.PI / 180;
/** Of the map, millimeters around the hand's fingers. */
const RIM = 6;
/** What the map says far from any finger. */
const FAR = -1;

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

  /** Its height above the base, millimeters. */
  get height(): number {
    return this.hand?.height ?? 0;
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

  /** What is left of the light under it, at a point of a height. */
  shadowAt(x: number, y: number, z: number): number {
    const { cast } = this.light;
    const over = this.height - z;
    const deep = this.depthAt(x - cast.x * over, y - cast.y * over);
    return 1 - cast.depth * Math.min(1, Math.max(0, 0.5 + 2 * deep));
  }

  private depthAt(x: number, y: number): number {
    const toX = x - this.x;
    const toY = y - this.y;
    if (toX * toX + toY * toY > this.reach * this.reach) return FAR;
    return sampled(this.map, toX * this.cos + toY * this.sin, toY * this.cos - toX * this.sin);
  }
}

function mapOf({ fingers }: Hand, reach: number): Texture {
  const texelsPerMm = 2;
  const size = Math.ceil(2 * reach * texelsPerMm);
  const data = new Float32Array(size * size);
  for (let i = 0; i < data.length; i++) {
    const x = ((i % size) + 0.5 - size / 2) / texelsPerMm;
    const y = (size / 2 - Math.floor(i / size) - 0.5) / texelsPerMm;
    let deepest = FAR;
    for (const finger of fingers) deepest = Math.max(deepest, depthIn(finger, x, y));
    data[i] = deepest;
  }
  return { width: size, height: size, texelsPerMm, data };
}

function depthIn({ fromX, fromY, toX, toY, radius }: Hand["fingers"][number], x: number, y: number): number {
  const [wayX, wayY] = [toX - fromX, toY - fromY];
  const along = ((x - fromX) * wayX + (y - fromY) * wayY) / Math.max(1e-6, wayX * wayX + wayY * wayY);
  const part = Math.min(1, Math.max(0, along));
  return 1 - Math.hypot(x - fromX - part * wayX, y - fromY - part * wayY) / radius;
}
