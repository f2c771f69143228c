import type { Graduations } from "../../../lock/dial";
import type { SetupRecord } from "../../../realdial/setup/setupRecord";
import { type SetupVerdict, type StopAsked, type StopVerdict, stopVerdict } from "../../../realdial/setup/stopAsked";
import { graduationsText, sizeText } from "../../../wording/amountWords";
import { noiseSizeText } from "../../hand/sources/devices/camera/setupText";
import { dayText } from "../../parts/moments";

const sizeOf = (error: Graduations) => graduationsText(sizeText(error));

/** What a stop asks for. */
export const askText = ({ number, turn }: StopAsked): string => `Turn ${turn} to ${number}, and stop.`;

/** What to do about a stop that was come to by the other turn. @param perTurn - graduations in a turn */
export function otherTurnText({ number, turn }: StopAsked, perTurn: Graduations): string {
  const past = (number + (turn === "right" ? 10 : perTurn - 10)) % perTurn;
  return `You came to ${number} by the other turn. Go on to ${past}, then turn ${turn} to ${number}.`;
}

const VERDICTS: Readonly<Record<StopVerdict, string>> = {
  agrees: "agrees",
  near: "near",
  off: "off",
};

/** Where a stop came to be: "0.2 graduations left of 25: agrees". */
export function stopText(number: number, error: Graduations, resolution: Graduations): string {
  const verdict = VERDICTS[stopVerdict(error, resolution)];
  // Finer than a tenth is no eye's error.
  if (Math.abs(error) < 0.05) return `On ${number}: ${verdict}`;
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
    : `${most} Check that the knob does not slip on its shaft. If you turned by its marks, look at them from straight in front. Then check again.`;
}

/** What is known of a device from its last setup. */
export function rememberedText({ at, errors }: SetupRecord): string {
  const most = errors.length === 0 ? null : Math.max(...errors.map(Math.abs));
  return `Set up on ${dayText(at)}.${most === null ? "" : ` Largest error of its stops: ${sizeOf(most)}.`}`;
}

/** What a setup measured, each with its value. */
export const measuredRows = ({ resolution, noise, rate, delay_ms }: SetupRecord): readonly [string, string][] => [
  ["Smallest step", sizeOf(resolution)],
  ["Noise at rest", noise === null ? "not measured" : noiseSizeText(noise)],
  ...(rate === null ? [] : [["Pictures", `${Math.round(rate)} a second`] satisfies [string, string]]),
  ["Hand to screen", delay_ms === null ? "not measured: too few moves" : `${Math.round(delay_ms)} ms`],
];
