import type { Outcome, SittingShown } from "./sittingShown";

/** How a sitting came out, in a word or two. */
export const OUTCOME_WORDS: Readonly<Record<Outcome, string>> = {
  passed: "passed",
  failed: "not passed",
  "not shown yet": "not shown yet",
  "broken-off": "broken off",
};

/** What checking a sitting's record came to, in a few words. */
export function soundnessWords({ check, differs }: SittingShown): string {
  if (check.problems.length > 0) return "fails its check";
  if (differs.length > 0) return "differs from its file";
  if (check.unheld.length > 0) return "of another version";
  return check.unchecked.length > 0 ? "sound, not all replayed" : "sound";
}
