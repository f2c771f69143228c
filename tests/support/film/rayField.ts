/** What a ray of a camera meets. */
export const KIND = {
  /** Something that never changes; `light` is all of it. */
  still: 0,
  /** The disc's face. */
  disc: 1,
  /** Near the disc's rim, where a disc that sits badly now covers what is behind it and now does not. */
  rim: 2,
  /** The top of the knob. */
  knob: 3,
} as const;

/** What all rays of a camera meet, in one row for each number. */
export interface RayField {
  readonly kind: Uint8Array;
  /** Point met, millimeters; on the disc, as if its face were square to its axis. */
  readonly x: Float32Array;
  readonly y: Float32Array;
  readonly z: Float32Array;
  /** Light on it, or from it where it never changes. */
  readonly light: Float32Array;
  /** Mirrored light that comes on top. */
  readonly gloss: Float32Array;
  /** Light of what lies behind the disc's rim. */
  readonly behind: Float32Array;
  /** How far the ray goes to the right and up for each millimeter of height. */
  readonly slopeX: Float32Array;
  readonly slopeY: Float32Array;
  /** Where the ray is at the hand's height. */
  readonly handX: Float32Array;
  readonly handY: Float32Array;
  /** Where the light that falls on the point met passes the hand's height. */
  readonly shadowX: Float32Array;
  readonly shadowY: Float32Array;
}

/** Room for so many rays. */
export function rayField(rays: number): RayField {
  const row = () => new Float32Array(rays);
  return {
    kind: new Uint8Array(rays),
    x: row(),
    y: row(),
    z: row(),
    light: row(),
    gloss: row(),
    behind: row(),
    slopeX: row(),
    slopeY: row(),
    handX: row(),
    handY: row(),
    shadowX: row(),
    shadowY: row(),
  };
}
