import type { Milliseconds } from "../../lock/dial";

/** What an assignment is for: to practice as often as one may, or to be tested. */
export const ASSIGNMENT_KINDS = ["practice", "test"] as const;

/** Most attempts that an assignment gives each person; without a number there is no limit. */
export const MOST_ATTEMPTS = 100;

/** When an assignment can be begun, and how often. Moments are milliseconds since 1970, by the server's clock. */
export interface AssignmentTerms {
  readonly from: Milliseconds;
  readonly until: Milliseconds;
  /** How often each person may begin it; null for as often as one likes. */
  readonly attempts: number | null;
  /** When the instructor ended it before its time; null where nobody did. */
  readonly endedAt: Milliseconds | null;
}

/** How an assignment stands for a person: it begins later, can be begun, is over, or its attempts are used up. */
export const DUE_STATES = ["not-yet", "open", "over", "used-up"] as const;

/** How an assignment stands for a person now. */
export type DueState = (typeof DUE_STATES)[number];

/**
 * How an assignment stands for a person.
 *
 * @param begun - how often that person began it
 * @param now - milliseconds since 1970, by the same clock
 */
export function dueState({ from, until, attempts, endedAt }: AssignmentTerms, begun: number, now: number): DueState {
  // What is over stays over, whatever is left: nobody can begin it any more.
  if (now >= until || (endedAt !== null && now >= endedAt)) return "over";
  if (attempts !== null && begun >= attempts) return "used-up";
  return now < from ? "not-yet" : "open";
}

/** How often a person may still begin it; null for as often as one likes. */
export const attemptsLeft = ({ attempts }: Pick<AssignmentTerms, "attempts">, begun: number): number | null =>
  attempts === null ? null : Math.max(0, attempts - begun);

/** What a bench knows of an assignment that one of its people has. */
interface KnownDue {
  readonly from: Milliseconds;
  readonly until: Milliseconds;
  readonly state: DueState;
  readonly left: number | null;
  readonly sittings: readonly unknown[];
}

/**
 * How an assignment stands some time after the server told of it, as far as a bench can know that: it may have been ended or
 * changed since.
 *
 * @param now - milliseconds since 1970, by the server's clock
 */
export function dueLater<Due extends KnownDue>(due: Due, now: number): Due {
  const begun = due.sittings.length;
  const attempts = due.left === null ? null : due.left + begun;
  return { ...due, state: dueState({ ...due, attempts, endedAt: null }, begun, now) };
}
