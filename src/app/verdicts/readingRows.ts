import type { Refusal } from "../../zeroing/approach";
import type { TakenReading } from "../../zeroing/readAgain";
import { signedText } from "../parts/signedText";

/** Why a reading did not count, where there is little room. */
const REFUSED: Readonly<Record<Refusal, string>> = {
  "not-at-rest": "the dial was still moving",
  "same-stop": "this stop was already recorded",
  "wrong-way": "turned the wrong way",
  "came-back": "turned back on the way",
  "too-short": "the turn was too short",
  "off-the-mark": "too far from zero",
};

/** Readings as rows of text: which, turning which way, how far off zero, and whether it counted. */
export function readingRows(readings: readonly TakenReading[]): string[][] {
  return readings.map(({ turn, deviation, refusal }, index) => [
    String(index + 1),
    turn,
    signedText(deviation),
    refusal === null ? "yes" : `no: ${REFUSED[refusal]}`,
  ]);
}
