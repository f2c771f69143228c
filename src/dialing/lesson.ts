import { sizeText } from "../wording/amountWords";
import type { Attempt } from "./attempt";
import type { FaultCode } from "./fault";
import type { WordedFault } from "./faultWords";
import { stopError } from "./runs";
import { faceText } from "./words";

const DO_BETTER: Readonly<Record<FaultCode, (at: string) => string>> = {
  "wrong-way": () => "Say the direction of the first turn aloud before you take the dial.",
  "too-few-turns": (at) => `Count every time ${at} comes to the index, and begin the count at the first.`,
  "too-many-turns": (at) => `Say the count aloud each time ${at} passes, and stop on the last.`,
  "stopped-short": (at) => `Let the last graduation before ${at} come all the way to the index.`,
  "ran-past": (at) => `Slow down over the last ten graduations before ${at}.`,
  "came-back": (at) => `Once past ${at}, do not come back: it hides the miss and does not fix it.`,
  "extra-turnback": (at) => `Keep one direction all the way to ${at}; do not turn back to look.`,
  "not-drawn": () => "After the last number turn on until the dial itself stops.",
  "paused-too-long": () => "Know the next number before you stop on this one.",
};

/** Mean stop error from which a hand is told that it leans one way, part of the stop tolerance. */
const LEANING = 0.4;

/**
 * What to do better next time, in one sentence.
 *
 * @param faults - of an attempt that has ended; the first one that spoiled it is taken up
 */
export function lesson(attempt: Attempt, faults: readonly WordedFault[]): string {
  const [first] = faults;
  if (first !== undefined) {
    return DO_BETTER[first.code](faceText(attempt.combination[first.number - 1] ?? 0, attempt.profile));
  }
  if (attempt.wasRefusedWaiting)
    return "Your numbers were right, but the lock was refusing every try: wait, then dial again.";
  const { reader, profile, combination } = attempt;
  const errors = reader.legs
    .slice(0, combination.length)
    .map((leg, k) => stopError(leg.turn, leg.to, combination[k] ?? 0, profile.graduations));
  const mean = errors.reduce((sum, error) => sum + error, 0) / Math.max(1, errors.length);
  if (Math.abs(mean) < LEANING * profile.stopTolerance) return "Clean stops. Do it again, and keep the pace.";
  return mean > 0
    ? `You run ${sizeText(mean)} graduations past on average: begin to slow a little earlier.`
    : `You stop ${sizeText(mean)} graduations short on average: let the mark come fully to the index.`;
}
