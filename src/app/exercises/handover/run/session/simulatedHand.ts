import type { Dialer } from "../../../../../handover/run/rules/handoverEvent";
import type { Combination } from "../../../../../lock/combination";
import type { Graduations, Milliseconds } from "../../../../../lock/dial";
import type { Chance } from "../../../../../statistics/chance";
import { drawNormal } from "../../../../../statistics/drawNormal";
import type { HandoverSession } from "./handoverSession";

/** Spread of a simulated hand's stops, graduations; a training value. */
const HAND_SPREAD: Graduations = 0.3;
/** How often a simulated hand sets one number off, and by how much; training values. */
const SLIPS = 0.25;
const SLIP: readonly [Graduations, Graduations] = [2, 4];

/** How far each stop of a simulated hand runs past, graduations. */
function handErrors(numbers: Combination, chance: Chance): Graduations[] {
  return numbers.map(() => drawNormal(chance, 0, HAND_SPREAD));
}

/** What a simulated hand sets: what is wanted, but for a slip now and then. */
export function setBySimulation(wanted: Combination, graduations: number, chance: Chance): Combination {
  if (chance() >= SLIPS) return wanted;
  const at = Math.floor(chance() * wanted.length);
  const by = SLIP[0] + chance() * (SLIP[1] - SLIP[0]);
  return wanted.map((number, k) => (k === at ? (number + by) % graduations : number));
}

/** A simulated hand dials the combination as it is written. */
export function dialBySimulation(session: HandoverSession, by: Dialer, now: Milliseconds): void {
  const { lock, chance } = session;
  const errors = handErrors(lock.meant, chance);
  const opened = lock.isHeld ? false : lock.dialBy(lock.meant, errors);
  session.act({ type: "combination.dialed", by, opened }, now);
}

/** A simulated hand turns the dial back, as far as throws the bolt or spins the lock off. */
export function turnBack(session: HandoverSession, type: "bolt.thrown" | "lock.spunOff", now: Milliseconds): void {
  if (type === "lock.spunOff") session.lock.spinOff();
  else if (session.run.hindrance({ type }) === undefined) session.lock.throwBolt();
  session.act({ type }, now);
}
