import type { Profile } from "../../lock/profile";
import type { Chance } from "../../statistics/chance";
import { shuffled } from "../../statistics/shuffled";
import type { Assembly } from "../assembly";
import { fitOf } from "../fit";
import { fitFaults } from "../fitFault";
import type { FitFault } from "../fitFaultCode";
import { type LockToFit, lockToFit } from "../fittedLock";
import { FITTING } from "../trainingValues";
import { faultsOn, goodPlan, spoiled } from "./faultDraws";
import { actsOf, type FitPlan, fittedBy } from "./fitPlan";

/** A lock that was fitted by somebody else, and what is wrong with it. */
export interface DrawnFit {
  readonly assembly: Assembly;
  /** In the order of `FIT_FAULTS`; none where nothing is wrong. */
  readonly faults: readonly FitFault[];
  /** How many acts it took. */
  readonly moves: number;
}

function fitBy(plan: FitPlan, lock: LockToFit): DrawnFit {
  const assembly = fittedBy(plan, lock);
  const fit = fitOf(assembly, lock);
  const faults = fit === null ? [] : fitFaults(fit, assembly, lock.sizes);
  return { assembly, faults, moves: actsOf(plan, lock).length };
}

/**
 * A fit with some faults.
 *
 * One that cannot go together with those before it, such as a wide gap with a dial that rubs, is left out.
 *
 * @param wanted - brought in one after another
 * @returns the fit; what is wrong with it is worked out from its parts, never taken from what was wanted
 */
export function fitWith(wanted: readonly FitFault[], lock: LockToFit, chance: Chance): DrawnFit {
  const good = goodPlan(lock, chance);
  const begun: { readonly plan: FitPlan; readonly had: readonly FitFault[] } = { plan: good, had: [] };
  const { plan } = wanted.reduce((now, fault) => {
    const next = spoiled(now.plan, fault, lock, chance);
    const had = [...now.had, fault];
    const { faults } = fitBy(next, lock);
    return had.every((one) => faults.includes(one)) ? { plan: next, had } : now;
  }, begun);
  return fitBy(plan, lock);
}

/** A fit with up to three faults, or none. */
function drawFit(lock: LockToFit, chance: Chance): DrawnFit {
  const drawn = chance();
  const count = FITTING.faultsUpTo.findIndex((upTo) => drawn < upTo);
  return fitWith(shuffled(faultsOn(lock), chance).slice(0, count), lock, chance);
}

/** A lock that one is led to. @param chance - the same chance leads to the same lock */
export function drawInspection(profile: Profile, chance: Chance): DrawnFit & { readonly lock: LockToFit } {
  const lock = lockToFit(profile, chance);
  return { lock, ...drawFit(lock, chance) };
}
