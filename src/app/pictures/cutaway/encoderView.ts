import type { Attempt } from "../../../dialing/attempt";
import { type Leg, legArrivals, type Target } from "../../../dialing/leg";
import { stopError } from "../../../dialing/runs";
import type { Turn } from "../../../lock/dial";

/** What the encoder has counted for one number; never where the dial stood. */
export interface Register {
  /** 1 for the first number. */
  readonly number: number;
  readonly turn: Turn;
  /** Arrivals that the lock wants at least. */
  readonly wanted: number;
  readonly counted: number;
  /** To come, being counted, or stopped: on the number or off it. */
  readonly state: "to come" | "counting" | "on" | "off";
}

/** The registers of an encoder lock, first number first. */
export function encoderRegisters({ profile, combination, reader }: Attempt): Register[] {
  return profile.procedure.map((step, k) => {
    const target: Target = {
      step,
      number: combination[k] ?? 0,
      perTurn: profile.graduations,
      tolerance: profile.stopTolerance,
    };
    const leg = reader.legs.find((one) => one.step === k);
    return {
      number: k + 1,
      turn: step.turn,
      wanted: step.arrivals,
      counted: leg === undefined ? 0 : legArrivals(leg, target),
      state: stateOf(leg, target, leg === reader.leg),
    };
  });
}

function stateOf(leg: Leg | undefined, target: Target, isUnderWay: boolean): Register["state"] {
  if (leg === undefined) return "to come";
  if (isUnderWay) return "counting";
  const error = stopError(leg.turn, leg.to, target.number, target.perTurn);
  return Math.abs(error) <= target.tolerance ? "on" : "off";
}

/** What became of a stop, in words. */
export const STATE_TEXT: Readonly<Record<Register["state"], string>> = {
  "to come": "to come",
  counting: "counting",
  on: "stopped on it",
  off: "stopped off it",
};

/** "number 1, left: 4 of at least 4 arrivals, stopped on it": for a screen reader. */
export function registerSentence(register: Register): string {
  const { number, turn, counted, wanted, state } = register;
  return `number ${number}, ${turn}: ${counted} of at least ${wanted} arrivals, ${STATE_TEXT[state]}`;
}
