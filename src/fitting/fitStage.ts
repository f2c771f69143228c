import { type Assembly, isGluedIn } from "./assembly";
import { goodPlaces, type LockToFit, standsOutAt } from "./fittedLock";

/** How far a lock can be put together; "spent" where it can become no good one any more. */
export const FIT_STAGES = ["apart", "coupled", "closed", "spent"] as const;

/** How far a lock is put together, and whether it can still become a good one. */
export type FitStage = (typeof FIT_STAGES)[number];

/** Whether a spindle reaches far enough into the cam with the dial in a place where gap and keyway are right. */
const reachesCam = (lock: LockToFit, length_mm: number): boolean =>
  goodPlaces(lock, length_mm).some(({ gap_mm }) => standsOutAt(lock, length_mm, gap_mm) >= lock.sizes.outLeast_mm);

/** Whether nothing in the tray makes a good lock of this any more. */
function isSpent(assembly: Assembly, lock: LockToFit): boolean {
  const { spindle, spares, locker } = assembly;
  if (locker.includes("wheels") || isGluedIn(assembly)) return true;
  const isSpoiled = spindle.isStripped || !reachesCam(lock, spindle.length_mm) || locker.includes("spindle-thread");
  return isSpoiled && spares === 0;
}

/** Names the state of a lock on the door. */
export function stageOf(assembly: Assembly, lock: LockToFit): FitStage {
  if (isSpent(assembly, lock)) return "spent";
  const { ring, body, dialIn, key, hasCover } = assembly;
  if (ring === null || body === null || dialIn === null || key === null) return "apart";
  return hasCover ? "closed" : "coupled";
}
