import { type Graduations, signOf } from "../../lock/dial";
import type { LearnedZero } from "../../lock/train/learnedZero";
import type { Problem } from "../../wording/problem";
import type { DoorLock } from "./doorLock";
import type { HandoverEvent } from "./rules/handoverEvent";
import { runProblem } from "./rules/runWords";

/** Beyond a whole turn the draw has come by every place where the lever nose can drop, graduations. */
const OVER: Graduations = 1;

/**
 * How far the dial must be turned on in the direction of the draw to open a lock whose bolt is thrown, without dialing any
 * number: found by turning a copy of it.
 *
 * @returns graduations to the positive stop, > 0; null where turning on does not open it
 */
export function turnThatOpens(lock: DoorLock): Graduations | null {
  const { draw, graduations } = lock.profile;
  const copy = lock.copyThrown();
  const from = copy.hand.dial;
  copy.turnBy(signOf(draw.turn) * (graduations + draw.travel + OVER));
  return copy.retraction === 1 ? Math.abs(copy.hand.dial - from) : null;
}

/**
 * Whether the combination as written, dialed exactly at the index as it stands, opens a lock: found by dialing a copy of
 * it. Ring, zero, numbers set and tolerance all go into it.
 *
 * @param zero - what an encoder lock has learned by now, where it has not been dialed since
 */
export function opensAsWritten(lock: DoorLock, zero: LearnedZero | null = lock.zero): boolean {
  const copy = lock.copyThrown(zero);
  copy.spinOff();
  return copy.dialBy(copy.meant, []);
}

/** Why an act cannot be as the bolt stands: part of the way back, or said to have stayed; undefined where it can. */
export function hinderedByBolt(event: HandoverEvent, lock: DoorLock): Problem | undefined {
  const isBack = lock.retraction > 0 && !lock.isHeld;
  if (event.type === "combination.dialed" && !event.opened && isBack) return runProblem("bolt-came-back", []);
  const isOpening = event.type === "door.opened" && event.by === "outside";
  if (!isOpening && event.type !== "holdback.set") return undefined;
  const isPart = lock.retraction > 0 && lock.retraction < 1;
  return isPart ? runProblem("bolt-part-back", [], { turn: lock.profile.draw.turn }) : undefined;
}
