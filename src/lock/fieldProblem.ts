import type { core } from "zod/mini";
import type { Path, Problem } from "../wording/problem";

/** The value a path leads to, or undefined where the path breaks off. */
const valueAt = (root: unknown, path: Path): unknown =>
  path.reduce<unknown>(
    (value, key) =>
      typeof value === "object" && value !== null ? (value as Record<PropertyKey, unknown>)[key] : undefined,
    root,
  );

/** The rule that a schema carries as its message; "invalid" where it has none of ours. */
function ruleOf(message: string): Pick<Problem, "code" | "values"> {
  try {
    const { code, values = {} } = JSON.parse(message);
    return { code, values };
  } catch {
    return { code: "invalid", values: {} };
  }
}

/**
 * The first thing a schema found wrong: the rule of the field, and what was found there.
 *
 * @param issues - as zod lists them; their messages are rules (`must`)
 * @param root - the value that was checked
 */
export function fieldProblem([issue]: readonly core.$ZodIssue[], root: unknown): Problem {
  if (issue === undefined) return { code: "invalid", path: [], values: {} };
  const { path } = issue;
  if (issue.code === "unrecognized_keys") return { code: "unknown-field", path, values: { key: issue.keys[0] } };
  const { code, values } = ruleOf(issue.message);
  return { code, path, values: { ...values, found: valueAt(root, path) } };
}
