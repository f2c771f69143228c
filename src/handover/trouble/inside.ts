import type { Attempt } from "../../dialing/attempt";
import { idealMotion } from "../../dialing/idealMotion";
import { stopError } from "../../dialing/runs";
import { type Graduations, type Milliseconds, reading, signOf } from "../../lock/dial";
import type { TroubleTask } from "./trouble";
import { TroubleLock } from "./troubleLock";

/** What a lock made of one try: for the debrief. */
export interface InsideOfTry {
  /**
   * For each number, how far it was off for the lock when the draw began: the gate off the fence, left positive, or
   * the stop as the encoder counted it, positive ran past. Graduations.
   */
  readonly errors: readonly Graduations[];
  /** How far each may be off, graduations. */
  readonly limits: readonly Graduations[];
}

/** What a lock made of the try that it has just been through. */
export function insideOf({ profile, combination, pack, reader, wheelErrors }: Attempt): InsideOfTry {
  const { length } = combination;
  if (pack !== null) {
    return { errors: wheelErrors[length] ?? pack.errors(), limits: pack.profile.wheelPack.gateTolerance };
  }
  const stops = reader.legs.slice(0, length);
  return {
    errors: stops.map(({ turn, to }, k) => stopError(turn, to, combination[k] ?? 0, profile.graduations)),
    limits: combination.map(() => profile.stopTolerance),
  };
}

/** A steady hand's move, milliseconds. */
const MOVE: Milliseconds = 800;
/** Step by which a draw is looked at, graduations. */
const LOOK: Graduations = 0.25;

/** The lock of a task with its numbers dialed and not yet drawn. */
function dialedLock(task: TroubleTask, off: readonly Graduations[]): TroubleLock {
  const { profile, combination } = task.card;
  const lock = new TroubleLock(task, 0);
  const numbers = combination.map((number, k) => reading(number + (off[k] ?? 0), profile.graduations));
  const stops = idealMotion(profile, numbers, lock.seen).slice(1, -1);
  stops.forEach((position, k) => {
    lock.bringTo(position, (k + 1) * MOVE);
  });
  return lock;
}

/**
 * A lock of the same task, its numbers dialed without a miss and the draw not begun: for the cutaway.
 *
 * @param off - how far each number is dialed off, graduations, left positive
 */
export function dialedInside(task: TroubleTask, off: readonly Graduations[] = []): Attempt {
  return dialedLock(task, off).attempt;
}

/**
 * How far the draw turns, from the last number's stop, until the nose drops.
 *
 * @param lastOff - how far the last number is dialed off, graduations, left positive
 * @returns graduations; null where it does not drop within two turns
 */
export function turnsUntilDrop(task: TroubleTask, lastOff: Graduations): Graduations | null {
  const { profile, combination } = task.card;
  const lock = dialedLock(task, [...combination.slice(0, -1).map(() => 0), lastOff]);
  const from = lock.seen;
  const sign = signOf(profile.draw.turn);
  for (let turned = LOOK; turned <= 2 * profile.graduations; turned += LOOK) {
    lock.bringTo(from + sign * turned, MOVE);
    if (lock.attempt.isCoupled) return turned;
    if (lock.end === "refused") return null;
  }
  return null;
}
