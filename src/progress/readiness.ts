import { LAPSE_SCORE, MASTERY_RULE, type MasteryRule, READY_SCORE } from "../records/masteryRule";
import type { DeclarationRecord } from "../records/records";
import { triedRight } from "../records/triedRight";
import { type LearningSteps, learningSteps } from "../statistics/learningCusum";
import type { Practice } from "./practice";

/** A try that counts: whether it went right, and when it was, milliseconds since 1970. */
export type CountedTry = Pick<Practice, "opened" | "isLate" | "startedAt">;

/** Why readiness was lost: by misses at an attempt, counted from 1; or for want of practice. */
export type Lapse = { readonly by: "misses"; readonly at: number } | { readonly by: "time"; readonly days: number };

/** How far someone is with a skill by now. */
export interface Standing {
  readonly state: "not-yet" | "ready" | "lapsed";
  /** Towards being ready now, in [0, `READY_SCORE`]. */
  readonly score: number;
  /** The attempt, counted from 1, that showed it last; of a declaration that is kept, the one it names. */
  readonly shownAt?: number | undefined;
  /** What took it away, where it is lapsed. */
  readonly lapse?: Lapse | undefined;
}

/** How far someone is with a skill, as the scores have it. */
export interface Readiness extends Standing {
  /** The score after each attempt. */
  readonly scores: readonly number[];
  /** Whether someone was ready after each attempt. */
  readonly wasReady: readonly boolean[];
}

/** What is known beside the attempts. */
export interface ReadinessSetting {
  readonly rule?: MasteryRule | undefined;
  /** Kept from earlier, by the same rule: attempts before it may have been deleted. */
  readonly declaration?: Pick<DeclarationRecord, "attempts" | "declaredAt"> | undefined;
  /** Milliseconds since 1970; without it nothing lapses for want of practice since the last attempt. */
  readonly now?: number | undefined;
}

const DAY_MS = 86_400_000;

/** Sums of steps that should meet a limit exactly may fall short of it by rounding. */
export const ROUNDING = 1e-9;

/** The steps of the learning CUSUM under a rule. */
export const stepsOf = (rule: MasteryRule): LearningSteps => learningSteps({ ...rule, limit: READY_SCORE });

/** The score towards being ready after one more attempt: never below 0, and never above its limit, where it waits. */
export const nextReady = (score: number, { success, failure }: LearningSteps, opened: boolean): number =>
  Math.min(READY_SCORE, Math.max(0, score + (opened ? success : failure)));

/** The score of deterioration after one more attempt: what an attempt takes from the one, it adds to the other. */
export const nextLapse = (score: number, { success, failure }: LearningSteps, opened: boolean): number =>
  Math.max(0, score - (opened ? success : failure));

/** Where a walk through somebody's attempts stands, as plain data: it goes on from there with the next attempt. */
export interface WalkState {
  readonly score: number;
  readonly shownAt: number | null;
  readonly lapse: Lapse | null;
  readonly isReady: boolean;
  readonly decline: number;
  readonly count: number;
  readonly last: number | null;
  /** Whether a declaration that is kept has not counted yet. */
  readonly isPending: boolean;
}

const AT_START: WalkState = {
  score: 0,
  shownAt: null,
  lapse: null,
  isReady: false,
  decline: 0,
  count: 0,
  last: null,
  isPending: true,
};

/** Walks through the attempts, one after another. */
class Walk {
  score: number;
  shownAt: number | undefined;
  lapse: Lapse | undefined;
  isReady: boolean;
  private decline: number;
  private count: number;
  private last: number | undefined;
  private readonly steps: LearningSteps;
  private readonly rule: MasteryRule;
  private declaration: ReadinessSetting["declaration"];

  constructor({ rule = MASTERY_RULE, declaration }: ReadinessSetting, from: WalkState = AT_START) {
    this.rule = rule;
    this.steps = stepsOf(rule);
    this.declaration = from.isPending ? declaration : undefined;
    this.score = from.score;
    this.shownAt = from.shownAt ?? undefined;
    this.lapse = from.lapse ?? undefined;
    this.isReady = from.isReady;
    this.decline = from.decline;
    this.count = from.count;
    this.last = from.last ?? undefined;
  }

  get state(): WalkState {
    const { score, shownAt = null, lapse = null, isReady, decline, count, last = null, declaration } = this;
    return { score, shownAt, lapse, isReady, decline, count, last, isPending: declaration !== undefined };
  }

  /** What holds at the end, after the time since. */
  end({ declaration, now }: ReadinessSetting): Standing {
    this.waitUntil(now ?? (declaration === undefined ? -Infinity : declaration.declaredAt + 1));
    const { isReady, lapse, shownAt, score } = this;
    const state = isReady ? "ready" : lapse === undefined ? "not-yet" : "lapsed";
    return { state, score, shownAt, lapse };
  }

  /** Time goes on until a moment, without practice. */
  waitUntil(moment: number): void {
    this.takeDeclaration(moment);
    const { lapseDays } = this.rule;
    if (!this.isReady || lapseDays === null || this.last === undefined) return;
    const days = Math.floor((moment - this.last) / DAY_MS);
    if (days > lapseDays) this.lose({ by: "time", days });
  }

  practice(one: CountedTry): void {
    const { startedAt } = one;
    const isRight = triedRight(one);
    this.waitUntil(startedAt);
    this.count += 1;
    this.last = startedAt;
    this.score = nextReady(this.score, this.steps, isRight);
    if (this.isReady) this.decay(isRight);
    else if (this.score >= READY_SCORE - ROUNDING && this.count >= this.rule.minimumAttempts) this.gain(this.count);
  }

  private decay(isRight: boolean): void {
    this.decline = nextLapse(this.decline, this.steps, isRight);
    if (this.decline >= LAPSE_SCORE - ROUNDING) this.lose({ by: "misses", at: this.count });
  }

  /** What was shown by attempts that are gone counts from its day on. */
  private takeDeclaration(moment: number): void {
    const { declaration } = this;
    if (declaration === undefined || declaration.declaredAt >= moment) return;
    this.last = Math.max(this.last ?? 0, declaration.declaredAt);
    if (!this.isReady) this.gain(declaration.attempts);
    this.declaration = undefined;
  }

  private gain(attempt: number): void {
    this.isReady = true;
    this.shownAt = attempt;
    this.lapse = undefined;
    this.decline = 0;
    // It was shown again by the attempts that are here.
    this.declaration = undefined;
  }

  private lose(lapse: Lapse): void {
    this.isReady = false;
    this.lapse = lapse;
    this.score = 0;
  }
}

/**
 * Whether someone is ready at a skill.
 *
 * Shown by a learning CUSUM (LC-CUSUM), lost by a CUSUM for deterioration over the attempts since, or for want of
 * practice; then it has to be shown again. Sources: Biau & Porcher (2010), Stat. Med. 29:1900-1909, for the first;
 * Page (1954), Biometrika 41:100-115, for the second.
 *
 * @param attempts - at this skill, oldest first
 */
export function readiness(attempts: readonly CountedTry[], setting: ReadinessSetting = {}): Readiness {
  const walk = new Walk(setting);
  const steps = attempts.map((one) => {
    walk.practice(one);
    return { score: walk.score, isReady: walk.isReady };
  });
  return {
    ...walk.end(setting),
    scores: steps.map((one) => one.score),
    wasReady: steps.map((one) => one.isReady),
  };
}

/**
 * A walk after some more attempts.
 *
 * @param from - where it stood; left out at the first attempt
 * @param attempts - later than all before, oldest first
 * @param setting - the same rule and declaration as before
 */
export function walkedOn(
  from: WalkState | undefined,
  attempts: readonly CountedTry[],
  setting: ReadinessSetting,
): WalkState {
  const walk = new Walk(setting, from);
  for (const one of attempts) walk.practice(one);
  return walk.state;
}

/** Whether someone is ready by where a walk stands: the same as `readiness` says of all its attempts. */
export const standingAt = (from: WalkState, setting: ReadinessSetting): Standing =>
  new Walk(setting, from).end(setting);
