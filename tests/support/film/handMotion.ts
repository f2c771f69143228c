import type { HandPlace } from "./scene";

/** A run of the hand: so far (graduations, left positive), and how long it rests at its end. */
export interface Leg {
  readonly by: number;
  /** Fastest speed, graduations a second. */
  readonly speed: number;
  readonly restMs: number;
}

interface Piece {
  readonly from: number;
  readonly until: number;
  readonly start: number;
  readonly by: number;
}

/** Where a dial is at any time. */
export interface Motion {
  readonly durationMs: number;
  /** Graduations, unwrapped, left positive. */
  readonly positionAt: (at: number) => number;
  /** Graduations a second, over half a millisecond around a time. */
  readonly speedAt: (at: number) => number;
  /** Times at which it rests. */
  readonly rests: readonly { readonly from: number; readonly until: number; readonly position: number }[];
}

/** The part of a way that is gone when so much of its time is: no jerk at either end; its fastest speed is 1.875 ways a time. */
const smooth = (part: number) => part * part * part * (10 - 15 * part + 6 * part * part);
const FASTEST = 1.875;

/**
 * A dial turned by a hand, from rest to rest.
 *
 * @param graspMs - a hand turns some half a turn, then takes hold anew for so long; 0 spins it through
 */
export function motionOf(
  legs: readonly Leg[],
  {
    start = 0,
    restMs = 500,
    grasp = 60,
    graspMs = 0,
  }: Partial<Record<"start" | "restMs" | "grasp" | "graspMs", number>> = {},
): Motion {
  const pieces: Piece[] = [];
  const rests = [{ from: 0, until: restMs, position: start }];
  let at = restMs;
  let position = start;
  for (const leg of legs) {
    const parts = graspMs > 0 ? Math.max(1, Math.ceil(Math.abs(leg.by) / grasp)) : 1;
    for (let part = 0; part < parts; part++) {
      const by = leg.by / parts;
      const until = at + (1000 * FASTEST * Math.abs(by)) / leg.speed;
      pieces.push({ from: at, until, start: position, by });
      position += by;
      at = part + 1 < parts ? until + graspMs : until;
    }
    rests.push({ from: at, until: at + leg.restMs, position });
    at += leg.restMs;
  }
  const positionAt = (time: number) => {
    const piece = lastBefore(pieces, time);
    if (piece === undefined) return start;
    return piece.start + piece.by * smooth(Math.min(1, (time - piece.from) / (piece.until - piece.from)));
  };
  return {
    durationMs: at,
    positionAt,
    speedAt: (time) => (positionAt(time + 0.25) - positionAt(time - 0.25)) * 2000,
    rests,
  };
}

function lastBefore(pieces: readonly Piece[], time: number): Piece | undefined {
  let low = 0;
  let high = pieces.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((pieces[middle]?.from ?? 0) <= time) low = middle + 1;
    else high = middle;
  }
  return pieces[low - 1];
}

/** A hand that turns with the dial, and goes back for a new hold each time it has turned as far as a wrist does (degrees). */
export function holding(
  motion: Motion,
  graduations: number,
  { wrist = 100, from = 0, until = Number.POSITIVE_INFINITY }: Partial<Record<"wrist" | "from" | "until", number>> = {},
): (at: number) => HandPlace | undefined {
  return (at) => {
    if (at < from || at > until) return undefined;
    const angle = (360 * motion.positionAt(at)) / graduations;
    const turned = ((angle / wrist) % 1) + (angle < 0 ? 1 : 0);
    // Most of the way with the dial, the last tenth back.
    const held = turned < 0.9 ? turned - 0.45 : 0.45 - 9 * (turned - 0.9);
    return { angle: wrist * held, x: 0, y: 0 };
  };
}
