import type { RunStep } from "../../../../../handover/run/handoverRun";
import { FAULT_WORDS } from "../../../../../handover/run/rules/faultWords";
import { stepWords } from "../../../../../handover/run/stepWords";

/** What was told last: what happened with its consequences, or why nothing did. */
export interface Told {
  readonly words: string;
  readonly consequences: readonly string[];
  readonly isHindered: boolean;
}

/** What a step did, told at once. @param byLock - what follows from it by the lock itself */
export const toldOf = ({ event, faults }: RunStep, byLock: readonly string[]): Told => ({
  words: stepWords(event),
  consequences: [...faults.map((code) => FAULT_WORDS[code].happened), ...byLock],
  isHindered: false,
});

/** Why nothing happened. */
export const hindered = (words: string): Told => ({ words, consequences: [], isHindered: true });

/** Something that is no step. */
export const noted = (words: string): Told => ({ words, consequences: [], isHindered: false });
