import { canonicalJson } from "../../drill/canonicalJson";
import { isChangeRight } from "../../drill/marking/jobRule";
import { isBegunAgain, lostSightRule } from "../../drill/marking/lostSight";
import { lostTry } from "../../drill/marking/lostTry";
import type {
  ChangeTry,
  DialingTry,
  HandoverTry,
  TroubleTry,
  TryResult,
  ZeroingTry,
} from "../../drill/marking/tryResult";
import type { Station } from "../../drill/sheet/sheet";
import { stationProfile } from "../../drill/sheet/stationProfile";
import { isDoubted } from "../../realdial/sources/dialDoubt";
import { type Finding, failing, type Problem } from "../../wording/problem";
import { sourcesProblem } from "../sourcesWords";
import { checkProblem } from "./checkWords";
import { fittingMisfit, handoverFitFindings, inspectionMisfit, serviceMisfit } from "./fitPlausible";
import { zeroingMisfit } from "./zeroingMadeAgain";

/** What a try cannot have been, or undefined. */
type Misfit = Problem | undefined;

const first = (findings: readonly Finding[]): Misfit => failing(findings)[0];

/** Rounding of sums is far below this, graduations. */
const ROUNDED = 1e-6;

/** How far each stop of an opening may lie from its number, graduations. */
function openingLimits(station: Station): readonly number[] {
  const profile = stationProfile(station);
  const gates = profile.kind === "wheel-pack" ? profile.wheelPack.gateTolerance : [];
  return profile.procedure.map((_, k) => Math.max(profile.stopTolerance, gates[k] ?? 0) + ROUNDED);
}

/** The place of the first stop that no opening can have, from 1; 0 where all are good. */
function wrongStop({ stopErrors }: DialingTry, station: Station): number {
  const limits = openingLimits(station);
  return 1 + limits.findIndex((limit, k) => Math.abs(stopErrors[k] ?? Number.POSITIVE_INFINITY) > limit);
}

function dialingMisfit(one: DialingTry, station: Station): Misfit {
  const { combination, stopErrors, faults, opened, time_ms } = one;
  const { length } = stationProfile(station).procedure;
  const stop = opened ? wrongStop(one, station) : 0;
  const hasLate = faults.some(({ number }) => number > length);
  return first([
    [combination.length === length, checkProblem("numbers-dialed", [], { count: combination.length, length })],
    [stopErrors.length === length, checkProblem("stop-errors", [], { count: stopErrors.length, length })],
    [!hasLate, checkProblem("late-fault", [])],
    [!(opened && faults.some(({ code }) => code === "not-drawn")), checkProblem("opened-not-drawn", [])],
    [stop === 0, checkProblem("opened-off", [], { number: stop })],
    [!opened || time_ms > 0, checkProblem("in-no-time", [], { done: "opened" })],
  ]);
}

function zeroMisfit(one: ZeroingTry, station: Station): Misfit {
  const { verdicts, means, readings, refused, time_ms } = one;
  const isSet = verdicts.left === "accept" && verdicts.right === "accept";
  const isPaired = (verdicts.left === null) === (means.left === null);
  const isOtherPaired = (verdicts.right === null) === (means.right === null);
  const counted = readings?.filter(({ refusal }) => refusal !== null).length ?? refused;
  return (
    first([
      [isPaired && isOtherPaired, checkProblem("unpaired-verdict", [])],
      [counted === refused, checkProblem("refused-count", [], { refused, counted })],
      [!isSet || time_ms > 0, checkProblem("in-no-time", [], { done: "set" })],
    ]) ?? (station.kind === "zeroing" ? zeroingMisfit(one, station) : undefined)
  );
}

function changeMisfit(one: ChangeTry, station: Station): Misfit {
  const { length } = stationProfile(station).procedure;
  return first([
    [one.combination.length === length, checkProblem("numbers-set", [], { count: one.combination.length, length })],
    [!isChangeRight(one) || one.time_ms > 0, checkProblem("in-no-time", [], { done: "changed and proved" })],
  ]);
}

function troubleMisfit(one: TroubleTry, station: Station): Misfit {
  const { condition, named, isNamedRight, sizeError, time_ms, measurements, tries } = one;
  const pool = station.kind === "trouble" ? station.pool : undefined;
  const isSame = named !== null && named === condition;
  const isFromPool = pool === undefined || condition === null || pool.includes(condition);
  return first([
    [condition !== null, checkProblem("no-defect", [])],
    [isFromPool, checkProblem("defect-not-drawn", [], { defect: condition })],
    [!isNamedRight || isSame, checkProblem("named-wrong", [], { named: named ?? "nothing", defect: condition })],
    [sizeError === null || isNamedRight, checkProblem("size-of-wrong", [])],
    [!isNamedRight || measurements + tries > 0, checkProblem("named-unseen", [])],
    [!isNamedRight || time_ms > 0, checkProblem("in-no-time", [], { done: "named right" })],
  ]);
}

function handoverMisfit(one: HandoverTry, station: Station): Misfit {
  const { isHandedOver, missing, time_ms } = one;
  return first([
    ...handoverFitFindings(one, station),
    [new Set(missing).size === missing.length, checkProblem("proof-twice", [])],
    [!isHandedOver || time_ms > 0, checkProblem("in-no-time", [], { done: "handed over" })],
  ]);
}

/** What cannot have turned a dial, or made its turns doubtful; a job without a dial says nothing of either. */
function turnedMisfit(one: TryResult): Misfit {
  const { sources, doubts = [] } = { sources: undefined, doubts: undefined, ...one };
  return (
    sourcesProblem(sources, (code) => checkProblem(code, [])) ??
    first([
      [doubts.length === 0 || sources !== undefined, checkProblem("doubt-without-device", [])],
      [new Set(doubts).size === doubts.length, checkProblem("doubt-twice", [])],
    ])
  );
}

/** What cannot have come of a device that lost the hand at a station. */
function lostHandMisfit({ doubts, begunAgain = 0 }: DialingTry | ZeroingTry, station: Station): Misfit {
  const canBegin = lostSightRule(station) === "try-again";
  return first([
    [canBegin || begunAgain === 0, checkProblem("begun-again-unasked", [])],
    [!(isDoubted({ doubts }) && isBegunAgain(station, begunAgain)), checkProblem("doubt-not-begun-again", [])],
  ]);
}

function madeMisfit(one: TryResult, station: Station): Misfit {
  switch (one.kind) {
    case "dialing":
      return lostHandMisfit(one, station) ?? dialingMisfit(one, station);
    case "zeroing":
      return lostHandMisfit(one, station) ?? zeroMisfit(one, station);
    case "change":
      return changeMisfit(one, station);
    case "trouble":
      return troubleMisfit(one, station);
    case "handover":
      return handoverMisfit(one, station);
    case "fitting":
      return fittingMisfit(one, station);
    case "service":
      return serviceMisfit(one, station);
    case "inspection":
      return inspectionMisfit(one, station);
  }
}

/** A lost try brings nothing but its place. */
function lostMisfit(one: TryResult): Misfit {
  const combination = "combination" in one ? one.combination : null;
  const lost = lostTry(one, { station: one.station, repetition: one.repetition, combination });
  return canonicalJson(lost) === canonicalJson(one) ? undefined : checkProblem("lost-with-result", []);
}

/**
 * What a try cannot have been at its station, whatever version made the record; undefined where it is possible.
 */
export function tryMisfit(one: TryResult, station: Station): Misfit {
  if (one.kind !== station.kind) return checkProblem("other-kind", [], { kind: one.kind, wanted: station.kind });
  if (one.repetition > station.repetitions)
    return checkProblem("beyond-repetitions", [], { repetition: one.repetition, repetitions: station.repetitions });
  if (one.isBrokenOff) return lostMisfit(one);
  return turnedMisfit(one) ?? madeMisfit(one, station);
}
