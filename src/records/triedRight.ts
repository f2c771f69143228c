/** How a try ended, as far as its count goes. */
export interface TryEnd {
  /** Whether the lock opened, or what was asked was right. */
  readonly opened: boolean;
  /** In a sitting: whether it took longer than its station allows. */
  readonly isLate?: boolean | undefined;
  /** In a sitting: whether it was turned by something that its station does not admit. */
  readonly isNotAdmitted?: boolean | undefined;
  /** In a sitting: whether its turns are in doubt, and its station counts no such try. */
  readonly isDoubtRefused?: boolean | undefined;
}

/**
 * Whether a try counts as a right one: what came too late, from a source not admitted, or with turns in doubt where its station
 * counts no such try, opened the lock and does not count.
 */
export const triedRight = ({ opened, isLate, isNotAdmitted, isDoubtRefused }: TryEnd): boolean =>
  opened && isLate !== true && isNotAdmitted !== true && isDoubtRefused !== true;
