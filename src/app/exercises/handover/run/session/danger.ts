import type { HandoverRun } from "../../../../../handover/run/handoverRun";
import type { Situation } from "../../../../../handover/run/rules/situation";
import type { Told } from "./told";

/** What is wrong at a door for as long as it lasts, in the picture and in a sentence. */
export interface Danger {
  readonly sign: string;
  readonly standing: string;
}

const SHUT_IN: Danger = { sign: "shut inside", standing: "Someone is still shut inside." };
const LOCKED_OUT: Danger = { sign: "locked out", standing: "You are still locked out." };

/**
 * The danger at a door, or null.
 *
 * @param opens - whether the numbers as written open the lock now: a loose ring may have been turned since the last step
 */
export function dangerIn(situation: Pick<Situation, "escape" | "entry">, opens: () => boolean): Danger | null {
  if (situation.escape === "shutIn") return SHUT_IN;
  return situation.entry === "lockedOut" && !opens() ? LOCKED_OUT : null;
}

/** Whether a danger was there before the last step already, or is not in what was told last: then it is told again. */
export function isStanding(danger: Danger | null, { steps }: HandoverRun, told: Told | null): boolean {
  const before = steps.filter(({ isUndone }) => !isUndone).at(-2);
  const wasBefore = before !== undefined && dangerIn(before.situation, () => false) === danger;
  return wasBefore || told?.consequences.length === 0;
}
