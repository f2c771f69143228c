import { DrillError } from "../../../drill/drillError";
import { type PlannedTry, planTries } from "../../../drill/sheet/planTries";
import type { Sheet, Station } from "../../../drill/sheet/sheet";
import { seededChance } from "../../../statistics/chance";

/** Seed of the example that is shown where a sheet fixes none. */
const EXAMPLE_SEED = 1;

/** The tries of a sheet, or why there are none. */
export type Plan = { readonly tries: readonly PlannedTry[] } | { readonly says: string };

/** Tries as they come by the sheet's own seed, or by an example's. The sheet must be sound. */
export function examplePlan(sheet: Sheet): Plan {
  try {
    return { tries: planTries(sheet, seededChance(sheet.seed ?? EXAMPLE_SEED)) };
  } catch (error) {
    if (error instanceof DrillError) return { says: `${error.message}.` };
    throw error;
  }
}

/** Whether a station brings something else from sitting to sitting. */
const isDrawnAt = (one: Station) =>
  one.kind === "trouble" ||
  one.kind === "fitting" ||
  one.kind === "inspection" ||
  (one.kind === "handover" && one.fit === "first") ||
  ("combinations" in one && one.combinations.policy === "drawn");

/** Whether order or combinations differ from sitting to sitting. */
export function isDrawn({ order, seed, stations }: Sheet): boolean {
  const draws = stations.some(isDrawnAt);
  return seed === undefined && (order === "random" || draws);
}
