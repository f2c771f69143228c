import { fieldProblem } from "../../lock/fieldProblem";
import type { CombinationRules } from "../../lock/profile";
import { combinationRulesSchema } from "../../lock/profileSchema";
import { combinationProblem } from "../combinationWords";
import { DrillError } from "../drillError";

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
 * @throws {DrillError} naming the rule
 */
export function parseRules(value: unknown): CombinationRules {
  const parsed = combinationRulesSchema.safeParse(value);
  if (!parsed.success) throw new DrillError(fieldProblem(parsed.error.issues, value), "rules");
  const unknown = unknownKey(value);
  if (unknown === undefined) return parsed.data;
  const known = Object.keys(combinationRulesSchema.shape);
  throw new DrillError(combinationProblem("unknown-rule", [], { key: unknown, known }), "rules");
}
