import type { core } from "zod/mini";

const pathOf = (path: readonly PropertyKey[]) =>
  path
    .map((key) => (typeof key === "number" ? `[${key}]` : `.${String(key)}`))
    .join("")
    .replace(/^\./, "");

/** The value a path leads to, or undefined where the path breaks off. */
const valueAt = (root: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>(
    (value, key) =>
      typeof value === "object" && value !== null ? (value as Record<PropertyKey, unknown>)[key] : undefined,
    root,
  );

const SHOWN = 40;

/** A value as a short piece of JSON, for a sentence. */
export function shown(value: unknown): string {
  if (typeof value === "number") return String(value);
  const text = JSON.stringify(value) ?? "missing";
  return text.length > SHOWN ? `${text.slice(0, SHOWN)}…` : text;
}

/**
 * The first thing a schema found wrong, as a sentence that names the field, what it must be, and what it is.
 *
 * Schemas here give each field's message as "must be ..."; the field and the value are put round it.
 *
 * @param issues - as zod lists them
 * @param root - the value that was checked
 */
export function fieldProblem(issues: readonly core.$ZodIssue[], root: unknown): string {
  const issue = issues[0];
  if (issue === undefined) return "is not valid";
  const field = pathOf(issue.path);
  const found = valueAt(root, issue.path);
  const isMissing = found === undefined;
  return `${field === "" ? "this" : field} ${issue.message}${isMissing ? " (it is missing)" : `, not ${shown(found)}`}`;
}
