/** What a spindle goes through, from the dial in, millimeters. */
export interface ThroughDoor {
  readonly ring_mm: number;
  readonly door_mm: number;
  readonly plate_mm: number;
  /** From the plate to the face of the cam on the far side. */
  readonly body_mm: number;
}

/** How a spindle's end stands at the face of the cam. */
export type SpindleEnd = "too-short" | "holds" | "too-long";

/**
 * Where a spindle must end: at the face of the cam, with the dial at its gap from the ring.
 *
 * Source: geometry: the sum of what it goes through. That it ends at the cam's face is common practice, no source.
 *
 * @returns millimeters from the dial's back
 */
export const spindleLength = ({ ring_mm, door_mm, plate_mm, body_mm }: ThroughDoor, gap_mm: number): number =>
  gap_mm + ring_mm + door_mm + plate_mm + body_mm;

/**
 * How far a spindle stands out of the cam's face; negative where it ends inside.
 *
 * Source: geometry: its length less what it goes through.
 *
 * @param length_mm - of the spindle from the dial's back
 */
export const standsOut = (through: ThroughDoor, gap_mm: number, length_mm: number): number =>
  length_mm - spindleLength(through, gap_mm);

/**
 * Whether that will do.
 *
 * Source: common practice, no source; the limits come from `shared/fitting.json`.
 *
 * @param out_mm - how far it stands out, negative inside
 * @param limits_mm - deepest that still gives the key its hold (negative), and highest that clears the cover
 */
export function spindleEnd(out_mm: number, limits_mm: readonly [deepest: number, highest: number]): SpindleEnd {
  const [deepest, highest] = limits_mm;
  if (out_mm < deepest) return "too-short";
  return out_mm > highest ? "too-long" : "holds";
}
