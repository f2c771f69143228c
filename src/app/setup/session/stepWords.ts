import type { Graduations } from "../../../lock/dial";
import type { SetupRecord } from "../../../realdial/setup/setupRecord";
import { COARSE_FROM, type SourceDescription } from "../../../realdial/sources/sourceDescription";
import type { SourceKind } from "../../../realdial/sources/sourceKinds";
import { graduationsText, sizeText } from "../../../wording/amountWords";
import { sourceLine } from "./sourceLines";

/** What may have measured the step of a kind of device. */
interface Measured {
  /** What turns the dial now; null where nothing does. */
  readonly source: Pick<SourceDescription, "kind" | "resolution"> | null;
  /** What the last setup of this kind found. */
  readonly remembered: Pick<SetupRecord, "resolution" | "perTurn"> | null;
  /** Of the dial that is set up now, graduations. */
  readonly perTurn: Graduations;
}

/** The step of a kind of device as it was measured, graduations of the dial that is set up now; null where it is not known. */
export function measuredStep(kind: SourceKind, { source, remembered, perTurn }: Measured): Graduations | null {
  if (source?.kind === kind) return source.resolution;
  // A setup whose device was gone at its end remembers a step of 0.
  if (remembered === null || remembered.resolution === 0) return null;
  return (remembered.resolution * perTurn) / remembered.perTurn;
}

/** Whether a device is coarse: by its step where that was measured, as records have it; else as most of its kind are. */
export const isCoarseHere = (kind: SourceKind, step: Graduations | null): boolean =>
  step === null ? sourceLine(kind).coarseSteps !== null : step >= COARSE_FROM;

function stepSentence(kind: SourceKind, step: Graduations | null): string | null {
  const { coarseSteps } = sourceLine(kind);
  if (step === null) return coarseSteps;
  const size = graduationsText(sizeText(step));
  if (step >= COARSE_FROM) return `Its steps are too large to judge a stop: ${size}.`;
  // Of a kind that is fine nobody asks.
  return coarseSteps === null ? null : `Its steps are small enough to judge a stop: ${size}.`;
}

/** What a kind of device cannot do, its steps first. @param step - as measured, or null */
export const limitsText = (kind: SourceKind, step: Graduations | null): string =>
  [stepSentence(kind, step), sourceLine(kind).limits].filter(Boolean).join(" ");
