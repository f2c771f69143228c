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
  | "hides-motion";

const isScreen = ({ kind }: SourceDescription) => kind === "screen";

function misfitOf(source: SourceDescription): SourcesMisfit | null {
  if (isScreen(source)) return isSameSource(source, SCREEN_SOURCE) && !source.isCoarse ? null : "other-screen";
  if (source.resolution <= 0) return "no-step";
  // It is asked of no other.
  if (source.keepsNoMotion === true && source.kind !== "ordinary-dial") return "hides-motion";
  if (source.isCoarse === source.resolution >= COARSE_FROM) return null;
  return source.isCoarse ? "fine-called-coarse" : "coarse-unsaid";
}

/**
 * What cannot be in a list of sources: it is written only where more than the screen has turned the dial, names each source once,
 * and a step tells whether its source is coarse.
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
