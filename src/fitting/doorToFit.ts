import type { Graduations } from "../lock/dial";
import type { Profile, Range } from "../lock/profile";
import type { Chance } from "../statistics/chance";
import { type Assembly, inTheTray } from "./assembly";
import { NEW_BOARD } from "./board";
import { type LockToFit, lockToFit } from "./fittedLock";
import { CENTERED, type Offset } from "./offCenter";
import { FITTING } from "./trainingValues";

/** What is not known of a door before its lock is put together: where the keyways are, and whether the first spindle is bent. */
export interface DoorToFit {
  /** As `LockToFit.slotAt`, graduations. */
  readonly slotAt: Graduations;
  readonly bend: Offset;
}

/** A way off the middle in any direction. @param sizes - least and most, millimeters */
export function anyWay([least, most]: Range, chance: Chance): Offset {
  const angle = 2 * Math.PI * chance();
  const size = least + (most - least) * chance();
  return { x_mm: size * Math.cos(angle), y_mm: size * Math.sin(angle) };
}

/** A door drawn by chance, its keyways anywhere, its first spindle now and then one that was dropped. */
export const drawDoor = (profile: Profile, chance: Chance): DoorToFit => ({
  slotAt: lockToFit(profile, chance).slotAt,
  bend: chance() < 1 / FITTING.droppedOneIn ? anyWay(FITTING.dropped_mm, chance) : CENTERED,
});

/** All parts of a door's lock in the tray. */
export const trayAt = ({ bend }: DoorToFit, { sizes, isElectronic }: LockToFit): Assembly =>
  inTheTray(sizes.spindle_mm, bend, isElectronic ? NEW_BOARD : null);
