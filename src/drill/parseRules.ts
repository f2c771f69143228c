import { fieldProblem } from "../lock/fieldProblem";
import type { CombinationRules } from "../lock/profile";
import { combinationRulesSchema } from "../lock/profileSchema";
import { DrillError } from "./drillError";

/** Keys a rules file may have beside its rules: where they come from. */
const BESIDE: readonly string[] = ["source", "title"];

const unknownKey = (value: unknown): string | undefined =>
  typeof value === "object" && value !== null
    ? Object.keys(value).find((key) => !(key in combinationRulesSchema.shape) && !BESIDE.includes(key))
    : undefined;

/**
 * Reads rules for choosing combinations from outside.
 *
 * A key left out means no such rule. A key misspelt would silently mean the same, so it is refused.
 *
 * @param value - parsed JSON
 * @throws {DrillError} `bad-rules` with a sentence that names the rule
 */
export function parseRules(value: unknown): CombinationRules {
  const parsed = combinationRulesSchema.safeParse(value);
  if (!parsed.success) throw new DrillError("bad-rules", `rules: ${fieldProblem(parsed.error.issues, value)}`);
  const unknown = unknownKey(value);
  if (unknown === undefined) return parsed.data;
  const known = Object.keys(combinationRulesSchema.shape).join(", ");
  throw new DrillError("bad-rules", `rules: ${unknown} is not a rule; the rules are ${known}`);
}
