import { SHIPPED_PROFILES } from "../../lock/shippedProfiles";
import type { DailyPractice } from "../../progress/dailyPractice";
import type { NumberToBeat } from "../../progress/numberToBeat";
import { firstNumbersOf, firstNumbersWords } from "../../records/exercise";
import { countText } from "../../wording/amountWords";
import { linkOf } from "../keeping/sheets/sheetsAddress";
import { HELP_WORDS, shortTitle } from "../results/attemptRows";
import { HAND_NAMES } from "../results/sourceWords";
import type { StartData } from "./startData";

/** The address of today's practice; null where it does not fit into a link. */
export function dailyAddress({ sheet }: DailyPractice): string | null {
  const link = linkOf(sheet, "sittings");
  return "hash" in link ? link.hash : null;
}

/** What today's practice is made of, in its order. */
export function dailyWords({ misses, skills }: DailyPractice): string {
  const due = `${countText(skills, "try", "tries")} of what is due or not shown yet.`;
  if (misses === 0) return due;
  const first = `Your latest misses first: ${countText(misses, "try", "tries")}.`;
  return skills === 0 ? first : `${first} Then ${due}`;
}

/** Which hand the practice offered here is of, a sentence; null where only one was tried. */
export function turnedWords({ hand, hands }: StartData["turned"]): string | null {
  if (hands.length < 2) return null;
  return `This goes by what you turned last: ${HAND_NAMES[hand].toLowerCase()}. See the others in your progress.`;
}

/** The number to beat, as a number with its unit, and what it is of. */
export function toBeatWords({ kind, value, setting }: NumberToBeat): { readonly figure: string; readonly of: string } {
  const profile = SHIPPED_PROFILES.find(({ id }) => id === setting.profileId) ?? null;
  const first = firstNumbersOf(setting.exercise);
  const numbers = first === null ? "" : `, ${first === undefined ? setting.exercise : firstNumbersWords(first)}`;
  const at = `${shortTitle(profile, setting.profileId)}${numbers}, ${HELP_WORDS[setting.help]}`;
  if (kind === "streak") {
    return { figure: countText(value, "opening in a row", "openings in a row"), of: `Your longest streak. ${at}.` };
  }
  return {
    figure: countText(Number(value.toFixed(1)), "graduation", "graduations"),
    of: `The worst stop of your most exact opening. ${at}.`,
  };
}

/** The bench set up like that attempt; null for a lock that is not known here. */
export function toBeatAddress({ setting }: NumberToBeat): string | null {
  const { profileId, help } = setting;
  return SHIPPED_PROFILES.some(({ id }) => id === profileId) ? `#/bench?profile=${profileId}&help=${help}` : null;
}
