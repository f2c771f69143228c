import type { TryResult } from "../../drill/marking/tryResult";
import type { Station } from "../../drill/sheet/sheet";
import { stationProfile } from "../../drill/sheet/stationProfile";
import { tryChance } from "../../drill/sitting/tryChance";
import { drawInspection } from "../../fitting/inspect/drawFit";
import { drawVisit } from "../../service/drawVisit";
import type { Chance } from "../../statistics/chance";
import { drawSeed } from "../../statistics/drawSeed";
import type { Problem } from "../../wording/problem";
import { checkProblem, tryProblem } from "./checkWords";
import type { SittingRecord } from "./sittingRecord";

/** What was wrong with the lock of a try otherwise than it was drawn; undefined where nothing was. */
function drawnMisfit(one: TryResult, station: Station, chance: Chance): Problem | undefined {
  if (one.kind === "inspection") {
    const { faults } = drawInspection(stationProfile(station), chance);
    return faults.join() === one.faults.join() ? undefined : checkProblem("other-fit", []);
  }
  if (one.kind === "service") {
    const { conditions } = drawVisit(stationProfile(station), drawSeed(chance));
    return conditions.join() === one.conditions.join() ? undefined : checkProblem("other-visit", []);
  }
  return undefined;
}

/** Fits that were judged, and locks that were served, with other things wrong than sheet and seed lead to. */
export const drawnMisfits = ({ sheet, seed, tries }: SittingRecord): readonly Problem[] =>
  tries.flatMap((one, index) => {
    const station = sheet.stations[one.station];
    if (one.isBrokenOff || station === undefined) return [];
    const misfit = drawnMisfit(one, station, tryChance(seed, index));
    return misfit === undefined ? [] : [tryProblem(index + 1, misfit)];
  });
