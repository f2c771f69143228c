import type { Problem } from "../wording/problem";
import type { Graduations } from "./dial";
import { LockError } from "./lockError";
import { lockProblem } from "./lockWords";
import type { Profile } from "./profile";

/** The numbers of a lock in dialing order, readings in [0, one turn). */
export type Combination = readonly Graduations[];

const problemWith = (number: unknown, graduations: number, index: number): Problem | null => {
  const path = ["combination", index];
  if (typeof number !== "number" || !Number.isFinite(number)) return lockProblem("not-a-number", path, { number });
  if (number === graduations) return lockProblem("mark-zero", path, { number });
  if (number < 0 || number > graduations) return lockProblem("off-dial", path, { number, last: graduations - 1 });
  return null;
};

/**
 * What keeps numbers from being dialed on a lock; null for a combination of it. Whether they are well chosen is another
 * matter (`src/drill`).
 *
 * @param numbers - any value from outside
 */
export function combinationProblem({ procedure, graduations, id }: Profile, numbers: unknown): Problem | null {
  const wanted = procedure.length;
  if (!Array.isArray(numbers)) return lockProblem("not-numbers", ["combination"], { wanted });
  if (numbers.length !== wanted) {
    return lockProblem("number-count", ["combination"], { count: numbers.length, lock: id, wanted });
  }
  return numbers.map((one, k) => problemWith(one, graduations, k)).find((one) => one !== null) ?? null;
}

/**
 * Checks that numbers can be dialed on a lock.
 *
 * @param numbers - any value from outside
 * @returns the same numbers
 * @throws {LockError} naming the number that cannot be dialed
 */
export function parseCombination(profile: Profile, numbers: unknown): Combination {
  const problem = combinationProblem(profile, numbers);
  if (problem !== null) throw new LockError(problem);
  return numbers as number[];
}
