import { evenTurn, type Learned, mostOf } from "./learned";

/** A knob that presses one key for each step left and another for each step right, as volume knobs do. */
export interface KeyKnob {
  /** Names of the keys, as the browser has them: "AudioVolumeDown". */
  readonly left: string;
  readonly right: string;
  /** Steps in one turn. */
  readonly perTurn: number;
}

/** The step that a key stands for: 1 left, -1 right, 0 for any other key. */
export const keyStep = (knob: KeyKnob, key: string): 1 | -1 | 0 =>
  key === knob.left ? 1 : key === knob.right ? -1 : 0;

/** Learns a knob by one whole turn left and one right. @param left - keys pressed in the turn left, in order */
export function learnKeyKnob(left: readonly string[], right: readonly string[]): Learned<KeyKnob> {
  if (left.length === 0 || right.length === 0) return { failed: "nothing" };
  const toLeft = mostOf(left);
  const toRight = mostOf(right);
  if (toLeft === undefined || toRight === undefined) return { failed: "more-than-one" };
  if (toLeft === toRight) return { failed: "same-both-ways" };
  const perTurn = evenTurn(left.length, right.length);
  return perTurn === null ? { failed: "uneven" } : { knob: { left: toLeft, right: toRight, perTurn } };
}
