import { type Hand, handOf } from "../realdial/sources/handOf";
import type { AttemptRecord } from "../records/attemptRecord";
import type { JobRecord } from "../records/jobRecord";
import type { DeclarationRecord } from "../records/records";
import type { Skill } from "../records/skill";
import { triedRight } from "../records/triedRight";
import { wilsonInterval } from "../statistics/proportion";
import { studentInterval } from "../statistics/studentInterval";
import type { StandingCell } from "./classTable";
import { masteryOf } from "./mastery";
import { turnsDial } from "./oneHand";
import { bestAfter, likeKey, type PersonalBest } from "./personalBest";
import { type Practice, practiceOfJob } from "./practice";
import { standingAt, type WalkState, walkedOn } from "./readiness";
import { nearStops } from "./stops/nearStops";
import type { StopErrors } from "./stops/stopTable";

/** Something tried, as it is summed up: an attempt, or a job as a practice. */
export interface SummedTry {
  readonly practice: Practice;
  /** The attempt, where it is one. */
  readonly attempt: AttemptRecord | null;
}

/** Stop errors so far: enough to go on with. */
interface StopSums {
  readonly count: number;
  /** Graduations. */
  readonly mean: number;
  /** Sum of the squared deviations from the mean, graduations squared. */
  readonly squares: number;
}

/** What one person did at one skill with one hand, summed up: plain data that goes on with the next try. By the usual rule. */
export interface SkillSummary {
  readonly skill: Skill;
  /** The hand that it was done with; null where no dial is turned. */
  readonly hand: Hand | null;
  readonly count: number;
  readonly right: number;
  readonly latest: Practice;
  readonly bests: readonly (readonly [key: string, best: PersonalBest])[];
  readonly stops: StopSums;
  readonly walk: WalkState;
  readonly declaration: Pick<DeclarationRecord, "attempts" | "declaredAt"> | null;
}

/** An attempt as it is summed up. */
export const attemptTry = (attempt: AttemptRecord): SummedTry => ({ practice: attempt, attempt });

/** A job as it is summed up. */
export const jobTry = (job: JobRecord): SummedTry => ({ practice: practiceOfJob(job), attempt: null });

/** The hand that a try counts for; null where no dial is turned. */
export const handOfTry = ({ practice }: SummedTry): Hand | null =>
  turnsDial(practice.exercise) ? handOf(practice) : null;

/** Negative where one try comes before another, in the order that everything counts in. */
export const inOrder = (one: Practice, other: Practice): number =>
  one.startedAt - other.startedAt || (one.id < other.id ? -1 : 1);

/** Source: Welford (1962), Technometrics 4:419-420. */
function withError({ count, mean, squares }: StopSums, error: number): StopSums {
  const off = error - mean;
  const next = mean + off / (count + 1);
  return { count: count + 1, mean: next, squares: squares + off * (error - next) };
}

function withBest(bests: SkillSummary["bests"], attempt: AttemptRecord | null): SkillSummary["bests"] {
  if (attempt === null) return bests;
  const key = likeKey(attempt);
  if (!bests.some(([other]) => other === key)) return [...bests, [key, bestAfter(undefined, attempt)]];
  return bests.map(([other, best]) => (other === key ? [key, bestAfter(best, attempt)] : [other, best]));
}

/**
 * A summary after one more try.
 *
 * @param summary - before; null at the first try
 * @param declaration - that is kept of this skill, rule and hand; the same one for the whole of a summary
 * @returns null where the try is earlier than the last: the summary has to be made anew, of all tries in their order
 */
export function summaryAfter(
  summary: SkillSummary | null,
  one: SummedTry,
  declaration: SkillSummary["declaration"],
): SkillSummary | null {
  const { practice, attempt } = one;
  if (summary !== null && inOrder(practice, summary.latest) < 0) return null;
  const { profileId, exercise } = practice;
  const errors = attempt === null ? [] : nearStops([attempt]).map(({ error }) => error);
  return {
    skill: { profileId, exercise },
    hand: handOfTry(one),
    count: (summary?.count ?? 0) + 1,
    right: (summary?.right ?? 0) + (triedRight(practice) ? 1 : 0),
    latest: practice,
    bests: withBest(summary?.bests ?? [], attempt),
    stops: errors.reduce(withError, summary?.stops ?? { count: 0, mean: 0, squares: 0 }),
    walk: walkedOn(summary?.walk, [practice], { declaration: declaration ?? undefined }),
    declaration,
  };
}

/** A summary of all tries of one person at one skill with one hand, in whatever order they are; null of none. */
export const summaryOf = (tries: readonly SummedTry[], declaration: SkillSummary["declaration"]): SkillSummary | null =>
  tries
    .toSorted((a, b) => inOrder(a.practice, b.practice))
    .reduce<SkillSummary | null>((summary, one) => summaryAfter(summary, one, declaration), null);

function errorsOf({ count, mean, squares }: StopSums): StopErrors | null {
  if (count === 0) return null;
  if (count === 1) return { count, bias: mean, biasInterval: null, spread: null };
  const standardDeviation = Math.sqrt(squares / (count - 1));
  return {
    count,
    bias: mean,
    biasInterval: studentInterval({ count, mean, standardDeviation }),
    spread: standardDeviation,
  };
}

/** The cell of a class table that comes of a summary. @param now - milliseconds since 1970; left out, nothing lapses by then */
export function summaryCell(summary: SkillSummary, now?: number): StandingCell {
  const { skill, count, right, latest, bests, stops, walk, declaration } = summary;
  const standing = standingAt(walk, { declaration: declaration ?? undefined, now });
  return {
    attempts: count,
    latest,
    bests: bests.map(([, best]) => best),
    openings: { opened: right, trials: count, share: right / count, interval: wilsonInterval(right, count) },
    stops: errorsOf(stops),
    mastery: masteryOf(skill, count, standing),
  };
}
