import type { AttemptRecord } from "./attemptRecord";

/** Something that can be mastered: an exercise at a kind of lock. */
export interface Skill {
  readonly profileId: string;
  readonly exercise: string;
}

/** A skill as one text. */
export function skillKey({ profileId, exercise }: Skill): string {
  return JSON.stringify([profileId, exercise]);
}

/**
 * Attempts sorted by the skill they practiced; those that never came to their end show none and are left out.
 *
 * @returns skills in the order of their first attempt, attempts in the order given
 */
export function bySkill(
  attempts: readonly AttemptRecord[],
): { readonly skill: Skill; readonly attempts: AttemptRecord[] }[] {
  const groups = new Map<string, { skill: Skill; attempts: AttemptRecord[] }>();
  for (const attempt of attempts) {
    const { profileId, exercise, isUnfinished } = attempt;
    if (isUnfinished === true) continue;
    const skill = { profileId, exercise };
    const group = groups.get(skillKey(skill)) ?? { skill, attempts: [] };
    group.attempts.push(attempt);
    groups.set(skillKey(skill), group);
  }
  return [...groups.values()];
}
