import { seeded } from "../seeded";
import type { Sensor } from "./scene";

/** What is the same for every picture of a camera. */
export interface Chip {
  /** Read from a place that chance gives for each row: drawing each anew would take longer than the picture. */
  readonly normals: Float32Array;
  /** The gray for each of so many steps of light. */
  readonly curve: Uint8Array;
  readonly chance: () => number;
}

const NORMALS = 1 << 18;
const STEPS = 1 << 16;

/** Normal numbers for all chips: which of them comes where is left to a chip's own chance. */
const normals = lazily(() => {
  const chance = seeded(1);
  const numbers = new Float32Array(NORMALS);
  for (let i = 0; i < NORMALS; i += 2) {
    const radius = Math.sqrt(-2 * Math.log(1 - chance()));
    const angle = 2 * Math.PI * chance();
    numbers[i] = radius * Math.cos(angle);
    numbers[i + 1] = radius * Math.sin(angle);
  }
  return numbers;
});

/** The chip of one camera. @param gamma - of the grays that come out */
export function chipOf({ gamma }: Sensor, chance: () => number): Chip {
  const curve = Uint8Array.from({ length: STEPS + 1 }, (_, step) => Math.round(255 * (step / STEPS) ** (1 / gamma)));
  return { normals: normals(), curve, chance };
}

/** Grays of a sensor that saw this light (1 is white). */
export function developed(
  light: Float32Array,
  width: number,
  height: number,
  sensor: Sensor,
  { normals, curve, chance }: Chip,
): Uint8Array {
  const seen = sensor.blur > 0 ? blurred(light, width, height, sensor.blur) : light;
  const grays = new Uint8Array(seen.length);
  const read = (sensor.readNoise / 255) ** 2;
  const shot = (sensor.shotNoise / 255) ** 2;
  const isNoisy = read + shot > 0;
  // Each row starts at its own place, so that no two rows look alike.
  let from = 0;
  for (let i = 0; i < seen.length; i++) {
    if (i % width === 0) from = Math.floor(chance() * NORMALS);
    const bright = seen[i] as number;
    const off = isNoisy ? Math.sqrt(read + shot * bright) * (normals[(from + i) & (NORMALS - 1)] as number) : 0;
    grays[i] = curve[stepOf(bright + off)] as number;
  }
  return grays;
}

function stepOf(light: number): number {
  if (light <= 0) return 0;
  return light >= 1 ? STEPS : (light * STEPS + 0.5) | 0;
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
  const padded = new Float64Array(points + 2 * reach);
  for (let line = 0; line < lines; line++) {
    // The line's ends go on outside.
    for (let k = 0; k < padded.length; k++) {
      padded[k] = light[line * next + Math.min(points - 1, Math.max(0, k - reach)) * step] as number;
    }
    for (let point = 0; point < points; point++) {
      let sum = 0;
      for (let k = 0; k < curve.length; k++) sum += (curve[k] as number) * (padded[point + k] as number);
      out[line * next + point * step] = sum;
    }
  }
  return out;
}

function lazily<Value extends object>(make: () => Value): () => Value {
  let made: Value | undefined;
  return () => {
    made ??= make();
    return made;
  };
}
