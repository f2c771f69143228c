import { type Leg, legArrivals, type Target } from "../../dialing/leg";
import { stopError } from "../../dialing/runs";
import { faceText } from "../../dialing/words";
import type { Profile } from "../../lock/profile";
import { sizeText } from "../../wording/amountWords";
import { signedText } from "../parts/signedText";
import { secondsText } from "../parts/timeText";
import type { StoodAttempt } from "./outcome";

/** One line of the result table, all in words and figures ready to show. */
export interface ResultRow {
  readonly number: string;
  readonly arrivals: string;
  readonly stopError: string;
  readonly wheel: string;
  readonly time: string;
}

const NOTHING = "–";

const errorText = (error: number, hasFigures: boolean) => {
  const text = signedText(error);
  const way = error > 0 ? "past" : "short";
  if (text === "0.0") return hasFigures ? "0.0, on it" : "on it";
  return hasFigures ? `${text} ${way}` : way;
};

const wheelText = (profile: Profile, error: number, k: number, hasFigures: boolean) => {
  if (profile.kind !== "wheel-pack") return NOTHING;
  const tolerance = profile.wheelPack.gateTolerance[k] ?? 0;
  if (Math.abs(error) <= tolerance) return "in the gate";
  return hasFigures ? `${sizeText(error)} off` : "off its gate";
};

const timeText = ({ startedAt, endedAt }: Leg) =>
  startedAt === undefined || endedAt === undefined ? NOTHING : secondsText(endedAt - startedAt);

const legCells = (leg: Leg, target: Target, isClosed: boolean, hasFigures: boolean) => {
  const { step, number, perTurn } = target;
  const asked = step.rule === "at-least" ? `${step.arrivals} or more` : `${step.arrivals}`;
  return {
    arrivals: `${legArrivals(leg, target)} of ${asked}`,
    stopError: isClosed ? errorText(stopError(leg.turn, leg.to, number, perTurn), hasFigures) : NOTHING,
    time: timeText(leg),
  };
};

const NO_CELLS = { arrivals: NOTHING, stopError: NOTHING, time: NOTHING, wheel: NOTHING };

/**
 * The lines of the result table, one a number. A number not yet turned to shows dashes.
 *
 * @param hasFigures - whether sizes are told; otherwise only whether a stop ran past or fell short
 */
export function resultRows({ profile, combination, reader, pack }: StoodAttempt, hasFigures = true): ResultRow[] {
  const errors = pack?.errors() ?? [];
  return combination.map((number, k) => {
    const heading = { number: faceText(number, profile) };
    const leg = reader.legs[k];
    const target = leg && reader.targetOf(leg);
    if (leg === undefined || target === undefined) return { ...heading, ...NO_CELLS };
    const isClosed = reader.legs.length > k + 1;
    const wheel = isClosed ? wheelText(profile, errors[k] ?? 0, k, hasFigures) : NOTHING;
    return { ...heading, ...legCells(leg, target, isClosed, hasFigures), wheel };
  });
}
