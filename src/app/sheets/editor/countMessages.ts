import { countCombinations } from "../../../drill/combinations/countCombinations";
import { DrillError } from "../../../drill/drillError";
import type { CombinationRules, Profile } from "../../../lock/profile";

/** What is to be counted. */
export interface CountTask {
  readonly profile: Profile;
  readonly rules: CombinationRules;
}

/** What counting came to. */
export type CountMessage =
  | { readonly kind: "counted"; readonly count: number }
  | { readonly kind: "not-counted"; readonly says: string }
  | { readonly kind: "no-sense" };

/** Counts, or says why it does not. */
export function countOf({ profile, rules }: CountTask): CountMessage {
  try {
    return { kind: "counted", count: countCombinations(profile, rules) };
  } catch (error) {
    if (error instanceof DrillError) return { kind: "not-counted", says: `Not counted: ${error.message}.` };
    throw error;
  }
}
