import { type Bend, bendOf, riseAt } from "./bend";
import type { Pose } from "./camera";
import { litAt, mirrored } from "./lighting";
import { KIND, type RayField } from "./rayField";
import type { Scene } from "./scene";
import { sampled, type Texture, textureFor } from "./texture";

/** Finds what rays meet, leaving out what moves: the hand, and the print on the disc. */
export class Tracer {
  private readonly scene: Scene;
  private readonly baseTexture: Texture;
  private readonly baseBend: Bend;
  /** How near to the rim a disc that sits badly may or may not cover what is behind. */
  private readonly margin: number;
  // The ray: where it is at z = 0, and its way for each millimeter of height.
  private groundX = 0;
  private groundY = 0;
  private slopeX = 0;
  private slopeY = 0;
  // Where it is now.
  private x = 0;
  private y = 0;
  private z = 0;

  constructor(scene: Scene) {
    this.scene = scene;
    const { camera, base, disc } = scene;
    this.baseTexture = textureFor(base.texture, camera.focal / camera.distance);
    this.baseBend = bendOf(base.curl);
    const lift = Math.tan((disc.wobble * Math.PI) / 180) * disc.radius + Math.abs(disc.curl?.rise ?? 0);
    const off = Math.hypot(disc.offCenter.x, disc.offCenter.y) + 1.5 * lift;
    this.margin = off === 0 ? 0 : off + 0.5;
  }

  /** Follows the rays from one to another (directions to the right and down in focal lengths, in pairs). */
  trace(field: RayField, rays: Float32Array, { eye, ahead, right, down }: Pose, from: number, until: number): void {
    for (let i = from; i < until; i++) {
      const u = rays[2 * i] as number;
      const v = rays[2 * i + 1] as number;
      const dz = ahead[2] + u * right[2] + v * down[2];
      this.slopeX = (ahead[0] + u * right[0] + v * down[0]) / dz;
      this.slopeY = (ahead[1] + u * right[1] + v * down[1]) / dz;
      this.groundX = eye[0] - eye[2] * this.slopeX;
      this.groundY = eye[1] - eye[2] * this.slopeY;
      field.slopeX[i] = this.slopeX;
      field.slopeY[i] = this.slopeY;
      if (!this.meetsKnob(field, i) && !this.meetsDisc(field, i)) this.still(field, i, this.behindDisc());
    }
  }

  private toHeight(z: number): void {
    this.z = z;
    this.x = this.groundX + z * this.slopeX;
    this.y = this.groundY + z * this.slopeY;
  }

  private still(field: RayField, i: number, light: number): void {
    this.keep(field, i, KIND.still, light);
  }

  private keep(field: RayField, i: number, kind: number, light: number): void {
    field.kind[i] = kind;
    field.x[i] = this.x;
    field.y[i] = this.y;
    field.z[i] = this.z;
    field.light[i] = light;
    field.gloss[i] = kind === KIND.disc || kind === KIND.rim ? this.gloss() : 0;
    this.keepHand(field, i);
  }

  private keepHand(field: RayField, i: number): void {
    const { hand, light } = this.scene;
    if (hand === undefined) return;
    const up = hand.height - this.z;
    field.handX[i] = this.x + up * this.slopeX;
    field.handY[i] = this.y + up * this.slopeY;
    field.shadowX[i] = this.x - up * light.cast.x;
    field.shadowY[i] = this.y - up * light.cast.y;
  }

  private meetsKnob(field: RayField, i: number): boolean {
    const { knob, disc, light } = this.scene;
    if (knob === undefined) return false;
    this.toHeight(knob.height);
    const x = this.x - disc.seat.x;
    const y = this.y - disc.seat.y;
    if (x * x + y * y <= knob.radius * knob.radius) {
      this.keep(field, i, KIND.knob, litAt(light, this.x, this.y));
      return true;
    }
    const side = this.sideOf(x, y, knob.height - disc.height, knob.radius);
    if (side < 0) return false;
    this.still(field, i, knob.reflectance * side);
    return true;
  }

  /**
   * How a cylinder's side is lit where a ray that passes its top (at x, y from its axis) goes into it before it is `drop` lower.
   *
   * @returns -1 when it misses
   */
  private sideOf(x: number, y: number, drop: number, radius: number): number {
    const stepX = -drop * this.slopeX;
    const stepY = -drop * this.slopeY;
    const a = stepX * stepX + stepY * stepY;
    const b = x * stepX + y * stepY;
    const under = b * b - a * (x * x + y * y - radius * radius);
    if (b >= 0 || under <= 0) return -1;
    const along = (-b - Math.sqrt(under)) / a;
    if (along > 1) return -1;
    this.toHeight(this.z - along * drop);
    const facing = ((x + along * stepX) * this.slopeX + (y + along * stepY) * this.slopeY) / radius;
    return 0.35 + 0.4 * Math.min(1, Math.max(0, facing));
  }

  private meetsDisc(field: RayField, i: number): boolean {
    const { disc, knob, light } = this.scene;
    let r = 0;
    let z = disc.height;
    for (let step = 0; step < (disc.cone === 0 ? 1 : 5); step++) {
      this.toHeight(z);
      r = Math.hypot(this.x - disc.seat.x, this.y - disc.seat.y);
      z = disc.height + disc.cone * (1 - Math.min(1, r / disc.radius));
    }
    if (r > disc.radius + this.margin) return false;
    const lit = litAt(light, this.x, this.y);
    const dark = knob === undefined ? 1 : this.shadowOf(knob.height, knob.radius);
    const isRim = r > disc.radius - this.margin;
    this.keep(field, i, isRim ? KIND.rim : KIND.disc, lit * dark);
    if (isRim) field.behind[i] = this.behindDisc();
    return true;
  }

  private behindDisc(): number {
    const { disc, light } = this.scene;
    this.toHeight(disc.height);
    const side = this.sideOf(this.x - disc.seat.x, this.y - disc.seat.y, disc.height, disc.radius);
    if (side >= 0) return disc.side * side;
    this.toHeight(0);
    if (this.baseBend.perSquare !== 0) {
      for (let step = 0; step < 4; step++) this.toHeight(riseAt(this.baseBend, this.x, this.y));
    }
    const dark = this.shadowOf(disc.height, disc.radius);
    return (sampled(this.baseTexture, this.x, this.y) * litAt(light, this.x, this.y) + this.gloss()) * dark;
  }

  /** What is left of the light at the point met, below a round thing on the disc's axis. */
  private shadowOf(topHeight: number, radius: number): number {
    const { cast } = this.scene.light;
    const { seat } = this.scene.disc;
    const x = this.x - seat.x - cast.x * (topHeight - this.z);
    const y = this.y - seat.y - cast.y * (topHeight - this.z);
    const inside = (radius + 3 - Math.sqrt(x * x + y * y)) / 3;
    return 1 - cast.depth * Math.min(1, Math.max(0, inside));
  }

  private gloss(): number {
    const { gloss } = this.scene.light;
    return gloss === undefined ? 0 : mirrored(gloss, this.slopeX, this.slopeY, 0, 0);
  }
}
