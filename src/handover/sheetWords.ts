import { DRILL_WORDS } from "../drill/drillWords";
import { problemsOf, type Words } from "../wording/problem";

/** Everything that can be wrong with a sheet, and what no exercise can be set up for. */
export const SHEET_WORDS = {
  ...DRILL_WORDS,
  "unknown-defect": ": {defect:json} is not a known defect; use {known}",
  "no-fitting-defect": ": {lock} can have none of these defects; use {fitting}",
  "never-handed-over": ": the combination of {lock} cannot be changed, so it is never handed over; take another lock",
  "station-need": ": station {station:json}: {need}",
} as const satisfies Words;

/** Problems of sheets. */
export const sheetProblem = problemsOf(SHEET_WORDS);
