import { type Hand, handOf } from "../realdial/sources/handOf";
import type { SourceDescription } from "../realdial/sources/sourceDescription";
import { isSameSource, MOST_SOURCES } from "../realdial/sources/sourcesSeen";
import { isJobSkill } from "../records/jobRecord";
import { MASTERY_RULE, type MasteryRule, READY_SCORE, ruleKey } from "../records/masteryRule";
import type { DeclarationRecord } from "../records/records";
import { type Skill, skillKey } from "../records/skill";
import { masteryMessage } from "./masteryWords";
import { ofHand, turnsDial } from "./oneHand";
import {
  type CountedTry,
  type Readiness,
  type ReadinessSetting,
  ROUNDING,
  readiness,
  type Standing,
  stepsOf,
} from "./readiness";

/** How far someone is with a skill by now, with words for it. */
export interface MasteryStanding extends Standing {
  readonly skill: Skill;
  readonly attempts: number;
  readonly rule: MasteryRule;
  /** Score over its limit, in [0, 1]; 1 while ready. */
  readonly progress: number;
  readonly isReady: boolean;
  /** Right ones in a row that would make one ready; 0 while ready. */
  readonly wanted: number;
  readonly message: string;
}

/** The same, with how it came there. */
export type Mastery = MasteryStanding & Readiness;

/**
 * Right ones in a row that would make someone ready.
 *
 * @param score - of the moment, in [0, `READY_SCORE`]
 * @param attempts - made so far
 * @returns a whole number >= 0
 */
export function openingsWanted(score: number, attempts: number, rule: MasteryRule = MASTERY_RULE): number {
  const byScore = Math.ceil((READY_SCORE - score) / stepsOf(rule).success - ROUNDING);
  return Math.max(0, byScore, rule.minimumAttempts - attempts);
}

/**
 * Mastery of one skill.
 *
 * @param attempts - at this skill, jobs as practices too, oldest first
 */
export function mastery(skill: Skill, attempts: readonly CountedTry[], setting: ReadinessSetting = {}): Mastery {
  const found = readiness(attempts, setting);
  return { ...found, ...masteryOf(skill, attempts.length, found, setting.rule) };
}

/** Mastery of one skill by where its walk stands. @param attempts - their count */
export function masteryOf(
  skill: Skill,
  attempts: number,
  { state, score, shownAt, lapse }: Standing,
  rule: MasteryRule = MASTERY_RULE,
): MasteryStanding {
  const isReady = state === "ready";
  const wanted = isReady ? 0 : openingsWanted(score, attempts, rule);
  const found = { state, score, shownAt, lapse };
  return {
    ...found,
    skill,
    rule,
    attempts,
    progress: isReady ? 1 : Math.min(1, score / READY_SCORE),
    isReady,
    wanted,
    message: masteryMessage({ ...found, rule, attempts, wanted, isJob: isJobSkill(skill) }),
  };
}

/** A try that counts, with what turned its dial. */
type TurnedTry = CountedTry & { readonly sources?: readonly SourceDescription[] | undefined };

/** What turned the dials of tries of one hand, each once; nothing where the screen alone did, or no dial is turned. */
function sourcesAmong(skill: Skill, attempts: readonly TurnedTry[]): Pick<DeclarationRecord, "sources"> {
  if (!turnsDial(skill.exercise)) return {};
  const all = attempts.flatMap(({ sources = [] }) => sources);
  const each = all.filter((one, k) => all.findIndex((other) => isSameSource(one, other)) === k);
  return each.length === 0 ? {} : { sources: each.slice(0, MOST_SOURCES) };
}

/**
 * The declaration to keep once a skill is shown with one hand; it bears the same id on every machine, so it is never there
 * twice.
 *
 * @param attempts - of this person at this skill with one hand (`ofHand`), oldest first
 * @returns null before
 */
export function declarationOf(
  personId: string,
  skill: Skill,
  attempts: readonly TurnedTry[],
  rule: MasteryRule = MASTERY_RULE,
): DeclarationRecord | null {
  const first = readiness(attempts, { rule }).wasReady.indexOf(true);
  const at = attempts[first]?.startedAt;
  if (at === undefined) return null;
  const turned = sourcesAmong(skill, attempts.slice(0, first + 1));
  return {
    id: declarationId(personId, skill, rule, handOf(turned)),
    createdAt: at,
    updatedAt: at,
    personId,
    profileId: skill.profileId,
    exercise: skill.exercise,
    declaredAt: at,
    attempts: first + 1,
    ...(isUsual(rule) ? {} : { rule }),
    ...turned,
  };
}

const isUsual = (rule: MasteryRule) => ruleKey(rule) === ruleKey(MASTERY_RULE);

/** The declaration of a skill by a rule and with a hand, among those of one person. */
export function declarationFor(
  declarations: readonly DeclarationRecord[],
  skill: Skill,
  rule: MasteryRule = MASTERY_RULE,
  hand: Hand = "screen",
): DeclarationRecord | undefined {
  return ofHand(declarations, hand).find(
    (one) => skillKey(one) === skillKey(skill) && ruleKey(one.rule ?? MASTERY_RULE) === ruleKey(rule),
  );
}

/** Letters that an id takes; others as their code, so that different skills keep different ids. */
const inId = (text: string) => text.replace(/[^A-Za-z0-9-]/g, (letter) => `_${letter.charCodeAt(0).toString(16)}_`);

const declarationId = (personId: string, skill: Skill, rule: MasteryRule, hand: Hand) =>
  [
    `shown:${personId}:${inId(skillKey(skill))}`,
    ...(isUsual(rule) ? [] : [`:${ruleKey(rule)}`]),
    ...(hand === "screen" ? [] : [`:${hand}`]),
  ].join("");
