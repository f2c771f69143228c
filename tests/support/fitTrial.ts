import { FIT_FAULTS, type FitFault } from "../../src/fitting/fitFaultCode";
import { lockToFit } from "../../src/fitting/fittedLock";
import { type drawInspection, fitWith } from "../../src/fitting/inspect/drawFit";
import { faultsOn } from "../../src/fitting/inspect/faultDraws";
import type { Profile } from "../../src/lock/profile";
import { SHIPPED_PROFILES } from "../../src/lock/shippedProfiles";
import { type Chance, seededChance } from "../../src/statistics/chance";
import { diagnosed } from "./fitter";

type Drawn = ReturnType<typeof drawInspection>;

export const inOrder = (faults: Iterable<FitFault>): readonly FitFault[] => {
  const had = new Set(faults);
  return FIT_FAULTS.filter((fault) => had.has(fault));
};

/** Locks that can have a fault. */
export const locksWith = (fault: FitFault): readonly Profile[] =>
  SHIPPED_PROFILES.filter((one) => faultsOn(lockToFit(one, seededChance(1))).includes(fault));

/** Whether a technician names exactly what is wrong, by checks alone. */
const isNamed = ({ assembly, faults, lock }: Drawn, chance: Chance) =>
  inOrder(diagnosed(assembly, lock, chance)).join() === faults.join();

/** Of so many draws, how many in which all that is wrong is named, and nothing else. */
export const namedRight = (runs: number, draw: (chance: Chance) => Drawn): number =>
  Array.from({ length: runs }, (_, seed) => seededChance(seed)).filter((chance) => isNamed(draw(chance), chance))
    .length;

/** A fit of a lock with what is wanted wrong. */
export const drawnWith = (wanted: readonly FitFault[], profile: Profile, chance: Chance): Drawn => {
  const lock = lockToFit(profile, chance);
  return { lock, ...fitWith(wanted, lock, chance) };
};
