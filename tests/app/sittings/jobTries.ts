import { type TrySetup, trySetup } from "../../../src/app/sittings/tries/trySetup";
import { planTries } from "../../../src/drill/sheet/planTries";
import type { Station } from "../../../src/drill/sheet/sheet";
import { seededChance } from "../../../src/statistics/chance";
import { testSheet } from "../../support/testSheet";

/** The first try of a sheet with this one station, as a sitting sets it up. */
export function setupOf(station: Station, seed = 5, index = 0): TrySetup {
  const sheet = testSheet({ stations: [station] });
  const plan = planTries(sheet, seededChance(seed))[index];
  if (plan === undefined) throw new Error("the sheet has no such try");
  return trySetup(sheet, plan, seed, index);
}
