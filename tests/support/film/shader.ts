import { type Bend, bendOf, riseAt } from "./bend";
import { HandMap } from "./handMap";
import { mirrored } from "./lighting";
import { KIND, type RayField } from "./rayField";
import type { Scene } from "./scene";
import { sampled, type Texture, textureFor } from "./texture";

const RADIANS = Math.PI / 180;

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

  /** Adds what comes along the rays from one to another, times a weight, to the light of their pixels. */
  shade(field: RayField, light: Float32Array, from: number, until: number, weight: number): void {
    const times = weight * this.strength;
    const { hand } = this;
    for (let i = from; i < until; i++) {
      let seen = hand.isOn ? this.ofHand(field, i) : -1;
      if (seen < 0) {
        seen = this.unhanded(field, i);
        if (hand.isOn) seen *= hand.shadowAt(field.x[i] as number, field.y[i] as number, field.z[i] as number);
      }
      light[i] = (light[i] as number) + times * seen;
    }
  }

  private ofHand(field: RayField, i: number): number {
    const up = this.hand.height - (field.z[i] as number);
    return this.hand.shadeAt(
      (field.x[i] as number) + up * (field.slopeX[i] as number),
      (field.y[i] as number) + up * (field.slopeY[i] as number),
    );
  }

  private unhanded(field: RayField, i: number): number {
    const kind = field.kind[i] as number;
    if (kind === KIND.still) return field.light[i] as number;
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
    let x = field.x[i] as number;
    let y = field.y[i] as number;
    for (let step = 0; step < 3; step++) {
      const u = (x - seat.x) * this.cos + (y - seat.y) * this.sin;
      const v = (y - seat.y) * this.cos - (x - seat.x) * this.sin;
      const lift = u * this.leanU + v * this.leanV + riseAt(this.bend, u, v);
      x = (field.x[i] as number) + lift * slopeX;
      y = (field.y[i] as number) + lift * slopeY;
    }
    return this.ofDisc(field, i, x, y) + this.wanderingGloss(field, i, slopeX, slopeY);
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
