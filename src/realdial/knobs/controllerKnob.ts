import { type Axes, type AxisKnob, axisMove, learnAxisKnob } from "./axisKnob";
import type { Learned } from "./learned";
import { learnStick, type StickKnob, stickMove } from "./stickKnob";

/** What of a game controller turns a dial: an axis without end, or a stick that is turned round its rim. */
export type ControllerKnob = AxisKnob | StickKnob;

/** How far an axis went in all, to the left and to the right. */
const wayOf = (seen: readonly Axes[], axis: number) =>
  seen.slice(1).reduce((sum, axes, k) => sum + Math.abs((axes[axis] ?? 0) - (seen[k]?.[axis] ?? 0)), 0);

/** The two axes that moved most, in the order in which a controller has them. */
function mostMoved(left: readonly Axes[], right: readonly Axes[]) {
  const ways = (left[0] ?? []).map((_, axis) => ({ axis, way: wayOf(left, axis) + wayOf(right, axis) }));
  const [axis, other] = ways
    .toSorted((a, b) => b.way - a.way)
    .slice(0, 2)
    .map((one) => one.axis)
    .toSorted((a, b) => a - b);
  return axis === undefined || other === undefined ? null : { axis, other };
}

/** Learns what turns, by one whole turn left and one right. @param left - the axes as they were seen, in order */
export function learnController(left: readonly Axes[], right: readonly Axes[]): Learned<ControllerKnob> {
  const pair = mostMoved(left, right);
  const stick = pair === null ? null : learnStick(pair, left, right);
  return stick === null ? learnAxisKnob(left, right) : { knob: stick };
}

/** Turns from one look at the axes to the next, left positive. */
export const controllerMove = (knob: ControllerKnob, from: Axes, to: Axes): number =>
  "other" in knob
    ? stickMove(knob, from, to) * knob.perTurn
    : axisMove(from[knob.axis] ?? 0, to[knob.axis] ?? 0) / knob.perTurn;
