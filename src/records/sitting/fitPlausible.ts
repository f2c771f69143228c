import type { FittingTry, HandoverTry, InspectionTry, ServiceTry } from "../../drill/marking/tryResult";
import type { Station } from "../../drill/sheet/sheet";
import { stationProfile } from "../../drill/sheet/stationProfile";
import { NEW_BOARD } from "../../fitting/board";
import type { FitCheck } from "../../fitting/fitCheck";
import { checksOf, isInSet } from "../../fitting/fitChecks";
import type { FitFault } from "../../fitting/fitFaultCode";
import { faultsOn } from "../../fitting/inspect/faultDraws";
import { FAULT_AT_END, type HandoverFault } from "../../handover/run/rules/faultTriggers";
import { lockKindOf } from "../../service/servicedLock";
import type { VisitFault } from "../../service/visitFaultCode";
import { type Finding, failing, type Problem } from "../../wording/problem";
import { checkProblem } from "./checkWords";

/** What a try cannot have been, or undefined. */
type Misfit = Problem | undefined;

const isElectronic = (station: Station) => lockKindOf(stationProfile(station)) === "electronic";
const isOnce = (all: readonly string[]) => new Set(all).size === all.length;

/** The checks that there are on the lock of a station. */
const checksAt = (station: Station) => checksOf({ board: isElectronic(station) ? NEW_BOARD : null });

/** Whether the lock of a station can have such faults, and has such checks. */
function areOfLock(station: Station, faults: readonly FitFault[], checks: readonly FitCheck[]): boolean {
  const able = faultsOn({ isElectronic: isElectronic(station) });
  const there = checksAt(station);
  return faults.every((fault) => able.includes(fault)) && checks.every((check) => there.includes(check));
}

/** The fewest parts that make a lock that is together: body, ring, dial and key. */
const LEAST_MOVES = 4;

/** What a fitting cannot have been at its station. */
export function fittingMisfit({ declared, faults, skipped, moves, time_ms }: FittingTry, station: Station): Misfit {
  const isTogether = declared === "coupled" || declared === "closed";
  const codes = faults.map(({ code }) => code);
  const [isMoved, values] = [moves >= LEAST_MOVES, { moves, least: LEAST_MOVES }];
  return failing([
    [isOnce(codes), checkProblem("fault-twice", [])],
    [isOnce(skipped), checkProblem("check-twice", [])],
    [areOfLock(station, codes, skipped), checkProblem("other-parts", [])],
    [declared !== "apart", checkProblem("declared-apart", [])],
    [!isTogether || isMoved, checkProblem("fitted-unmoved", [], values)],
    [faults.length === 0 || isMoved, checkProblem("fault-of-no-fit", [], values)],
    [!isTogether || time_ms > 0, checkProblem("in-no-time", [], { done: "fitted" })],
  ])[0];
}

/** Of the signature that hands a badly fitted lock over. */
const BAD_FIT: HandoverFault = FAULT_AT_END.code;
const SPOILED: HandoverFault = "parts-spoiled";

/** What the fitting of a handover can be at its station. */
export function handoverFitFindings(one: HandoverTry, station: Station): readonly Finding[] {
  const { fit, faults, isHandedOver, undone } = one;
  const isAsked = station.kind === "handover" && station.fit === "first";
  const told = faults.some(({ code }) => code === BAD_FIT);
  const spoiled = faults.filter(({ code }) => code === SPOILED).length;
  if (fit === undefined) {
    return [
      [!isAsked, checkProblem("fit-unsaid", [])],
      [!told && spoiled === 0, checkProblem("fit-fault-unsaid", [])],
    ];
  }
  const isBad = fit.faults.length > 0;
  // Undone, a fault stays on record.
  const isTold = isHandedOver && isBad ? told : !told || undone > 0;
  return [
    [isAsked, checkProblem("fit-unasked", [])],
    [isOnce(fit.faults), checkProblem("fault-twice", [])],
    [isOnce(fit.skipped), checkProblem("check-twice", [])],
    [areOfLock(station, fit.faults, [...fit.skipped, ...fit.checks]), checkProblem("other-parts", [])],
    [!isHandedOver || (fit.isTogether && fit.skipped.length === 0), checkProblem("fit-unfinished", [])],
    [undone > 0 ? spoiled >= fit.partsReplaced : spoiled === fit.partsReplaced, checkProblem("fit-fault-unsaid", [])],
    [isTold, checkProblem("fit-fault-unsaid", [])],
  ];
}

/** What judging a fit cannot have been at its station. */
export function inspectionMisfit(one: InspectionTry, station: Station): Misfit {
  const { faults, named, skipped, checkSet, time_ms } = one;
  const all = [...faults, ...(named ?? [])];
  // Time runs from the first act: an answer that is the first takes none.
  const isFirst = skipped.length === checksAt(station).filter((check) => isInSet(check, checkSet)).length;
  return failing([
    [isOnce(faults) && isOnce(named ?? []), checkProblem("fault-twice", [])],
    [isOnce(skipped), checkProblem("check-twice", [])],
    [areOfLock(station, all, skipped), checkProblem("other-parts", [])],
    [skipped.every((check) => isInSet(check, checkSet)), checkProblem("other-parts", [])],
    [named === null || isFirst || time_ms > 0, checkProblem("in-no-time", [], { done: "judged" })],
  ])[0];
}

/** The fewest acts of a good visit: ask 2, read 5, open, hold, dial, cover off, look 3, measure 4, cover on, dial 3, write, shut. */
const LEAST_ACTS = 24;

const aboutsOf = (faults: readonly VisitFault[], code: VisitFault["code"]) =>
  faults.flatMap((fault) => (fault.code === code ? [`${fault.about}`] : []));

/** Whether the faults of a record, and of the lock at the end, follow from what was wrong and what the record names. */
function areTold({ conditions, found, faults }: ServiceTry): boolean {
  const isWritten = aboutsOf(faults, "no-record").length === 0;
  const missing = (all: readonly string[], from: readonly string[]) =>
    isWritten ? all.filter((one) => !from.includes(one)) : [];
  const isSame = (code: VisitFault["code"], wanted: readonly string[]) =>
    aboutsOf(faults, code).sort().join() === [...wanted].sort().join();
  const wasWrong = (about: string) => conditions.some((one) => one === about);
  return (
    (isWritten || found.length === 0) &&
    isSame("missed-in-record", missing(conditions, found)) &&
    isSame("invented-in-record", missing(found, conditions)) &&
    aboutsOf(faults, "left-wrong").every(wasWrong) &&
    !aboutsOf(faults, "made-wrong").some(wasWrong)
  );
}

/** Names of what only a lock with batteries has. */
const OF_CELLS = /^(batter|case$)/;
const isOfCells = ({ code, about }: VisitFault) =>
  code === "cover-without-strap" || (code !== "invented-in-record" && OF_CELLS.test(`${about}`));

/** What a service visit cannot have been at its station. */
export function serviceMisfit(one: ServiceTry, station: Station): Misfit {
  const { isLeft, conditions, found, faults, acts, time_ms } = one;
  const isGood = isLeft && faults.length === 0;
  const hasCells = conditions.some((name) => OF_CELLS.test(name)) || faults.some(isOfCells);
  return failing([
    [isOnce(faults.map(({ code, about }) => `${code} ${about}`)), checkProblem("fault-twice", [])],
    [isOnce(conditions) && isOnce(found), checkProblem("defect-twice", [])],
    [isElectronic(station) || !hasCells, checkProblem("cells-of-wheel-pack", [])],
    [areTold(one), checkProblem("other-told", [])],
    [!isGood || acts >= LEAST_ACTS, checkProblem("served-idle", [], { acts, least: LEAST_ACTS })],
    [!isGood || time_ms > 0, checkProblem("in-no-time", [], { done: "served" })],
  ])[0];
}
