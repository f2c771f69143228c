import { type AttemptCondition, conditionsOf, heldUnder } from "./attemptConditions";

type Kind = AttemptCondition["kind"];

/** Each kind, made of its sizes in the order in which its code has them. */
const MADE: Readonly<Record<Kind, (sizes: readonly number[]) => AttemptCondition>> = {
  "index-offset": ([size = 0]) => ({ kind: "index-offset", size }),
  "lost-motion": ([size = 0]) => ({ kind: "lost-motion", size }),
  noise: ([size = 0]) => ({ kind: "noise", size }),
  "heavy-dial": () => ({ kind: "heavy-dial" }),
  "light-dial": () => ({ kind: "light-dial" }),
  "no-cutaway": () => ({ kind: "no-cutaway" }),
  "keyed-off": ([size = 0]) => ({ kind: "keyed-off", size }),
  runout: ([size = 0, at = 0]) => ({ kind: "runout", size, at }),
  catching: ([drag = 0, at = 0, arc = 0]) => ({ kind: "catching", drag, at, arc }),
};

const KINDS = Object.keys(MADE) as Kind[];

function sizesOf(condition: AttemptCondition): readonly number[] {
  if (condition.kind === "runout") return [condition.size, condition.at];
  if (condition.kind === "catching") return [condition.drag, condition.at, condition.arc];
  return "size" in condition ? [condition.size] : [];
}

const nameOf = (kind: Kind) => kind.replaceAll("-", " ");

/**
 * A condition as records keep it: "index offset 0.4", "heavy dial", "keyed off 25", "runout 0.3 40" (size, where from), "catching 2 50 10"
 * (how much, where, how far round).
 *
 * This is a format and no sentence, though it reads as one: logbook files, the CSV and the xAPI statements have had it since
 * version 0.2.0, and every version since reads it. It is written and read here and nowhere else; what a person reads is made
 * of the conditions, by the screens.
 */
export const conditionCode = (condition: AttemptCondition): string =>
  [nameOf(condition.kind), ...sizesOf(condition)].join(" ");

/** The condition that a code stands for; null for one that `conditionCode` never wrote. */
export function conditionOf(code: string): AttemptCondition | null {
  const kind = KINDS.find((one) => `${code} `.startsWith(`${nameOf(one)} `));
  if (kind === undefined) return null;
  const sizes = code.slice(nameOf(kind).length).split(" ").slice(1).map(Number);
  const condition = MADE[kind](sizes);
  return sizes.every(Number.isFinite) && conditionCode(condition) === code ? condition : null;
}

/** The conditions that codes stand for; null where one of them is not known here. */
export function conditionsOfCodes(codes: readonly string[]): AttemptCondition[] | null {
  const found = codes.map(conditionOf);
  return found.every((one) => one !== null) ? found : null;
}

/**
 * Codes of the same conditions, each once: what a later one sets anew, and what is as it should be, is left out. Codes that
 * are not known here stay as they are.
 */
export function plainCodes(codes: readonly string[]): readonly string[] {
  const conditions = conditionsOfCodes(codes);
  return conditions === null ? codes : conditionsOf(heldUnder(conditions)).map(conditionCode);
}
