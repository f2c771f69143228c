import { stationProfile } from "../../drill/sheet/stationProfile";
import { tryChance } from "../../drill/sitting/tryChance";
import { drawInspection } from "../../fitting/inspect/drawFit";
import type { Problem } from "../../wording/problem";
import { checkProblem, tryProblem } from "./checkWords";
import type { SittingRecord } from "./sittingRecord";

/** Fits that were judged and had other faults than those that sheet and seed lead to. */
export function drawnFitMisfits({ sheet, seed, tries }: SittingRecord): readonly Problem[] {
  return tries.flatMap((one, index) => {
    const station = sheet.stations[one.station];
    if (one.kind !== "inspection" || one.isBrokenOff || station === undefined) return [];
    const { faults } = drawInspection(stationProfile(station), tryChance(seed, index));
    return faults.join() === one.faults.join() ? [] : [tryProblem(index + 1, checkProblem("other-fit", []))];
  });
}
