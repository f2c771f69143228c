import { createActor } from "xstate";
import type { Graduations, Turn } from "../lock/dial";
import type { Refusal } from "./approach";
import { askedSide, zeroingMachine } from "./zeroingMachine";
import type { ZeroingRules } from "./zeroingRules";

/** One reading as it was taken. */
export interface TakenReading {
  readonly turn: Turn;
  /** Of the zero mark from the index as drawn, graduations, left positive. */
  readonly deviation: Graduations;
  /** Why it did not count, or null. */
  readonly refusal: Refusal | null;
}

/**
 * Runs the zeroing chart over readings, from a clamped ring.
 *
 * @returns null where one is from a direction that was not asked, or after the end
 */
export function readAgain(readings: readonly TakenReading[], rules: ZeroingRules) {
  const chart = createActor(zeroingMachine(rules)).start();
  chart.send({ type: "ring.clamped" });
  for (const { turn, deviation, refusal } of readings) {
    if (askedSide(chart.getSnapshot().value, rules) !== turn) return null;
    if (refusal === null) chart.send({ type: "reading.accepted", reading: { deviation, cam: 0 } });
    else chart.send({ type: "reading.refused", reason: refusal, deviation });
  }
  return chart.getSnapshot();
}
