import type { HandledLock } from "../../dialing/attempt";
import type { DialingState } from "../../dialing/dialingMachine";
import type { Leg } from "../../dialing/leg";
import { progressOf } from "../../dialing/progress";
import { stopError } from "../../dialing/runs";
import type { Turn } from "../../lock/dial";
import type { Step } from "../../lock/profile";
import { countInWords, countOrNone } from "../../wording/amountWords";
import { signedText } from "../parts/signedText";

/** One number of the procedure as the strip shows it. */
export interface StepView {
  readonly key: string;
  readonly turn: Turn;
  readonly isCurrent: boolean;
  readonly pips: readonly ("made" | "wanted" | "extra")[];
  /** The pips in words. */
  readonly counted: string;
  /** How many arrivals are asked, in words. */
  readonly asked: string;
  /** Signed stop error once the hand has turned about, e.g. "+0.4". */
  readonly stop: string | null;
}

/** The whole strip. */
export interface StripView {
  readonly numbers: readonly StepView[];
  /** What the bolt does; `end` only tells it once there is no more to give away. */
  readonly draw: { readonly isCurrent: boolean; readonly bolt: string; readonly end: string };
}

const MAX_PIPS = 8;

const pipsOf = ({ arrivals: wanted, rule }: Step, made: number): StepView["pips"] =>
  Array.from({ length: Math.min(MAX_PIPS, Math.max(wanted, made)) }, (_, k) => {
    if (k >= made) return "wanted";
    return k < wanted || rule === "at-least" ? "made" : "extra";
  });

const askedOf = ({ arrivals: wanted, rule }: Step) =>
  `${rule === "at-least" ? "at least " : ""}${countInWords(wanted, "arrival")}`;

const BOLT: Partial<Record<DialingState, string>> = {
  open: "bolt back",
  thrown: "bolt thrown",
  secured: "spun off",
  failed: "bolt stays",
};

const isNumberState = (state: DialingState) => state === "turning" || state === "resting" || state === "overrun";

/** What the strip shows of an attempt. */
export function stepViews(attempt: HandledLock, state: DialingState): StripView {
  const { profile, reader, combination } = attempt;
  const { step: current, arrivals } = progressOf(attempt);
  const stopOf = (leg: Leg | undefined, k: number) =>
    leg === undefined || reader.legs.length <= k + 1
      ? null
      : signedText(stopError(leg.turn, leg.to, combination[k] ?? 0, profile.graduations));
  const numbers = profile.procedure.map((step, k) => {
    const made = arrivals[k] ?? 0;
    return {
      key: `${k}`,
      turn: step.turn,
      isCurrent: k === current && (isNumberState(state) || (k === 0 && (state === "waiting" || state === "wrongWay"))),
      pips: pipsOf(step, made),
      counted: `${countOrNone(made)} of ${askedOf(step)}`,
      asked: askedOf(step),
      stop: stopOf(reader.legs[k], k),
    };
  });
  const isDrawing = state === "drawing" || state === "open";
  const end = BOLT[state] ?? "–";
  return { numbers, draw: { isCurrent: isDrawing, bolt: attempt.isCoupled && end === "–" ? "bolt coming" : end, end } };
}
