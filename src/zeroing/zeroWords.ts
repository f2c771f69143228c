import { type Graduations, opposite, type Turn } from "../lock/dial";
import { countInWords, countText, countWord, graduationsText, sizeText } from "../wording/amountWords";
import type { Refusal } from "./approach";
import { moreReadings } from "./moreReadings";
import type { PlayMark } from "./playEstimate";
import { settlingSpread, type ZeroReading } from "./zeroingMachine";
import type { ZeroingRules } from "./zeroingRules";
import type { LostMotionEstimate, SideResult, ZeroLimits } from "./zeroResult";

/** "0.2"; "less than 0.01" for what is smaller still, so that nothing but nothing is told as none. */
const size = (of: Graduations) => (of !== 0 && Math.abs(of) < 0.005 ? "less than 0.01" : sizeText(of));
const grads = (of: Graduations) => graduationsText(size(of));
/** A length of turning, without a decimal it does not need. */
const turning = (length: Graduations) => `${Number(length.toFixed(1))} graduations`;
const limitText = (probability: number) => `${Number((100 * probability).toFixed(2))} %`;

/** Rounded toward the middle, so that a probability never seems to reach a limit that it does not. */
const percent = (probability: number) => {
  // No number of readings makes it certain.
  if (probability > 0.999) return "more than 99.9 %";
  if (probability < 0.001) return "less than 0.1 %";
  return `${probability >= 0.5 ? Math.floor(100 * probability) : Math.ceil(100 * probability)} %`;
};

/** "0.2 left of zero", "on zero". @param deviation - graduations, left positive */
export function placeWords(deviation: Graduations): string {
  if (deviation === 0) return "on zero";
  return `${size(deviation)} ${deviation > 0 ? "left" : "right"} of zero`;
}

/** Each a sentence without its end: what it costs may follow. */
const REFUSED: Readonly<Record<Refusal, (asked: Turn, rules: ZeroingRules, deviation?: Graduations) => string>> = {
  "not-at-rest": (_, { rest_ms }) =>
    `The dial was still moving: make another turn, and let the dial rest for ${(rest_ms / 1000).toFixed(1)} s`,
  "same-stop": (asked) => `This stop is already recorded: turn ${asked} once more to zero`,
  "wrong-way": (asked) => `You came to zero turning ${opposite(asked)}: come to it turning ${asked}`,
  "came-back": (asked, { approach }) =>
    `You turned back before zero: go round again, turning ${asked} only for the last ${turning(approach)}`,
  "too-short": (asked, { approach }) =>
    `Your turn ${asked} was too short: start at least ${turning(approach)} before zero`,
  "off-the-mark": (asked, { captureWindow }, deviation) =>
    `You stopped ${deviation === undefined ? "too far from zero" : placeWords(deviation)}, but only stops within ${size(captureWindow)} graduations count: go round again, turning ${asked}`,
};

/**
 * Why a reading was refused and what to do, in one sentence.
 *
 * @param asked - direction whose series is open
 * @param deviation - of the refused reading, where it is known, graduations
 */
export function refusalWords(reason: Refusal, asked: Turn, rules: ZeroingRules, deviation?: Graduations): string {
  const words = REFUSED[reason](asked, rules, deviation);
  return `${words}${rules.consecutive ? `; the ${asked} side starts again` : ""}.`;
}

/**
 * An accepted reading as it is spoken: "right stop two of three recorded, 0.2 left of zero".
 *
 * @param count - readings of its side accepted with it
 * @param wanted - readings that close its series; beyond them the series waits for its last ones to agree
 * @param deviation - graduations, left positive
 */
export function acceptedWords(side: Turn, count: number, wanted: number, deviation: Graduations): string {
  const which = count > wanted ? `extra stop ${countWord(count)}` : `stop ${countWord(count)} of ${countWord(wanted)}`;
  return `${side} ${which} recorded, ${placeWords(deviation)}`;
}

const whyNotYet = (side: SideResult, limits: ZeroLimits): string => {
  const more = moreReadings(side, limits);
  if (more === null) return "It is so close to the limit that more stops will not show it: make a better zero.";
  const what = side.conformance > 0.5 ? "good" : "off";
  return `If your hand stays as it is, ${countInWords(more, "more stop")} may show that it is ${what}.`;
};

/**
 * The verdict on one side with its reason; where nothing is shown yet, how many more readings might.
 *
 * @param limits - those the side was judged by
 */
export function verdictWords(turn: Turn, side: SideResult, limits: ZeroLimits): string {
  const { mean, conformance, verdict } = side;
  const { tolerance, risk } = limits;
  const where = `mean ${placeWords(mean)}; the true mean lies within ${grads(tolerance)} of zero with a probability of ${percent(conformance)}`;
  const from = turn === "right" ? "Right" : "Left";
  if (verdict === "accept") return `${from}: accepted. It is shown to be good: ${where}.`;
  if (verdict === "reject")
    return `${from}: rejected. It is shown to be off: ${where}, no more than the ${limitText(risk)} at which it is rejected.`;
  if (side.isTooCoarse)
    return `${from}: not shown: the readings are too coarse. ${where}. Read to a finer fraction of a graduation; more readings like these will not show it.`;
  return `${from}: not shown yet. Neither good nor bad is shown: ${where}, and ${limitText(1 - risk)} is asked for. ${whyNotYet(side, limits)}`;
}

/** The lost motion with its interval. @param truth - where the exercise tells it, graduations */
export function lostMotionWords({ estimate, ci95 }: LostMotionEstimate, truth?: Graduations): string {
  const found = `Lost motion: ${estimate.toFixed(2)} graduations, 95 % interval ${ci95.low.toFixed(2)} to ${ci95.high.toFixed(2)}`;
  return truth === undefined ? `${found}.` : `${found}; this lock has ${truth.toFixed(2)}.`;
}

/** Why a series ended as not set, and what to do. */
export function notSetWords(side: Turn, readings: readonly ZeroReading[], rules: ZeroingRules): string {
  const apart = settlingSpread(readings, rules);
  return (
    `Not set: after ${countWord(readings.length)} stops turning ${side}, the last ${countWord(rules.wanted)} still lie ` +
    `${grads(apart)} apart; ${size(rules.spreadLimit)} is allowed. Start again, and come to zero more slowly.`
  );
}

/** A trainee's own number for the play against the truth, in words. */
export function playWords({ answer, truth, error, ci95, isAnswerInside, isTruthInside }: PlayMark): string {
  const off = error === 0 ? "exactly right" : `${size(error)} too ${error > 0 ? "much" : "little"}`;
  const between = `${ci95.low.toFixed(2)} to ${ci95.high.toFixed(2)}`;
  const stops = isTruthInside
    ? `By your stops it is ${between}, and the true play is in that range`
    : `By your stops it is ${between}, but the true play is not in that range: come onto the mark more slowly, always from the same side`;
  const own = isAnswerInside ? "" : " Your answer is outside that range: subtract the means of your stops again.";
  return `You entered ${grads(answer)}; the play is ${size(truth)}: ${off}. ${stops}.${own}`;
}

/**
 * How the series of one side is getting on, and why it is still open: "Right side: 3 stops recorded, spread 0.5; it closes
 * when the last 3 lie within 0.3 graduations."
 *
 * @param wanted - stops that close it, if they agree
 */
export function seriesWords(side: Turn, readings: readonly ZeroReading[], wanted: number, rules: ZeroingRules): string {
  const name = side === "right" ? "Right side" : "Left side";
  const recorded = `${countText(readings.length, "stop")} recorded`;
  const apart = readings.length < 2 ? "" : `, spread ${size(settlingSpread(readings, rules))}`;
  const more = Math.max(0, wanted - readings.length);
  const closes =
    more > 0
      ? `${more} more to go, and the last ${rules.wanted} must lie within ${size(rules.spreadLimit)} graduations`
      : `it closes when the last ${rules.wanted} lie within ${size(rules.spreadLimit)} graduations`;
  return `${name}: ${recorded}${apart}; ${closes}.`;
}
