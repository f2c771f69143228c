import type { Station } from "../../../drill/sheet/sheet";
import { ChangeTry } from "./changeTry";
import { DialingTry } from "./dialingTry";
import { FittingTry } from "./fittingTry";
import { HandoverTry } from "./handoverTry";
import { InspectionTry } from "./inspectionTry";
import { ServiceTry } from "./serviceTry";
import { TroubleTry } from "./troubleTry";
import type { TrySetup } from "./trySetup";
import { ZeroingTry } from "./zeroingTry";

/** A try at a dial alone: the sitting hands every motion on to it. */
export type DialTry = DialingTry | ZeroingTry;

/** A try at a job, which its own screen works. */
export type JobInHand = ChangeTry | TroubleTry | HandoverTry | FittingTry | ServiceTry | InspectionTry;

/** The try under the hand. */
export type TryInHand = DialTry | JobInHand;

const MAKERS: Readonly<Record<Station["kind"], (setup: TrySetup) => TryInHand>> = {
  dialing: (setup) => new DialingTry(setup),
  zeroing: (setup) => new ZeroingTry(setup),
  change: (setup) => new ChangeTry(setup),
  trouble: (setup) => new TroubleTry(setup),
  handover: (setup) => new HandoverTry(setup),
  fitting: (setup) => new FittingTry(setup),
  service: (setup) => new ServiceTry(setup),
  inspection: (setup) => new InspectionTry(setup),
};

/** Puts a try under the hand. */
export const makeTry = (setup: TrySetup): TryInHand => MAKERS[setup.station.kind](setup);

/** Whether a try is at a dial alone. */
export const isDialTry = (one: TryInHand): one is DialTry => one.kind === "dialing" || one.kind === "zeroing";
