import type { Sensor } from "./scene";

/** A row of normal numbers, read from a place that chance gives for each picture: drawing each anew would take longer than the picture. */
export interface Noise {
  readonly normals: Float32Array;
  readonly chance: () => number;
}

const NORMALS = 1 << 18;

/** Noise for one camera. */
export function noiseOf(chance: () => number): Noise {
  const normals = new Float32Array(NORMALS);
  for (let i = 0; i < NORMALS; i += 2) {
    const radius = Math.sqrt(-2 * Math.log(1 - chance()));
    const angle = 2 * Math.PI * chance();
    normals[i] = radius * Math.cos(angle);
    normals[i + 1] = radius * Math.sin(angle);
  }
  return { normals, chance };
}

const STEPS = 1 << 16;

/** The gray for each of so many steps of light. */
const curveOf = (gamma: number): Uint8Array =>
  Uint8Array.from({ length: STEPS + 1 }, (_, step) => Math.round(255 * (step / STEPS) ** (1 / gamma)));

/** Grays of a sensor that saw this light (1 is white). */
export function developed(
  light: Float32Array,
  width: number,
  height: number,
  sensor: Sensor,
  { normals, chance }: Noise,
): Uint8Array {
  const seen = sensor.blur > 0 ? blurred(light, width, height, sensor.blur) : light;
  const grays = new Uint8Array(seen.length);
  const read = (sensor.readNoise / 255) ** 2;
  const shot = (sensor.shotNoise / 255) ** 2;
  const isNoisy = read + shot > 0;
  const curve = curveOf(sensor.gamma);
  // Each row starts at its own place, so that no two rows look alike.
  let from = 0;
  for (let i = 0; i < seen.length; i++) {
    if (i % width === 0) from = Math.floor(chance() * NORMALS);
    const bright = seen[i] as number;
    const off = isNoisy ? Math.sqrt(read + shot * bright) * (normals[(from + i) & (NORMALS - 1)] as number) : 0;
    grays[i] = curve[Math.min(STEPS, Math.max(0, Math.round((bright + off) * STEPS)))] as number;
  }
  return grays;
}

/** Blurred by a normal curve, rows and then columns. */
function blurred(light: Float32Array, width: number, height: number, sd: number): Float32Array {
  const reach = Math.ceil(3 * sd);
  const weights = Array.from({ length: 2 * reach + 1 }, (_, i) => Math.exp(-((i - reach) ** 2) / (2 * sd * sd)));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const curve = Float64Array.from(weights, (weight) => weight / total);
  const across = along(light, width, height, 1, width, curve, reach);
  return along(across, height, width, width, 1, curve, reach);
}

/** Blurred along lines of so many points, which are `step` apart; the next line is `next` away. */
function along(
  light: Float32Array,
  points: number,
  lines: number,
  step: number,
  next: number,
  curve: Float64Array,
  reach: number,
): Float32Array {
  const out = new Float32Array(light.length);
  for (let line = 0; line < lines; line++) {
    for (let point = 0; point < points; point++) {
      let sum = 0;
      for (let k = -reach; k <= reach; k++) {
        const other = Math.min(points - 1, Math.max(0, point + k));
        sum += (curve[k + reach] as number) * (light[line * next + other * step] as number);
      }
      out[line * next + point * step] = sum;
    }
  }
  return out;
}
