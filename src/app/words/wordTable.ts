import { DIALING_WORDS, ZERO_WORDS } from "./dialingWords";
import { FITTING_WORDS, SERVICE_WORDS } from "./fittingWords";
import { LOCK_WORDS } from "./lockWords";
import type { Word } from "./word";
import { DOOR_WORDS, PRACTICE_WORDS } from "./workWords";

/** Every word that is explained, in groups, in the order of the page. */
export const WORD_GROUPS = [
  LOCK_WORDS,
  DIALING_WORDS,
  ZERO_WORDS,
  DOOR_WORDS,
  FITTING_WORDS,
  SERVICE_WORDS,
  PRACTICE_WORDS,
] as const;

/** The word of that id, or undefined. */
export function wordOf(id: string): Word | undefined {
  return WORD_GROUPS.flatMap(({ words }) => words).find((one) => one.id === id);
}
