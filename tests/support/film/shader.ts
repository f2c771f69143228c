import { type Bend, bendOf } from "./bend";
import { HandMap } from "./handMap";
import { mirrored } from "./lighting";
import { KIND, type RayField } from "./rayField";
import type { Scene } from "./scene";
import { sampled, type Texture, textureFor } from "./texture";

const RADIANS = Math.PI / 180;
/** Most rays meet what never changes: its number is kept at hand. */
const STILL = KIND.still;
/** So many rays of a row are asked together whether the hand is near. */
const TOGETHER = 8;

/** Lights what rays met, as the disc and the hand are at one moment after another. */
export class Shader {
  private readonly scene: Scene;
  private readonly texture: Texture;
  private readonly bend: Bend;
  private readonly isFlat: boolean;
  private readonly hand: HandMap;
  /** The face's lean, in the disc's own axes. */
  private readonly leanU: number;
  private readonly leanV: number;
  private cos = 1;
  private sin = 0;
  private strength = 1;

  constructor(scene: Scene) {
    const { camera, disc, light, hand } = scene;
    this.scene = scene;
    this.texture = textureFor(disc.texture, camera.focal / camera.distance);
    this.bend = bendOf(disc.curl);
    this.isFlat = disc.curl === undefined && disc.wobble === 0;
    this.leanU = Math.tan(disc.wobble * RADIANS) * Math.cos(disc.wobbleTo * RADIANS);
    this.leanV = Math.tan(disc.wobble * RADIANS) * Math.sin(disc.wobbleTo * RADIANS);
    this.hand = new HandMap(hand, light, disc.seat);
  }

  /** Puts disc, hand and light to a moment, ms. */
  goTo(at: number): void {
    const angle = 2 * Math.PI * this.scene.turns(at);
    this.cos = Math.cos(angle);
    this.sin = Math.sin(angle);
    this.strength = this.scene.light.strength(at);
    this.hand.goTo(at);
  }

  /** Adds what comes along the rays of a row, from one to another, times a weight, to the light of their pixels. */
  shade(field: RayField, light: Float32Array, from: number, until: number, weight: number): void {
    const times = weight * this.strength;
    for (let begin = from; begin < until; begin += TOGETHER) {
      const end = Math.min(until, begin + TOGETHER);
      const isHanded = this.hand.isOn && this.hand.isNearby(field, (begin + end) >> 1);
      for (let i = begin; i < end; i++) {
        const seen = isHanded ? this.handed(field, i) : this.unhanded(field, i);
        light[i] = (light[i] as number) + times * seen;
      }
    }
  }

  private handed(field: RayField, i: number): number {
    const seen = this.hand.shadeAt(field.handX[i] as number, field.handY[i] as number);
    if (seen >= 0) return seen;
    return this.unhanded(field, i) * this.hand.shadowAt(field.shadowX[i] as number, field.shadowY[i] as number);
  }

  private unhanded(field: RayField, i: number): number {
    const kind = field.kind[i] as number;
    if (kind === STILL) return field.light[i] as number;
    if (kind === KIND.knob) return this.ofKnob(field, i);
    return this.isFlat ? this.ofDisc(field, i, field.x[i] as number, field.y[i] as number) : this.ofBadDisc(field, i);
  }

  private ofDisc(field: RayField, i: number, x: number, y: number): number {
    const { seat, offCenter, radius } = this.scene.disc;
    const u = (x - seat.x) * this.cos + (y - seat.y) * this.sin - offCenter.x;
    const v = (y - seat.y) * this.cos - (x - seat.x) * this.sin - offCenter.y;
    if (field.kind[i] === KIND.rim && u * u + v * v > radius * radius) return field.behind[i] as number;
    return sampled(this.texture, u, v) * (field.light[i] as number) + (field.gloss[i] as number);
  }

  /** The face of a disc that wobbles or curls: the ray meets it somewhat higher or lower. */
  private ofBadDisc(field: RayField, i: number): number {
    const { seat } = this.scene.disc;
    const slopeX = field.slopeX[i] as number;
    const slopeY = field.slopeY[i] as number;
    const { leanU, leanV, cos, sin } = this;
    const { alongX, alongY, perSquare } = this.bend;
    const atX = (field.x[i] as number) - seat.x;
    const atY = (field.y[i] as number) - seat.y;
    let x = atX;
    let y = atY;
    for (let step = 0; step < 3; step++) {
      const u = x * cos + y * sin;
      const v = y * cos - x * sin;
      const along = u * alongX + v * alongY;
      const lift = u * leanU + v * leanV + perSquare * along * along;
      x = atX + lift * slopeX;
      y = atY + lift * slopeY;
    }
    return this.ofDisc(field, i, x + seat.x, y + seat.y) + this.wanderingGloss(field, i, slopeX, slopeY);
  }

  /** What a leaning face mirrors more, or less, than a straight one would. */
  private wanderingGloss(field: RayField, i: number, slopeX: number, slopeY: number): number {
    const { gloss } = this.scene.light;
    if (gloss === undefined || field.kind[i] === KIND.rim) return 0;
    const leanX = this.leanU * this.cos - this.leanV * this.sin;
    const leanY = this.leanU * this.sin + this.leanV * this.cos;
    return mirrored(gloss, slopeX, slopeY, leanX, leanY) - (field.gloss[i] as number);
  }

  /** The knob's top, with grips that turn with it. */
  private ofKnob(field: RayField, i: number): number {
    const { knob, disc } = this.scene;
    if (knob === undefined) return 0;
    const shade = knob.reflectance * (field.light[i] as number);
    if (knob.flutes === 0) return shade;
    const x = (field.x[i] as number) - disc.seat.x;
    const y = (field.y[i] as number) - disc.seat.y;
    const angle = Math.atan2(y * this.cos - x * this.sin, x * this.cos + y * this.sin);
    return shade * (Math.sin(knob.flutes * angle) > 0 ? 1 : 0.85);
  }
}
