import type { HandoverRun } from "../../../handover/run/handoverRun";
import type { Situation } from "../../../handover/run/situation";
import type { Told } from "./told";

/** What is wrong at a door for as long as it lasts, in the picture and in a sentence. */
export interface Danger {
  readonly sign: string;
  readonly standing: string;
}

const SHUT_IN: Danger = { sign: "shut in", standing: "Still so: somebody is shut in." };
const LOCKED_OUT: Danger = { sign: "locked out", standing: "Still so: you are locked out." };

/** The danger that stands at a door, or null. */
export function dangerIn(situation: Pick<Situation, "escape" | "entry">): Danger | null {
  if (situation.escape === "shutIn") return SHUT_IN;
  return situation.entry === "lockedOut" ? LOCKED_OUT : null;
}

/** The danger that stood before the last step already, or that what was told last does not tell; null where none does. */
export function standingDanger({ steps, situation }: HandoverRun, told: Told | null): Danger | null {
  const danger = dangerIn(situation);
  const before = steps.filter(({ isUndone }) => !isUndone).at(-2);
  const stoodBefore = before !== undefined && dangerIn(before.situation) === danger;
  return stoodBefore || told?.consequences.length === 0 ? danger : null;
}
