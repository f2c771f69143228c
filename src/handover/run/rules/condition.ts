import type { Place, Region, Situation } from "./situation";

/**
 * A condition on the situation, as data: the chart's guards are built from it, and lists of what is missing are read
 * from it, so that the two cannot differ.
 */
export type Condition =
  | Place
  | { readonly all: readonly Condition[] }
  | { readonly any: readonly Condition[] }
  | { readonly not: Condition };

/** All of these hold. */
export const all = (...conditions: readonly Condition[]): Condition => ({ all: conditions });

/** At least one of these holds. */
export const any = (...conditions: readonly Condition[]): Condition => ({ any: conditions });

/** This does not hold. */
export const not = (condition: Condition): Condition => ({ not: condition });

/** A place taken apart into its region and its state. */
export function placeParts(place: Place): readonly [Region, string] {
  const [region = "", state = ""] = place.split(".");
  return [region as Region, state];
}

/** Whether a condition holds in a situation. */
export function holds(condition: Condition, situation: Situation): boolean {
  if (typeof condition === "string") {
    const [region, state] = placeParts(condition);
    return situation[region] === state;
  }
  if ("all" in condition) return condition.all.every((one) => holds(one, situation));
  if ("any" in condition) return condition.any.some((one) => holds(one, situation));
  return !holds(condition.not, situation);
}
