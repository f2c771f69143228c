import type { Turn } from "../../../lock/dial";
import type { ZeroReading } from "../../../zeroing/zeroingMachine";

/** A place for one reading beside the ring, in the dial's drawing units. */
export interface Socket {
  readonly key: string;
  readonly x: number;
  readonly y: number;
  /** The peg, off the arc by the reading's deviation; null while the socket waits. */
  readonly peg: { readonly x: number; readonly y: number } | null;
  /** Whether the next reading goes here. */
  readonly isNext: boolean;
}

/** Radius of the arcs on which the sockets sit, outside the ring. */
export const ARC = 284;
/** How far a peg stands off its arc for one graduation of deviation. */
const PER_GRADUATION = 22;
/** Between two sockets, degrees. */
const SPACING = 13;

const SIDE_SIGN: Readonly<Record<Turn, 1 | -1>> = { right: 1, left: -1 };

const at = (radius: number, degrees: number) => ({
  x: radius * Math.sin((degrees * Math.PI) / 180),
  y: -radius * Math.cos((degrees * Math.PI) / 180),
});

/** Angle of the k-th of n sockets of a side, degrees clockwise from the top; they run on in the direction of turning. */
function socketAngle(side: Turn, k: number, count: number): number {
  return SIDE_SIGN[side] * (90 + (k - (count - 1) / 2) * SPACING);
}

/**
 * The sockets of one side: one for every reading wanted, or more when a wide series asks for more.
 *
 * A peg stands outside the arc where the dial stopped left of zero, inside where it stopped right of it.
 *
 * @param readings - accepted ones
 * @param wanted - how many close the series
 * @param isOpen - whether the series is under way
 */
export function sockets(side: Turn, readings: readonly ZeroReading[], wanted: number, isOpen: boolean): Socket[] {
  const count = Math.max(wanted, readings.length + (isOpen ? 1 : 0));
  return Array.from({ length: count }, (_, k) => {
    const angle = socketAngle(side, k, count);
    const reading = readings[k];
    const peg = reading === undefined ? null : at(ARC + reading.deviation * PER_GRADUATION, angle);
    return { key: `${side}-${k}`, ...at(ARC, angle), peg, isNext: isOpen && k === readings.length };
  });
}

/** An arc beside the sockets of a side, as an SVG path: the bar that closes a series, or the way of the chevrons. */
export function sideArc(side: Turn, radius: number, count: number): string {
  const reach = ((count - 1) / 2) * SPACING + 9;
  const from = at(radius, SIDE_SIGN[side] * (90 - reach));
  const to = at(radius, SIDE_SIGN[side] * (90 + reach));
  return `M ${from.x} ${from.y} A ${radius} ${radius} 0 0 ${side === "right" ? 1 : 0} ${to.x} ${to.y}`;
}

/** Places of the chevrons that point the way to turn, with the rotation of each, degrees. */
export function chevrons(side: Turn, count: number): readonly { readonly angle: number; readonly flip: 1 | -1 }[] {
  // At the far end, where the loupe leaves them free.
  const first = ((count - 1) / 2) * SPACING + 18;
  return [0, 1, 2].map((k) => ({ angle: SIDE_SIGN[side] * (90 + first + 7 * k), flip: SIDE_SIGN[side] }));
}
