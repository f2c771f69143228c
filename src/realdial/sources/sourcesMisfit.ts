import type { DoubtedRecord } from "./dialDoubt";
import { isNoisePossible, isStepPossible } from "./possibleStep";
import { COARSE_FROM, type SourceDescription } from "./sourceDescription";
import { isSameSource, SCREEN_SOURCE } from "./sourcesSeen";

/** What turned a dial, as a record has it, cannot have been. */
export type SourcesMisfit =
  | "none-named"
  | "screen-alone"
  | "named-twice"
  | "no-step"
  | "coarse-unsaid"
  | "fine-called-coarse"
  | "other-screen"
  | "hides-motion"
  | "other-step"
  | "too-noisy";

/** What turned a dial, and the doubts of it, cannot have been. */
export type TurningMisfit = SourcesMisfit | "doubt-without-device" | "doubt-twice";

const isScreen = ({ kind }: SourceDescription) => kind === "screen";

function coarseMisfit({ isCoarse, resolution }: SourceDescription): SourcesMisfit | null {
  if (isCoarse === resolution >= COARSE_FROM) return null;
  return isCoarse ? "fine-called-coarse" : "coarse-unsaid";
}

function misfitOf(source: SourceDescription): SourcesMisfit | null {
  if (isScreen(source)) return isSameSource(source, SCREEN_SOURCE) && !source.isCoarse ? null : "other-screen";
  if (source.resolution <= 0) return "no-step";
  // It is asked of no other.
  if (source.keepsNoMotion === true && source.kind !== "ordinary-dial") return "hides-motion";
  if (!isStepPossible(source)) return "other-step";
  return isNoisePossible(source) ? coarseMisfit(source) : "too-noisy";
}

/**
 * What cannot be in a list of sources: it is written only where more than the screen has turned the dial, names each source once,
 * a step is one that its kind of device can have, and tells whether the source is coarse.
 *
 * @returns null where it can be, or where nothing is said
 */
export function sourcesMisfit(sources: readonly SourceDescription[] | undefined): SourcesMisfit | null {
  if (sources === undefined) return null;
  if (sources.length === 0) return "none-named";
  if (sources.every(isScreen)) return "screen-alone";
  const isTwice = sources.some((one, k) => sources.findIndex((other) => isSameSource(one, other)) < k);
  return isTwice ? "named-twice" : (sources.map(misfitOf).find((one) => one !== null) ?? null);
}

/** A record of a dial that was turned, as far as it says by what. */
export interface TurnedRecord extends DoubtedRecord {
  readonly sources?: readonly SourceDescription[] | undefined;
}

/**
 * What cannot be in a record of what turned a dial: `sourcesMisfit`, and doubts where no device turned it, or one twice.
 *
 * @returns null where it can be
 */
export function turningMisfit({ sources, doubts = [] }: TurnedRecord): TurningMisfit | null {
  if (doubts.length > 0 && sources === undefined) return "doubt-without-device";
  if (new Set(doubts).size < doubts.length) return "doubt-twice";
  return sourcesMisfit(sources);
}
