import { type LearningCusumRule, learningCusum } from "../statistics/learningCusum";
import type { AttemptRecord } from "./attemptRecord";
import { isJobSkill } from "./jobRecord";
import type { DeclarationRecord } from "./records";
import { type Skill, skillKey } from "./skill";

/**
 * When a skill counts as shown: LC-CUSUM on first-time openings, or on jobs that were right.
 *
 * A competent hand misses one in ten, three in ten is not enough. Source: Biau & Porcher (2010), Stat. Med.
 * 29:1900-1909, for the method; the rates and the limit are training values, with their characteristic in
 * `masteryCharacteristic`.
 */
export const MASTERY_RULE: LearningCusumRule = { adequateFailureRate: 0.1, inadequateFailureRate: 0.3, limit: 3 };

/** How far someone is with a skill. */
export interface Mastery {
  readonly skill: Skill;
  readonly attempts: number;
  /** After each attempt, dimensionless, >= 0. */
  readonly scores: readonly number[];
  /** Score over its limit, in [0, 1]; 1 once declared. */
  readonly progress: number;
  readonly isDeclared: boolean;
  /** Attempt that showed it, counted from 1; of a declaration that is kept, the one it names. Undefined before. */
  readonly declaredAt: number | undefined;
  readonly message: string;
}

const LOST_BY_A_MISS = Math.log(MASTERY_RULE.inadequateFailureRate / MASTERY_RULE.adequateFailureRate);
const WON_BY_AN_OPENING = Math.log((1 - MASTERY_RULE.adequateFailureRate) / (1 - MASTERY_RULE.inadequateFailureRate));

/**
 * Openings in a row that would declare a skill.
 *
 * @param score - of the moment, >= 0
 * @returns a whole number >= 0
 */
export function openingsWanted(score: number): number {
  return Math.max(0, Math.ceil((MASTERY_RULE.limit - score) / WON_BY_AN_OPENING - 1e-9));
}

/** Openings that one miss costs at most. */
const COST = Math.ceil(LOST_BY_A_MISS / WON_BY_AN_OPENING);

function jobMessage(jobs: number, score: number, declaredAt: number | undefined): string {
  if (declaredAt !== undefined) {
    return `You have shown this at job ${declaredAt}: your jobs fit someone who misses 1 in 10 far better than one who misses 3 in 10. It stays shown.`;
  }
  if (jobs === 0) return `No job yet: ${openingsWanted(0)} right in a row show it.`;
  const wanted = openingsWanted(score);
  return `Not shown yet: ${wanted === 1 ? "one more right" : `${wanted} right in a row`} would show it; a miss costs about ${COST} right ones, never more than you have.`;
}

function openingsMessage(attempts: number, score: number, declaredAt: number | undefined): string {
  if (declaredAt !== undefined) {
    return `You have shown this at attempt ${declaredAt}: your openings fit a hand that misses 1 in 10 far better than one that misses 3 in 10. It stays shown.`;
  }
  if (attempts === 0) return `No attempt yet: ${openingsWanted(0)} openings in a row show it.`;
  const wanted = openingsWanted(score);
  return `Not shown yet: ${wanted} ${wanted === 1 ? "opening" : "openings in a row"} would show it; a miss costs about ${COST} openings, never more than you have.`;
}

/**
 * Mastery of one skill.
 *
 * @param attempts - at this skill, jobs as practices too, oldest first
 * @param declaration - kept from earlier; with it the skill is shown, whatever came after or was deleted since
 */
export function mastery(
  skill: Skill,
  attempts: readonly Pick<AttemptRecord, "opened">[],
  declaration?: Pick<DeclarationRecord, "attempts">,
): Mastery {
  const cusum = learningCusum(
    attempts.map(({ opened }) => opened),
    MASTERY_RULE,
  );
  const declaredAt = declaration?.attempts ?? cusum.declaredAt;
  const isDeclared = declaredAt !== undefined;
  const score = cusum.scores.at(-1) ?? 0;
  const message = isJobSkill(skill) ? jobMessage : openingsMessage;
  return {
    skill,
    attempts: attempts.length,
    scores: cusum.scores,
    progress: isDeclared ? 1 : score / MASTERY_RULE.limit,
    isDeclared,
    declaredAt,
    message: message(attempts.length, score, declaredAt),
  };
}

/**
 * The declaration to keep once a skill is shown; it bears the same id on every machine, so it is never there twice.
 *
 * @param attempts - of this person at this skill, oldest first
 * @returns null before
 */
export function declarationOf(
  personId: string,
  skill: Skill,
  attempts: readonly Pick<AttemptRecord, "opened" | "startedAt">[],
): DeclarationRecord | null {
  const { declaredAt } = mastery(skill, attempts);
  const at = declaredAt === undefined ? undefined : attempts[declaredAt - 1]?.startedAt;
  if (declaredAt === undefined || at === undefined) return null;
  return {
    id: declarationId(personId, skill),
    createdAt: at,
    updatedAt: at,
    personId,
    ...skill,
    declaredAt: at,
    attempts: declaredAt,
  };
}

/** Letters that an id takes; others as their code, so that different skills keep different ids. */
const inId = (text: string) => text.replace(/[^A-Za-z0-9-]/g, (letter) => `_${letter.charCodeAt(0).toString(16)}_`);

const declarationId = (personId: string, skill: Skill) => `shown:${personId}:${inId(skillKey(skill))}`;
