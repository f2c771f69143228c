import type { ReadingProgress } from "../../../records/file/logbookFile";

/** A file being read. */
export interface ReadingState {
  readonly name: string;
  /** Which of the files chosen, counted from 1. */
  readonly place: number;
  readonly files: number;
  /** Null before the first word of it. */
  readonly progress: ReadingProgress | null;
}

const STAGES: Readonly<Record<ReadingProgress["stage"], string>> = {
  opening: "opening the file",
  checking: "checking the records",
  motions: "checking the motions",
  replaying: "replaying the attempts",
};

/** What is going on, in a sentence that changes only with the stage, so that it may be read aloud. */
export function readingWords({ name, place, files, progress }: ReadingState): string {
  const which = files === 1 ? name : `${name}, file ${place} of ${files}`;
  return `Reading ${which}: ${STAGES[progress?.stage ?? "opening"]}.`;
}

/** Share of the file that is read, in [0, 1]; null while that cannot be told. */
export function readShare({ progress }: Pick<ReadingState, "progress">): number | null {
  return progress?.stage === "motions" || progress?.stage === "replaying"
    ? progress.done / Math.max(1, progress.total)
    : null;
}
