import type { Lesson } from "../../drill/sheet/course";
import { sheetId } from "../../drill/sheet/sheetId";
import { sittingPlan } from "../../drill/sittingPlan";
import { SHIPPED_PROFILES } from "../../lock/shippedProfiles";
import type { DailyPractice } from "../../progress/dailyPractice";
import type { NumberToBeat } from "../../progress/numberToBeat";
import { linkOf } from "../keeping/sheets/sheetsAddress";
import { HELP_WORDS, shortTitle } from "../results/attemptRows";

const count = (number: number, one: string, many: string) => `${number} ${number === 1 ? one : many}`;

/** The address that opens a lesson. */
export const lessonAddress = ({ sheet }: Lesson) => `#/sittings?sheet=${sheetId(sheet)}`;

/** "4 minutes, 10 tries": about how long a lesson takes, and how much there is to do. */
export function lessonSize({ minutes, sheet }: Lesson): string {
  const { tries, questions } = sittingPlan(sheet);
  const parts = [count(minutes, "minute", "minutes"), count(tries, "try", "tries")];
  if (questions > 0) parts.push(count(questions, "question", "questions"));
  return parts.join(", ");
}

/** The address of today's practice; null where it does not fit into a link. */
export function dailyAddress({ sheet }: DailyPractice): string | null {
  const link = linkOf(sheet, "sittings");
  return "hash" in link ? link.hash : null;
}

/** What today's practice is made of, in its order. */
export function dailyWords({ misses, skills }: DailyPractice): string {
  const due = `${count(skills, "try", "tries")} at what is due or not shown yet.`;
  if (misses === 0) return due;
  const first = `Your latest misses first: ${count(misses, "try", "tries")}.`;
  return skills === 0 ? first : `${first} Then ${due}`;
}

/** The number to beat, as a number with its unit, and what it is of. */
export function toBeatWords({ kind, value, setting }: NumberToBeat): { readonly figure: string; readonly of: string } {
  const profile = SHIPPED_PROFILES.find(({ id }) => id === setting.profileId) ?? null;
  const numbers = setting.exercise === "open" ? "" : `, ${setting.exercise.replace("first 1", "first number")}`;
  const at = `${shortTitle(profile, setting.profileId)}${numbers}, ${HELP_WORDS[setting.help]}`;
  if (kind === "streak") {
    return { figure: count(value, "opening in a row", "openings in a row"), of: `Your longest streak. ${at}.` };
  }
  return {
    figure: count(Number(value.toFixed(1)), "graduation", "graduations"),
    of: `The worst stop of your truest opening. ${at}.`,
  };
}

/** The bench set up like that attempt; null for a lock that is not known here. */
export function toBeatAddress({ setting }: NumberToBeat): string | null {
  const { profileId, help } = setting;
  return SHIPPED_PROFILES.some(({ id }) => id === profileId) ? `#/bench?profile=${profileId}&help=${help}` : null;
}
