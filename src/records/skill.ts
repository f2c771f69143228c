/** Something that can be mastered: an exercise at a kind of lock. */
export interface Skill {
  readonly profileId: string;
  readonly exercise: string;
}

/** A try at a skill. One that never came to its end shows nothing of it. */
export interface SkillTry extends Skill {
  readonly isUnfinished?: boolean | undefined;
}

/** A skill as one text. */
export function skillKey({ profileId, exercise }: Skill): string {
  return JSON.stringify([profileId, exercise]);
}

/**
 * Attempts, or whatever practices a skill, sorted by it; those that never came to their end show none and are left out.
 *
 * @returns skills in the order of their first attempt, attempts in the order given
 */
export function bySkill<One extends SkillTry>(
  attempts: readonly One[],
): { readonly skill: Skill; readonly attempts: One[] }[] {
  const groups = new Map<string, { skill: Skill; attempts: One[] }>();
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
