import type { Graduations } from "../../../lock/dial";

/** What a key does to the dial: a step at once, and, held down, turning at a speed. */
export interface KeyTurn {
  /** Graduations, left positive. */
  readonly step: Graduations;
  /** Graduations a second while held; 0 for keys that only step. */
  readonly speed: number;
}

const SLOW = 18;
const FAST = 130;

/** A key held this long goes over from its step to turning, milliseconds. */
export const HOLD_AFTER = 400;

interface KeyPress {
  readonly key: string;
  readonly shiftKey: boolean;
}

const ARROWS: Readonly<Record<string, 1 | -1>> = { ArrowLeft: 1, ArrowUp: 1, ArrowRight: -1, ArrowDown: -1 };
const PAGES: Readonly<Record<string, 1 | -1>> = { PageUp: 1, PageDown: -1 };
const NUDGES: Readonly<Record<string, 1 | -1>> = { ",": 1, "<": 1, ".": -1, ">": -1 };

/**
 * What a key press does. Arrow keys turn the way they point; left and up make the position grow.
 *
 * Arrows step by 1 (with Shift 10) and turn slowly (with Shift fast) while held; Page Up and Down step by 10 (with
 * Shift a whole turn); comma and period nudge by a tenth.
 *
 * @param perTurn - graduations in one turn
 * @returns null for a key that is not the dial's
 */
export function keyTurn({ key, shiftKey }: KeyPress, perTurn: number): KeyTurn | null {
  const arrow = ARROWS[key];
  if (arrow !== undefined) return { step: arrow * (shiftKey ? 10 : 1), speed: arrow * (shiftKey ? FAST : SLOW) };
  const page = PAGES[key];
  if (page !== undefined) return { step: page * (shiftKey ? perTurn : 10), speed: 0 };
  const nudge = NUDGES[key];
  return nudge === undefined ? null : { step: nudge * 0.1, speed: 0 };
}
