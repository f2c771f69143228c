import type { Graduations } from "../../../lock/dial";
import type { SetupRecord } from "../../../realdial/setup/setupRecord";
import { type SetupVerdict, type StopAsked, type StopVerdict, stopVerdict } from "../../../realdial/setup/stopAsked";
import { graduationsText, sizeText } from "../../../wording/amountWords";
import { dayText } from "../../parts/moments";

const sizeOf = (error: Graduations) => graduationsText(sizeText(error));

/** What a stop asks for. */
export const askText = ({ number, turn }: StopAsked): string => `Turn ${turn} to ${number}, and stop.`;

const VERDICTS: Readonly<Record<StopVerdict, string>> = {
  agrees: "agrees",
  near: "near",
  off: "off",
};

/** Where a stop came to be: "0.2 graduations left of 25: agrees". */
export function stopText(number: number, error: Graduations, resolution: Graduations): string {
  const verdict = VERDICTS[stopVerdict(error, resolution)];
  if (sizeText(error) === "0.0") return `On ${number}: ${verdict}`;
  return `${sizeOf(error)} ${error > 0 ? "left" : "right"} of ${number}: ${verdict}`;
}

/** What the three stops come to, and what to do. @param hasNumbers - whether it has numbers of its own */
export function verdictText(verdict: SetupVerdict, hasNumbers: boolean): string {
  if (verdict.verdict === "good") return "All three stops agree. Your dial is ready.";
  if (verdict.verdict === "shifted") {
    return `All three stops are off the same way, by ${sizeOf(verdict.by)}. Set 0 again, then check again.`;
  }
  const most = `The stops are off by up to ${sizeOf(verdict.most)}.`;
  return hasNumbers
    ? `${most} Look at the index from straight in front. Check that the disc lies flat, and turns about its middle. Then check again.`
    : `${most} If your knob has marks, check that it does not slip on its shaft, and learn it again. Then check again.`;
}

/** What is known of a device from its last setup. */
export function rememberedText({ at, errors }: SetupRecord): string {
  const most = errors.length === 0 ? null : Math.max(...errors.map(Math.abs));
  return `Set up on ${dayText(at)}.${most === null ? "" : ` Largest error of its stops: ${sizeOf(most)}.`}`;
}

/** What a setup measured, each with its value. */
export const measuredRows = ({ resolution, noise, rate, delay_ms }: SetupRecord): readonly [string, string][] => [
  ["Smallest step", sizeOf(resolution)],
  ["Noise at rest", noise === null ? "not measured" : `${noise.toFixed(2)} graduations`],
  ...(rate === null ? [] : [["Pictures", `${Math.round(rate)} a second`] satisfies [string, string]]),
  ["Hand to screen", delay_ms === null ? "not measured: too few moves" : `${Math.round(delay_ms)} ms`],
];
