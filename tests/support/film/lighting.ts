import type { Light } from "./scene";

const RADIANS = Math.PI / 180;

/** Light that falls on a point of the scene, as a part of its strength. */
export function litAt(light: Light, x: number, y: number): number {
  const even = 1 + (light.slopeX * x + light.slopeY * y) / 100;
  const { shadow } = light;
  if (shadow === undefined) return even;
  const over =
    ((x - shadow.x) * Math.cos(shadow.side * RADIANS) + (y - shadow.y) * Math.sin(shadow.side * RADIANS)) / shadow.soft;
  const inside = over <= 0 ? 0 : over >= 1 ? 1 : over * over * (3 - 2 * over);
  return even * (1 - shadow.depth * inside);
}

/** Light that a glossy face mirrors into a ray; the face leans so much to the right and up. */
export function mirrored(
  gloss: NonNullable<Light["gloss"]>,
  slopeX: number,
  slopeY: number,
  leanX: number,
  leanY: number,
): number {
  // The ray goes down: its direction is against its slopes.
  const length = Math.sqrt(slopeX * slopeX + slopeY * slopeY + 1);
  const x = -slopeX / length + 2 * leanX - gloss.x;
  const y = -slopeY / length + 2 * leanY - gloss.y;
  const off = (x * x + y * y) / (gloss.width * gloss.width);
  return off > 9 ? 0 : gloss.strength * Math.exp(-off);
}
