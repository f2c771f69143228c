import { evenTurn, type Learned } from "./learned";

/** Places of all axes of a game controller at one moment, each from -1 to 1. */
export type Axes = readonly number[];

/** A controller's axis that turns without end: from 1 it goes on at -1. */
export interface AxisKnob {
  /** Which axis, from 0. */
  readonly axis: number;
  /** How far the axis goes in one turn to the left; negative where it goes down. A run from -1 to 1 is 2. */
  readonly perTurn: number;
  /** The smallest move that it showed while it was learned, as a share of a turn. */
  readonly step: number;
}

/** From one place of an axis to the next, the short way round. */
export function axisMove(from: number, to: number): number {
  const by = to - from;
  return Math.abs(by) > 1 ? by - 2 * Math.sign(by) : by;
}

const movesOf = (seen: readonly Axes[], axis: number) =>
  seen.slice(1).map((axes, k) => axisMove(seen[k]?.[axis] ?? 0, axes[axis] ?? 0));
const sum = (numbers: readonly number[]) => numbers.reduce((all, one) => all + one, 0);
const wayOf = (moves: readonly number[]) => sum(moves.map(Math.abs));

/** A trembling stick goes less far than this. */
const LEAST_WAY = 0.1;

/** Learns which axis turns, by one whole turn left and one right. @param left - the axes as they were seen, in order */
export function learnAxisKnob(left: readonly Axes[], right: readonly Axes[]): Learned<AxisKnob> {
  const axes = (left[0] ?? []).map((_, axis) => {
    const [toLeft, toRight] = [movesOf(left, axis), movesOf(right, axis)];
    return { axis, toLeft, toRight, way: wayOf(toLeft) + wayOf(toRight) };
  });
  const [most, next] = axes.toSorted((a, b) => b.way - a.way);
  if (most === undefined || most.way < LEAST_WAY) return { failed: "nothing" };
  if (next !== undefined && next.way > most.way / 2) return { failed: "more-than-one" };
  const [byLeft, byRight] = [sum(most.toLeft), sum(most.toRight)];
  // A stick that springs back ends where it began.
  if (Math.abs(byLeft) < wayOf(most.toLeft) / 2 || Math.abs(byRight) < wayOf(most.toRight) / 2)
    return { failed: "has-ends" };
  if (byLeft * byRight > 0) return { failed: "same-both-ways" };
  const perTurn = evenTurn(byLeft, byRight);
  if (perTurn === null) return { failed: "uneven" };
  const steps = [...most.toLeft, ...most.toRight].map(Math.abs).filter((move) => move > 0);
  return { knob: { axis: most.axis, perTurn: Math.sign(byLeft) * perTurn, step: Math.min(...steps) / perTurn } };
}
