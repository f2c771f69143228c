import { type Graduations, type Milliseconds, opposite, type Turn } from "../lock/dial";
import { ApproachRuns, TREMBLE } from "./approachRuns";
import type { ZeroingRules } from "./zeroingRules";

/** Why a reading does not count: a closed list. */
export const REFUSALS = ["not-at-rest", "same-stop", "wrong-way", "came-back", "too-short", "off-the-mark"] as const;

/** Why a reading does not count. */
export type Refusal = (typeof REFUSALS)[number];

/** What the hand did just before a reading. */
export interface ApproachFacts {
  /** Direction of the last motion, or null before any. */
  readonly turn: Turn | null;
  /** How far it went in that direction without turning back or being read, graduations. */
  readonly length: Graduations;
  /** How far the motion before it went, the other way, graduations; 0 where there was none since the last reading. */
  readonly lengthBefore: Graduations;
  /** How long the dial has stayed where it is, milliseconds. */
  readonly rest_ms: Milliseconds;
  /** Whether this stop has been read already, and not left since. */
  readonly isSameStop: boolean;
}

/** A dial that stays within this of a place is at rest there, graduations. */
const STILL: Graduations = 0.05;

/**
 * Watches a dial for the way it came to rest. Mutable.
 *
 * A dial that creeps is not at rest: each time it has left its place by more than a hair, the rest begins anew. A hand
 * that trembles within that hair, or reports the same position again, does not disturb it.
 */
export class Approach {
  private readonly runs: ApproachRuns;
  private place: Graduations;
  private cameAt: Milliseconds | null = null;
  private readAt: Graduations | null = null;

  /** @param position - where the dial stands, graduations */
  constructor(position: Graduations) {
    this.runs = new ApproachRuns(position);
    this.place = position;
  }

  /** Takes in a move. @param position - where the dial stands now, graduations */
  moveTo(position: Graduations, now_ms: Milliseconds): void {
    this.runs.moveTo(position);
    if (this.readAt !== null && Math.abs(position - this.readAt) > TREMBLE) this.readAt = null;
    if (Math.abs(position - this.place) <= STILL) return;
    this.place = position;
    this.cameAt = now_ms;
  }

  /** Marks this stop as read: the next reading takes another turn, whether this one was accepted or refused. */
  readingTaken(): void {
    this.runs.readingTaken();
    this.readAt = this.place;
  }

  /** What the hand did before this moment. */
  facts(now_ms: Milliseconds): ApproachFacts {
    const { turn, length, lengthBefore } = this.runs;
    const rest_ms = this.cameAt === null ? Number.POSITIVE_INFINITY : now_ms - this.cameAt;
    return { turn, length, lengthBefore, rest_ms, isSameStop: this.readAt !== null };
  }
}

/** What is wrong with a way of approach, or null. A motion turned about in the last stretch came back. */
function approachProblem(asked: Turn, facts: ApproachFacts, least: Graduations): Refusal | null {
  const isLong = facts.length >= least;
  if (facts.turn === opposite(asked)) return !isLong && facts.lengthBefore > 0 ? "came-back" : "wrong-way";
  if (facts.turn !== null && isLong) return null;
  // A long turn the other way only led to where this one began; a short one was a turning back.
  return facts.lengthBefore > 0 && facts.lengthBefore < least ? "came-back" : "too-short";
}

/**
 * Judges one reading by what the hand did, never by what it meant.
 *
 * @param asked - direction whose series is open
 * @param deviation - of the zero mark from the index as drawn, graduations
 * @returns the one reason it is refused, or null where it counts
 */
export function judgeReading(
  asked: Turn,
  facts: ApproachFacts,
  deviation: Graduations,
  rules: ZeroingRules,
): Refusal | null {
  if (facts.rest_ms < rules.rest_ms) return "not-at-rest";
  if (facts.isSameStop) return "same-stop";
  const problem = approachProblem(asked, facts, rules.approach);
  if (problem !== null) return problem;
  return Math.abs(deviation) <= rules.captureWindow ? null : "off-the-mark";
}
