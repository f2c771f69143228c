import type { SourceDescription } from "../realdial/sources/sourceDescription";
import { type SourcesMisfit, sourcesMisfit, type TurningMisfit } from "../realdial/sources/sourcesMisfit";

/** What is wrong with what a record says turned the dial: the rest of a sentence that begins with the record. */
export const SOURCES_WORDS = {
  "none-named": "lists what turned the dial, but the list is empty",
  "screen-alone": "lists the screen alone as what turned the dial, which no record does",
  "named-twice": "lists the same source of turning twice",
  "no-step": "names a source of turning whose step is 0",
  "coarse-unsaid": "names a source with steps of half a graduation or more, but does not call it coarse",
  "fine-called-coarse": "names a source with steps below half a graduation, but calls it coarse",
  "other-screen": "describes the screen otherwise than it is",
  "hides-motion": "says that no motion was kept of a source that gives no such choice",
  "other-step": "names a source with steps that no such device has",
  "too-noisy": "names a source that is noisier at rest than a rest can be",
  "doubt-without-device": "has turns in doubt, but no device turned its dial",
  "doubt-twice": "gives the same doubt of its turns twice",
} as const satisfies Readonly<Record<TurningMisfit, string>>;

/** Why a list of sources cannot be, as a finding where there is one. @param problemOf - makes it, by its code */
export function sourcesProblem<Found>(
  sources: readonly SourceDescription[] | undefined,
  problemOf: (code: SourcesMisfit) => Found,
): Found | undefined {
  const misfit = sourcesMisfit(sources);
  return misfit === null ? undefined : problemOf(misfit);
}
