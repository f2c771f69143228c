import type { SourceDescription } from "../realdial/sources/sourceDescription";
import { SCREEN_SOURCE } from "../realdial/sources/sourcesSeen";

/** A record of a dial that was turned. */
export interface SourcedRecord {
  readonly sources?: readonly SourceDescription[] | undefined;
}

/** What turned the dial: records without a word about it are of the hands on the screen. */
export const sourcesOf = ({ sources }: SourcedRecord): readonly SourceDescription[] =>
  sources === undefined || sources.length === 0 ? [SCREEN_SOURCE] : sources;

const inGraduations = (size: number) => String(Number(size.toPrecision(3)));

function sourceText({ kind, resolution, noise, keepsNoMotion }: SourceDescription): string {
  if (kind === "screen") return kind;
  const rest = noise === null ? "noise not measured" : `noise ${inGraduations(noise)}`;
  const motion = keepsNoMotion === true ? ", no motion kept" : "";
  return `${kind} (${inGraduations(resolution)}, ${rest}${motion})`;
}

/** Each thing that turned the dial, with its step and its noise in graduations, as files have it. */
export const sourceTexts = (record: SourcedRecord): string[] => sourcesOf(record).map(sourceText);
