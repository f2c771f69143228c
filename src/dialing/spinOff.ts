import { type Graduations, opposite, type Turn } from "../lock/dial";
import type { Profile } from "../lock/profile";
import { spinOffRule } from "../lock/spinOffRule";
import type { WheelPack } from "../lock/wheelPack";
import type { HandReader } from "./handReader";
import { runLength } from "./runs";

/** How far a lock that was opened has been spun off since its bolt was thrown. */
export interface SpinOff {
  /** The direction under way; before any, the one that leads away from the draw. */
  readonly turn: Turn;
  /** Whole turns in one direction that secure this lock. */
  readonly turnsWanted: number;
  /** Turns made in the direction under way, with their part; turning back begins again at 0. */
  readonly turnsMade: number;
  /** Turns still to make in the same direction, with their part; 0 once it is secured. */
  readonly turnsLeft: number;
  /** Wheels that have not been carried out of their gates since, counted from 1; none in an encoder lock. */
  readonly wheelsStanding: readonly number[];
  /** Who asks for that many turns. */
  readonly source: string;
}

/** A wheel as the bolt came back, graduations. */
export interface WheelAtOpening {
  /** Unwrapped. */
  readonly position: Graduations;
  /** How far its gate was off the fence. */
  readonly error: Graduations;
}

/** What telling a spin-off needs of a lock; an `Attempt` has it all. */
export interface SpunLock {
  readonly profile: Profile;
  readonly reader: Pick<HandReader, "runs">;
  readonly pack: Pick<WheelPack, "positions"> | null;
  readonly opened: boolean;
  readonly isThrown: boolean;
  readonly isSecured: boolean;
  readonly wheelsAtOpening: readonly WheelAtOpening[];
}

/** Wheels whose gates never left the fence since the bolt came back, counted from 1. */
function wheelsStanding(lock: SpunLock): number[] {
  const { profile, pack, wheelsAtOpening } = lock;
  if (profile.kind !== "wheel-pack" || pack === null) return [];
  // A wheel carried a whole turn round stands true again for a moment, but it is no longer where it was.
  return pack.positions().flatMap((position, k) => {
    const { position: before, error } = wheelsAtOpening[k] ?? { position, error: 0 };
    const off = Math.abs(position - before + error);
    return off <= (profile.wheelPack.gateTolerance[k] ?? 0) ? [k + 1] : [];
  });
}

/**
 * How far the spin-off has come, for whoever counts the turns down.
 *
 * @returns null unless the lock was opened in this attempt and its bolt is thrown
 */
export function spinOffOf(lock: SpunLock): SpinOff | null {
  if (!lock.opened || !lock.isThrown) return null;
  const { profile, reader, isSecured } = lock;
  const { turns, source } = spinOffRule(profile);
  const run = reader.runs.at(-1);
  const turnsMade = run === undefined ? 0 : runLength(run) / profile.graduations;
  return {
    turn: run?.turn ?? opposite(profile.draw.turn),
    turnsWanted: turns,
    turnsMade,
    turnsLeft: isSecured ? 0 : Math.max(0, turns - turnsMade),
    wheelsStanding: wheelsStanding(lock),
    source,
  };
}
