import type { Hand } from "../realdial/sources/handOf";
import type { AttemptRecord, HelpLevel } from "../records/attemptRecord";
import type { JobRecord } from "../records/jobRecord";
import { MASTERY_RULE, type MasteryRule } from "../records/masteryRule";
import type { DeclarationRecord } from "../records/records";
import { bySkill, type Skill, skillKey } from "../records/skill";
import { countText } from "../wording/amountWords";
import { declarationFor, type Mastery, mastery } from "./mastery";
import { missesToRedo } from "./missesToRedo";
import { handsTried, jobsOfHand, ofHand } from "./oneHand";
import { type Practice, practiceOfJob, practicesOf } from "./practice";
import { fadedHelp, ORDER_REASONS, type PracticeOrder, practiceOrder } from "./practiceOrder";
import { type Refresh, refresh } from "./refresh";

/** One thing that could be practiced next, with the reason. An offer: nothing is ever locked. */
export interface Suggestion {
  readonly kind: "redo-misses" | "go-on" | "refresh";
  readonly skill: Skill;
  readonly reason: string;
  readonly help: HelpLevel;
  /** The misses to redo, latest first; empty for the other kinds, and for jobs. */
  readonly misses: readonly AttemptRecord[];
}

/** What to practice next. */
export interface WhatNext {
  readonly suggestions: readonly Suggestion[];
  readonly order: PracticeOrder;
  readonly orderReason: string;
  /** The hand that it is of. */
  readonly hand: Hand;
  /** Every hand that was tried, the one used last first. */
  readonly hands: readonly Hand[];
}

interface SkillState {
  readonly skill: Skill;
  readonly mastery: Mastery;
  readonly refresh: Refresh | null;
  /** What is to be repeated; null where nothing is. */
  readonly redo: Pick<Suggestion, "reason" | "misses"> | null;
}

function redoMisses(misses: readonly AttemptRecord[]): SkillState["redo"] {
  const count = misses.length;
  if (count === 0) return null;
  return { reason: `${countText(count, "miss", "misses")} to repeat.`, misses };
}

/** A job is redone whole, and only while the latest one was not right. */
function redoJob(latest: JobRecord | undefined): SkillState["redo"] {
  if (latest === undefined || latest.isRight) return null;
  const count = latest.missed.length;
  const missed = count === 0 ? "" : ` You missed ${countText(count, "thing")}.`;
  return { reason: `The last one was not right.${missed} Do it again from the beginning.`, misses: [] };
}

function suggestionsFor({ skill, mastery: state, refresh: due, redo }: SkillState): Suggestion[] {
  const common = { skill, help: fadedHelp(state.progress), misses: [] };
  const isDue = state.isReady && due?.isDue === true;
  return [
    ...(redo === null ? [] : [{ ...common, kind: "redo-misses" as const, ...redo }]),
    ...(state.isReady ? [] : [{ ...common, kind: "go-on" as const, reason: state.message }]),
    ...(isDue ? [{ ...common, kind: "refresh" as const, reason: due.reason }] : []),
  ];
}

const RANK: Readonly<Record<Suggestion["kind"], number>> = { "redo-misses": 0, "go-on": 1, refresh: 2 };

/**
 * What one person may practice next: misses first, then what is not shown yet, then what is due for refresh. The order
 * of practice is that of attempts at dialing.
 *
 * @param all - attempts of one person, oldest first
 * @param declarations - of that person
 * @param now - milliseconds since 1970
 * @param dayStart - minutes that the local day begins after that of UTC, as `getTimezoneOffset` of a date gives them
 * @param allJobs - of that person, oldest first
 * @param rule - when someone counts as ready
 * @param wanted - the hand whose tries count; the one used last where left out, or never used
 */
export function whatNext(
  all: readonly AttemptRecord[],
  declarations: readonly DeclarationRecord[],
  now: number,
  dayStart = 0,
  allJobs: readonly JobRecord[] = [],
  rule: MasteryRule = MASTERY_RULE,
  wanted: Hand | null = null,
): WhatNext {
  const hands = handsTried(practicesOf(all, allJobs));
  const hand = hands.find((one) => one === wanted) ?? hands[0];
  const attempts = ofHand(all, hand);
  const jobs = jobsOfHand(allJobs, hand);
  const stateOf = (skill: Skill, own: readonly Practice[], redo: SkillState["redo"]): SkillState => ({
    skill,
    mastery: mastery(skill, own, { rule, now, declaration: declarationFor(declarations, skill, rule, hand) }),
    refresh: refresh(own, now, dayStart),
    redo,
  });
  const states = bySkill(attempts).map((one) =>
    stateOf(one.skill, one.attempts, redoMisses(missesToRedo(one.attempts))),
  );
  const latest = new Map(jobs.map((job) => [skillKey(practiceOfJob(job)), job]));
  const jobStates = bySkill(jobs.map(practiceOfJob)).map((one) =>
    stateOf(one.skill, one.attempts, redoJob(latest.get(skillKey(one.skill)))),
  );
  const least = states.reduce((low, { mastery: { progress } }) => Math.min(low, progress), states.length === 0 ? 0 : 1);
  const order = practiceOrder(least);
  const suggestions = [...states, ...jobStates].flatMap(suggestionsFor).sort((a, b) => RANK[a.kind] - RANK[b.kind]);
  return { suggestions, order, orderReason: ORDER_REASONS[order], hand, hands };
}
