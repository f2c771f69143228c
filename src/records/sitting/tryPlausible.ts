import { canonicalJson } from "../../drill/canonicalJson";
import { isChangeRight } from "../../drill/marking/jobRule";
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
import { zeroingMisfit } from "./zeroingMadeAgain";

/** What a try cannot have been: the rest of a sentence that begins with its place, or undefined. */
type Misfit = string | undefined;

const first = (findings: readonly (readonly [isFine: boolean, says: string])[]): Misfit =>
  findings.find(([isFine]) => !isFine)?.[1];

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
    [combination.length === length, `dials ${combination.length} numbers, and its lock has ${length}`],
    [stopErrors.length === length, `has ${stopErrors.length} stop errors, and its lock has ${length} numbers`],
    [!hasLate, `has a fault at a number that its lock does not have`],
    [!(opened && faults.some(({ code }) => code === "not-drawn")), "is recorded as opened and as never drawn"],
    [stop === 0, `is recorded as opened, and its stop at number ${stop} is outside the lock's tolerance`],
    [!opened || time_ms > 0, "is recorded as opened in no time"],
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
      [isPaired && isOtherPaired, "has a verdict without a mean, or a mean without a verdict"],
      [counted === refused, `counts ${refused} stops as refused, and ${counted} are on record`],
      [!isSet || time_ms > 0, "is recorded as set in no time"],
    ]) ?? (station.kind === "zeroing" ? zeroingMisfit(one, station) : undefined)
  );
}

function changeMisfit(one: ChangeTry, station: Station): Misfit {
  const { length } = stationProfile(station).procedure;
  return first([
    [one.combination.length === length, `sets ${one.combination.length} numbers, and its lock has ${length}`],
    [!isChangeRight(one) || one.time_ms > 0, "is recorded as changed and proved in no time"],
  ]);
}

function troubleMisfit(one: TroubleTry, station: Station): Misfit {
  const { condition, named, isNamedRight, sizeError, time_ms, measurements, tries } = one;
  const pool = station.kind === "trouble" ? station.pool : undefined;
  const isSame = named !== null && named === condition;
  const isFromPool = pool === undefined || condition === null || pool.includes(condition);
  return first([
    [condition !== null, "names no defect that was to be found"],
    [isFromPool, `has the defect "${condition}", which its station does not draw from`],
    [!isNamedRight || isSame, `is recorded as named right: "${named ?? "nothing"}" for "${condition}"`],
    [sizeError === null || isSame, "has a size for a defect that was not named right"],
    [!isNamedRight || measurements + tries > 0, "is recorded as named right without a look at the lock"],
    [!isNamedRight || time_ms > 0, "is recorded as named right in no time"],
  ]);
}

function handoverMisfit({ isHandedOver, missing, time_ms }: HandoverTry): Misfit {
  return first([
    [new Set(missing).size === missing.length, "lists the same missing proof twice"],
    [!isHandedOver || time_ms > 0, "is recorded as handed over in no time"],
  ]);
}

function madeMisfit(one: TryResult, station: Station): Misfit {
  switch (one.kind) {
    case "dialing":
      return dialingMisfit(one, station);
    case "zeroing":
      return zeroMisfit(one, station);
    case "change":
      return changeMisfit(one, station);
    case "trouble":
      return troubleMisfit(one, station);
    case "handover":
      return handoverMisfit(one);
  }
}

/** A lost try brings nothing but its place. */
function lostMisfit(one: TryResult): Misfit {
  const combination = "combination" in one ? one.combination : null;
  const lost = lostTry(one, { station: one.station, repetition: one.repetition, combination });
  return canonicalJson(lost) === canonicalJson(one) ? undefined : "is recorded as lost, and yet has a result";
}

/**
 * What a try cannot have been at its station, whatever version made the record.
 *
 * @returns the rest of a sentence that begins with the try's place, or undefined where it is possible
 */
export function tryMisfit(one: TryResult, station: Station): string | undefined {
  if (one.kind !== station.kind) return `is of kind "${one.kind}", and its station of kind "${station.kind}"`;
  if (one.repetition > station.repetitions)
    return `is repetition ${one.repetition} at a station that has ${station.repetitions}`;
  return one.isBrokenOff ? lostMisfit(one) : madeMisfit(one, station);
}
