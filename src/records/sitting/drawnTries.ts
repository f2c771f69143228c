import { DrillError } from "../../drill/drillError";
import type { HandoverTry, TroubleTry, TryResult } from "../../drill/marking/tryResult";
import type { Station } from "../../drill/sheet/sheet";
import { stationProfile } from "../../drill/sheet/stationProfile";
import { tryChance } from "../../drill/sitting/tryChance";
import { drawInspection } from "../../fitting/inspect/drawFit";
import { drawRunSeed } from "../../handover/run/begunRun";
import { fitAgain } from "../../handover/run/fitAgain";
import { stationTrouble } from "../../handover/trouble/stationTrouble";
import { TroubleError } from "../../handover/trouble/troubleError";
import type { Profile } from "../../lock/profile";
import { drawVisit } from "../../service/drawVisit";
import type { Chance } from "../../statistics/chance";
import { drawSeed } from "../../statistics/drawSeed";
import type { Problem } from "../../wording/problem";
import { checkProblem, tryProblem } from "./checkWords";
import type { SittingRecord } from "./sittingRecord";

/** Whether the lock of a handover is on record as its acts make it. @param seed - of the handover */
function isFittedSo({ fit }: HandoverTry, profile: Profile, seed: number): boolean {
  if (fit === undefined) return true;
  const again = fitAgain(profile, seed, fit);
  if (again === null || fit.skipped.join() !== again.skipped.join()) return false;
  return fit.isTogether ? again.canBeTogether && fit.faults.join() === again.faults.join() : fit.faults.length === 0;
}

/** Whether a try has the defect that it was drawn. A station whose lock can have none of its defects draws none. */
function hasDrawnDefect({ condition }: TroubleTry, station: Station, profile: Profile, chance: Chance): boolean {
  if (station.kind !== "trouble") return false;
  try {
    return stationTrouble(profile, station, chance).task.trouble.kind === condition;
  } catch (error) {
    if (error instanceof TroubleError || error instanceof DrillError) return false;
    throw error;
  }
}

/** What was wrong with the lock of a try otherwise than it was drawn; undefined where nothing was. */
function drawnMisfit(one: TryResult, station: Station, chance: Chance): Problem | undefined {
  const profile = stationProfile(station);
  switch (one.kind) {
    case "inspection": {
      const { faults } = drawInspection(profile, chance);
      return faults.join() === one.faults.join() ? undefined : checkProblem("other-fit", []);
    }
    case "trouble":
      return hasDrawnDefect(one, station, profile, chance) ? undefined : checkProblem("other-defect", []);
    case "service": {
      const { conditions } = drawVisit(profile, drawSeed(chance));
      return conditions.join() === one.conditions.join() ? undefined : checkProblem("other-visit", []);
    }
    case "handover":
      return isFittedSo(one, profile, drawRunSeed(chance)) ? undefined : checkProblem("other-fitting", []);
    default:
      return undefined;
  }
}

/**
 * Fits that were judged, locks that were served and defects that were to be found, with other things wrong than sheet and
 * seed lead to; and locks of handovers that do not come of their acts, put together again from the parts that sheet and
 * seed lead to.
 */
export const drawnMisfits = ({ sheet, seed, tries }: SittingRecord): readonly Problem[] =>
  tries.flatMap((one, index) => {
    const station = sheet.stations[one.station];
    if (one.isBrokenOff || station === undefined) return [];
    const misfit = drawnMisfit(one, station, tryChance(seed, index));
    return misfit === undefined ? [] : [tryProblem(index + 1, misfit)];
  });
