import type { Combination } from "../lock/combination";
import { type Graduations, signOf } from "../lock/dial";
import { spellsCombination } from "../lock/dialEncoder";
import { exact } from "../lock/exact";
import type { DialEncoderProfile, Profile } from "../lock/profile";
import { drawLength } from "./fault";
import type { HandReader } from "./handReader";
import { legArrivals } from "./leg";
import { runLength, stopError } from "./runs";

/** The reading of a hand, as a lock that is drawn looks at it. */
type ReadRuns = Pick<HandReader, "profile" | "runs" | "legs" | "leg">;

/** Where a lock last forgot what was dialed: the run under way, and the dial in it. */
export interface Forgotten {
  readonly run: number;
  readonly at: Graduations;
}

/** Whether the leg under way is a draw turned all its way. */
export function isDrawn({ profile, legs, leg }: ReadRuns): boolean {
  const { length } = profile.procedure;
  if (leg?.step !== length || leg.turn !== profile.draw.turn) return false;
  const stop = legs.find(({ step }) => step === length - 1)?.to;
  return stop !== undefined && runLength(leg) >= drawLength(profile, stop);
}

/** Where a draw is complete that is the run under way, or the one to come; null before any run. */
export function drawPoint({ draw }: Profile, { runs }: ReadRuns): Graduations | null {
  const run = runs.at(-1);
  if (run === undefined) return null;
  return exact((run.turn === draw.turn ? run.from : run.to) + signOf(draw.turn) * draw.travel);
}

/**
 * Whether the run under way draws the bolt of an encoder lock: turned all its way, after runs that, taken one by one, are
 * those the encoder wants.
 *
 * @param setTo - what opens it
 * @param forgotten - what was turned before the lock forgot does not count; null where it never has
 */
export function isSpelled(
  profile: DialEncoderProfile,
  { runs }: ReadRuns,
  setTo: Combination,
  forgotten: Forgotten | null,
): boolean {
  const { graduations: perTurn, procedure, draw, stopTolerance } = profile;
  const drawn = runs.at(-1);
  const isDraw = drawn !== undefined && drawn.turn === draw.turn && runLength(drawn) >= exact(draw.travel);
  const first = runs.length - 1 - procedure.length;
  if (!isDraw || first < (forgotten?.run ?? 0)) return false;
  const encoded = runs.slice(first, -1).map((whole, k) => {
    const run = first + k === forgotten?.run ? { ...whole, from: forgotten.at } : whole;
    const number = setTo[k] ?? 0;
    const step = { turn: run.turn, arrivals: 0, rule: "at-least" as const };
    return {
      turn: run.turn,
      arrivals: legArrivals(run, { step, number, perTurn, tolerance: stopTolerance }),
      stopError: stopError(run.turn, run.to, number, perTurn),
    };
  });
  return spellsCombination(profile, encoded);
}
