import { type DoorToFit, drawDoor } from "../../fitting/doorToFit";
import { CENTERED } from "../../fitting/offCenter";
import type { Profile } from "../../lock/profile";
import { type Chance, seededChance } from "../../statistics/chance";
import type { RecordedRun } from "./recordedRun";
import { drawScene } from "./scene";

/** What a run is begun with. */
export interface RunPlan {
  readonly profile: Profile;
  readonly seed: number;
  /** Whether a simulated hand does the dialing. */
  readonly isHandsOff: boolean;
  /** Whether the lock is to be fitted first; on its door where left out. */
  readonly isToFit?: boolean | undefined;
}

const SEEDS = 100_000;

/** Seed of a run. */
export const drawRunSeed = (chance: Chance): number => Math.floor(chance() * SEEDS);

/** Beside the seed of a run, for what is hidden in its tray. */
const TRAY = 7_000_003;
/** From one set of new parts to the next. */
const NEXT_PARTS = 104_729;

/** What lies in the tray as a run begins, by its seed. */
export const drawTray = (profile: Profile, seed: number): DoorToFit => drawDoor(profile, seededChance(seed + TRAY));

/**
 * The new parts that take the place of spoiled ones: keyways of their own, and a straight spindle. The same place in a run
 * brings the same parts, so that taking a step back brings no better ones.
 *
 * @param place - which new parts of the run they are, from 1, those undone not counted
 */
export const drawNewParts = (profile: Profile, seed: number, place: number): DoorToFit => ({
  slotAt: drawDoor(profile, seededChance(seed + TRAY + place * NEXT_PARTS)).slotAt,
  bend: CENTERED,
});

/** A run in which nothing has happened yet; the same seed gives the same door. */
export function begunRun({ profile, seed, isHandsOff, isToFit }: RunPlan): RecordedRun {
  const scene = drawScene(seededChance(seed));
  const run = {
    format: "gatefall-handover",
    version: 1,
    profile,
    scene,
    seed,
    drawnBy: 1,
    isHandsOff,
    events: [],
  } as const;
  return isToFit ? { ...run, fitting: { version: 1, ...drawTray(profile, seed) } } : run;
}
