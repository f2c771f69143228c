import { jointsOf } from "../fitting/fit";
import { checkFit, type FitObservation } from "../fitting/fitCheck";
import type { Graduations } from "../lock/dial";
import { LockTrain } from "../lock/train/lockTrain";
import type { Chance } from "../statistics/chance";
import { drawNormal } from "../statistics/drawNormal";
import { type CellType, voltsUnderLoad } from "./batteries";
import { type ServicedLock, wornFit } from "./servicedLock";
import { SERVICE } from "./serviceValues";
import type { Instrument, LookPlace } from "./visitAct";

/** What a look, an instrument or a try showed; never a judgment. */
export type VisitObservation =
  | Extract<FitObservation, { readonly kind: "turn-round" | "marks" | "key" }>
  /** How far the dial turns back before the cam follows, graduations in twentieths. */
  | { readonly kind: "lost-motion"; readonly play: Graduations }
  /** The set while the lock works, volts in hundredths. */
  | { readonly kind: "battery"; readonly volts: number }
  | { readonly kind: "ring"; readonly isDusty: boolean; readonly isPainted: boolean }
  | { readonly kind: "bolt"; readonly drags: boolean }
  /** The handle inside draws the bolt, whatever the lock is like. */
  | { readonly kind: "way-out" }
  /** What is printed on the cells, and the months since the dates written on them. */
  | { readonly kind: "case"; readonly types: readonly CellType[]; readonly months: readonly number[] }
  | { readonly kind: "try"; readonly opened: boolean };

const rounded = (value: number, step: number) => Math.round(value / step) * step + 0;

function trainOf(lock: ServicedLock): LockTrain {
  const { perTurn } = lock.toFit;
  return new LockTrain({ ...jointsOf(wornFit(lock), perTurn), start: 0 }, perTurn);
}

/** Turns a dial until its train has it somewhere. @param to - unwrapped graduations */
function bring(train: LockTrain, to: Graduations, drag: Graduations): void {
  const by = to - train.dial;
  if (by !== 0) train.turnBy(by + Math.sign(by) * drag - train.ahead);
}

/** Turns left, then right until the cam follows: how far the dial has gone until then. */
function lostMotion(lock: ServicedLock): Graduations {
  const train = trainOf(lock);
  train.turnBy(lock.toFit.perTurn / 2);
  const [dial, cam] = [train.dial, train.camPosition];
  while (train.camPosition === cam) train.turnBy(-SERVICE.creep);
  return dial - train.dial;
}

/** Dials the combination once: whether the cam comes near enough to every number, each from the side that it is set from. */
function opens(lock: ServicedLock, chance: Chance): boolean {
  const { drag } = wornFit(lock);
  const { playFresh } = lock.toFit.sizes;
  const train = trainOf(lock);
  const numbers = SERVICE.numbers.map((part) => (part * lock.toFit.perTurn) / 100);
  return numbers.every((number) => {
    bring(train, drawNormal(chance, number, SERVICE.stopSpread + SERVICE.stopHeavy * drag), drag);
    const setOff = train.camTurn === "right" ? playFresh : 0;
    return Math.abs(train.camPosition - setOff - number) <= SERVICE.tolerance;
  });
}

const seenBy = (lock: ServicedLock, chance: Chance) => ({
  fit: wornFit(lock),
  assembly: lock.assembly,
  lock: lock.toFit,
  chance,
});

/** Tries the combination once. */
export const tryOpening = (lock: ServicedLock, chance: Chance): VisitObservation => ({
  kind: "try",
  opened: opens(lock, chance),
});

/** Measures. @param chance - source of the spread of hand and instrument */
export function measured(instrument: Instrument, lock: ServicedLock, chance: Chance): VisitObservation {
  switch (instrument) {
    case "battery":
      return {
        kind: "battery",
        volts: rounded(drawNormal(chance, voltsUnderLoad(lock.cells), SERVICE.meterSpread_V), SERVICE.meterStep_V),
      };
    case "lost-motion":
      return {
        kind: "lost-motion",
        play: Math.max(0, rounded(drawNormal(chance, lostMotion(lock), SERVICE.eyeSpread), SERVICE.playStep)),
      };
    default:
      return checkFit(instrument, seenBy(lock, chance)) as VisitObservation;
  }
}

/** Looks at a place. */
export function looked(at: LookPlace, { soil, cells, boltDrags }: ServicedLock): VisitObservation {
  switch (at) {
    case "ring":
      return { kind: "ring", isDusty: soil.dirt > 0, isPainted: soil.paint > 0 };
    case "case":
      return { kind: "case", types: cells.map(({ type }) => type), months: cells.map(({ months }) => months) };
    case "bolt":
      return { kind: "bolt", drags: boltDrags };
    case "way-out":
      return { kind: "way-out" };
  }
}
