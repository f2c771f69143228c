import type { Turn } from "../../../lock/dial";

/** One mark of the dial's face, in the dial's own frame: 0 degrees is at the opening index when the dial reads 0. */
export interface Mark {
  /** Degrees clockwise. */
  readonly angle: number;
  readonly kind: "one" | "five" | "ten";
  /** The number engraved at it, at every ten. */
  readonly label: string | null;
}

/**
 * The marks of a dial's face: every graduation, longer at five, numbered at ten.
 *
 * @param graduations - marks in one turn
 * @param numbersIncrease - the turn under which the numbers at the index grow
 */
export function faceMarks(graduations: number, numbersIncrease: Turn): Mark[] {
  // Turning left brings up what lies clockwise of the index, so there the greater numbers stand.
  const way = numbersIncrease === "left" ? 1 : -1;
  return Array.from({ length: graduations }, (_, number) => ({
    angle: (way * number * 360) / graduations,
    kind: number % 10 === 0 ? "ten" : number % 5 === 0 ? "five" : "one",
    label: number % 10 === 0 ? String(number) : null,
  }));
}

/** A point round the middle of the drawing, for a path. @param degrees - clockwise from the top */
export function pointAt(radius: number, degrees: number): string {
  const angle = (degrees * Math.PI) / 180;
  return `${(radius * Math.sin(angle)).toFixed(2)} ${(-radius * Math.cos(angle)).toFixed(2)}`;
}

/** Of the knob: turned by one of them, it looks the same. */
export const FLUTES = 15;

/** How far the dial is turned on the screen, degrees clockwise. */
export function dialRotation(position: number, graduations: number): number {
  return -(position / graduations) * 360;
}
