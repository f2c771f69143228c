import type { Graduations } from "./dial";
import { shown } from "./fieldProblem";
import { LockError } from "./lockError";
import type { Profile } from "./profile";

/** The numbers of a lock in dialing order, readings in [0, one turn). */
export type Combination = readonly Graduations[];

const problemWith = (number: unknown, graduations: number): string | undefined => {
  if (typeof number !== "number" || !Number.isFinite(number)) return "is not a number";
  if (number === graduations) return `is the mark 0 of this dial; write 0`;
  if (number < 0 || number > graduations) return `is off this dial, whose numbers go from 0 to ${graduations - 1}`;
  return undefined;
};

/**
 * Checks that numbers can be dialed on a lock. Whether they are well chosen is another matter (`src/drill`).
 *
 * @param numbers - any value from outside
 * @returns the same numbers
 * @throws {LockError} `bad-combination` with a sentence that names the number
 */
export function parseCombination(profile: Profile, numbers: unknown): Combination {
  const wanted = profile.procedure.length;
  if (!Array.isArray(numbers))
    throw new LockError("bad-combination", `combination must be a list of ${wanted} numbers`);
  if (numbers.length !== wanted) {
    const has = `combination has ${numbers.length} numbers`;
    throw new LockError("bad-combination", `${has}, but ${profile.id} takes ${wanted}`);
  }
  numbers.forEach((number, index) => {
    const problem = problemWith(number, profile.graduations);
    if (problem !== undefined) {
      throw new LockError("bad-combination", `combination[${index}] (${shown(number)}) ${problem}`);
    }
  });
  return numbers as number[];
}
