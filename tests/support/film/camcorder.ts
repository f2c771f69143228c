import { poseAt, raysOf } from "./camera";
import { type RayField, rayField } from "./rayField";
import type { Scene, Sensor } from "./scene";
import { type Chip, chipOf, developed } from "./sensor";
import { Shader } from "./shader";
import { Tracer } from "./tracer";

/** A picture in grays, row by row, 0 is black. */
export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
}

/** Places in a pixel for the moments of an exposure, in parts of it: uncorrelated with time and with each other, so that nothing moves by them. */
const PLACES: Readonly<Record<Sensor["moments"], { readonly x: readonly number[]; readonly y: readonly number[] }>> = {
  1: { x: [0], y: [0] },
  4: { x: [1, -3, 3, -1].map((x) => x / 8), y: [1, -1, -1, 1].map((y) => y / 4) },
  8: { x: [1, 7, -7, -3, -1, 3, -5, 5].map((x) => x / 16), y: [3, -1, -3, 7, -5, -7, 1, 5].map((y) => y / 16) },
};

/** Takes pictures of a scene. A camera that stands still looks once at what stands still. */
export class Camcorder {
  private readonly scene: Scene;
  private readonly sensor: Sensor;
  private readonly tracer: Tracer;
  private readonly shader: Shader;
  private readonly rays: readonly Float32Array[];
  private readonly fields: readonly RayField[];
  private readonly light: Float32Array;
  private readonly chip: Chip;
  /** How all that moves rested when the light was gathered last: a picture of the same needs no new light. */
  private lastRest: string | null = null;

  constructor(scene: Scene, sensor: Sensor, chance: () => number) {
    this.scene = scene;
    this.sensor = sensor;
    this.tracer = new Tracer(scene);
    this.shader = new Shader(scene);
    const { x, y } = PLACES[sensor.moments];
    const pixels = scene.camera.width * scene.camera.height;
    this.rays = x.map((inX, i) => raysOf(scene.camera, 0.5 + inX, 0.5 + (y[i] ?? 0)));
    this.light = new Float32Array(pixels);
    this.chip = chipOf(sensor, chance);
    if (scene.camera.shake === undefined) {
      const pose = poseAt(scene.camera, 0);
      this.fields = this.rays.map((rays) => {
        const field = rayField(pixels);
        this.tracer.trace(field, rays, pose, 0, pixels);
        return field;
      });
    } else {
      const field = rayField(pixels);
      this.fields = this.rays.map(() => field);
    }
  }

  /** The picture whose middle row is exposed around a time, ms. */
  pictureAt(at: number): Picture {
    const { width, height } = this.scene.camera;
    const { moments, exposureMs } = this.sensor;
    const rest = this.restAt(at);
    if (rest === null || rest !== this.lastRest) {
      this.light.fill(0);
      for (let moment = 0; moment < moments; moment++) {
        this.expose(moment, at + exposureMs * ((moment + 0.5) / moments - 0.5));
      }
    }
    this.lastRest = rest;
    return { width, height, data: developed(this.light, width, height, this.sensor, this.chip) };
  }

  /** What all that moves comes to while a picture is taken, as text; null where something does move. */
  private restAt(at: number): string | null {
    const { camera, turns, hand, light } = this.scene;
    if (camera.shake !== undefined) return null;
    const half = (this.sensor.exposureMs + Math.abs(this.sensor.readoutMs)) / 2;
    const [first, ...later] = [-half, -half / 2, 0, half / 2, half].map((off) =>
      JSON.stringify([turns(at + off), hand?.place(at + off) ?? null, light.strength(at + off)]),
    );
    return later.every((one) => one === first) ? (first ?? null) : null;
  }

  private expose(moment: number, at: number): void {
    const { width, height, shake } = this.scene.camera;
    const { readoutMs, moments } = this.sensor;
    const [field, rays] = [this.fields[moment], this.rays[moment]];
    if (field === undefined || rays === undefined) return;
    for (let row = 0; row < height; row++) {
      const rowAt = at + readoutMs * ((row + 0.5) / height - 0.5);
      const [from, until] = [row * width, (row + 1) * width];
      if (shake !== undefined) this.tracer.trace(field, rays, poseAt(this.scene.camera, rowAt), from, until);
      // All rows are lit at once where they are read at once.
      if (row === 0 || readoutMs !== 0) this.shader.goTo(rowAt);
      this.shader.shade(field, this.light, from, until, 1 / moments);
    }
  }
}
