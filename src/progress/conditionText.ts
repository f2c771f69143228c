import type { Condition } from "../drill/sheet/sheet";

const SIZED = ["index-offset", "lost-motion", "noise"] as const;
const PLAIN = ["heavy-dial", "light-dial", "no-cutaway"] as const;

const worded = (kind: Condition["kind"]) => kind.replaceAll("-", " ");

/** A condition in short words, as an attempt keeps it: "index offset 0.4", "heavy dial". */
export function conditionText(condition: Condition): string {
  const name = worded(condition.kind);
  return "size" in condition ? `${name} ${condition.size}` : name;
}

/**
 * The condition that an attempt was made under.
 *
 * @param text - as `conditionText` words it
 * @returns null for words that name none
 */
export function conditionOf(text: string): Condition | null {
  const plain = PLAIN.find((kind) => worded(kind) === text);
  if (plain !== undefined) return { kind: plain };
  const [, name = "", digits = ""] = /^(.+) (-?\d+(?:\.\d+)?(?:e-\d+)?)$/.exec(text) ?? [];
  const sized = SIZED.find((kind) => worded(kind) === name);
  return sized === undefined ? null : { kind: sized, size: Number(digits) };
}
