import type { Axes } from "./axisKnob";

/** A stick that is turned round its rim, where it does not spring back: its angle turns the dial. */
export interface StickKnob {
  /** Which axis goes to the right, and which one down, from 0. */
  readonly axis: number;
  readonly other: number;
  /** 1 where it turns the dial its own way, -1 where it turns it the other way. */
  readonly perTurn: number;
  /** The smallest move that it showed while it was learned, as a share of a turn. */
  readonly step: number;
}

/** A stick nearer to its middle than this has no angle that a hand could hold. */
const RIM = 0.6;

/** What is smaller is rounding, turns. */
const LEAST = 1e-4;

/** How far a whole turn may be off one, turns: a hand stops within some degrees. */
const MOST_TURN_ERROR = 0.15;

/** The angle of a stick, turns, left positive; null where it is not at its rim. */
function angleOf(axes: Axes, axis: number, other: number): number | null {
  const [x = 0, y = 0] = [axes[axis], axes[other]];
  return Math.hypot(x, y) < RIM ? null : Math.atan2(-y, x) / (2 * Math.PI);
}

/** How far a stick went round, the short way, turns, left positive; 0 where it was let go of in between. */
export function stickMove({ axis, other }: Pick<StickKnob, "axis" | "other">, from: Axes, to: Axes): number {
  const [before, now] = [angleOf(from, axis, other), angleOf(to, axis, other)];
  if (before === null || now === null) return 0;
  return now - before - Math.round(now - before);
}

const movesOf = (seen: readonly Axes[], pair: Pick<StickKnob, "axis" | "other">) =>
  seen.slice(1).map((axes, k) => stickMove(pair, seen[k] ?? [], axes));
const sum = (numbers: readonly number[]) => numbers.reduce((all, one) => all + one, 0);

/**
 * Learns a stick by one whole turn round its rim to the left and one to the right.
 *
 * @param pair - the two axes that moved most, the one to the right first
 * @returns null where they are no such stick
 */
export function learnStick(
  pair: Pick<StickKnob, "axis" | "other">,
  left: readonly Axes[],
  right: readonly Axes[],
): StickKnob | null {
  const [toLeft, toRight] = [movesOf(left, pair), movesOf(right, pair)];
  const [byLeft, byRight] = [sum(toLeft), sum(toRight)];
  const isWhole = [byLeft, byRight].every((by) => Math.abs(Math.abs(by) - 1) <= MOST_TURN_ERROR);
  if (!isWhole || byLeft * byRight > 0) return null;
  const moves = [...toLeft, ...toRight].map(Math.abs).filter((move) => move > LEAST);
  return { ...pair, perTurn: Math.sign(byLeft), step: Math.min(...moves) };
}
