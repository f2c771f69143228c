import type { FitCheck } from "../../fitting/fitCheck";
import type { FitFault } from "../../fitting/fitFaultCode";
import { stageOf } from "../../fitting/fitStage";
import type { FittingAct } from "../../fitting/fittingAct";
import { putTogether } from "../../fitting/putTogether";
import type { Profile } from "../../lock/profile";
import { drawNewParts, drawTray } from "./begunRun";
import type { HandoverRun } from "./handoverRun";
import { begunFitting, faultsOfRun, type RunFitting, skippedChecks } from "./runFitting";

/** What was done to the parts of a run's lock, as far as it counts. */
export interface FitWork {
  /** How often new parts took the place of spoiled ones. */
  readonly partsReplaced: number;
  /** All that was done since the parts came new. */
  readonly acts: readonly FittingAct[];
  /** Made since a part was last moved. */
  readonly checks: readonly FitCheck[];
}

/** What was done to the parts of a run's lock, without what was undone. */
export function fitWorkOf({ steps, fitting }: HandoverRun): FitWork {
  const live = steps.filter(({ isUndone }) => !isUndone).map(({ event }) => event);
  const replacedLast = live.findLastIndex(({ type }) => type === "parts.replaced");
  return {
    partsReplaced: live.filter(({ type }) => type === "parts.replaced").length,
    acts: live.slice(replacedLast + 1).flatMap((event) => (event.type === "lock.fitted" ? event.acts : [])),
    checks: fitting?.checks ?? [],
  };
}

/** The parts put together again; null where an act cannot be done. */
function madeAgain(begun: RunFitting, { acts, checks }: FitWork): RunFitting | null {
  let { assembly } = begun;
  for (const act of acts) {
    const done = putTogether(assembly, act, begun.lock);
    if (done.hindrance !== null) return null;
    assembly = done.assembly;
  }
  return { ...begun, assembly, checks };
}

/** What a lock comes to that is fitted again. */
interface FittedAgain {
  /** Whether it can be said to be fitted. */
  readonly canBeTogether: boolean;
  readonly faults: readonly FitFault[];
  readonly skipped: readonly FitCheck[];
}

/**
 * What a lock comes to that is fitted again by the same acts, with the parts that its run's seed draws.
 *
 * @returns null where an act cannot be done on these parts
 */
export function fitAgain(profile: Profile, seed: number, work: FitWork): FittedAgain | null {
  const { partsReplaced } = work;
  const door = partsReplaced === 0 ? drawTray(profile, seed) : drawNewParts(profile, seed, partsReplaced);
  const fitting = madeAgain(begunFitting(profile, door), work);
  if (fitting === null) return null;
  const stage = stageOf(fitting.assembly, fitting.lock);
  return {
    canBeTogether: stage === "coupled" || stage === "closed",
    faults: faultsOfRun(fitting),
    skipped: skippedChecks(fitting),
  };
}
