import { type Graduations, signOf, wrap } from "./dial";
import { exact } from "./exact";
import { LockError } from "./lockError";
import { lockProblem } from "./lockWords";
import type { WheelPackProfile } from "./profile";

/** A wheel pack at rest. Positions are unwrapped graduations, left positive. */
export interface WheelPackState {
  readonly dial: Graduations;
  /** How far each wheel leads its driver, wheel 1 first, graduations in [0, its free play]. */
  readonly slack: readonly Graduations[];
  /** Dial position at which the lever nose dropped, or null while it rides on the cam. */
  readonly engagedAt: Graduations | null;
}

/** Farthest dial position the mechanics take, graduations: its millionths are still whole numbers in a double. */
export const FARTHEST: Graduations = 1e9;

/** The error that says a dial position is out of reach, graduations. */
export const tooFar = (position: Graduations) => new LockError(lockProblem("too-far", [], { position }));

/**
 * Holds a dial position to what the mechanics take.
 *
 * @param position - graduations
 * @throws {LockError} `too-far`
 */
export function checkReach(position: Graduations): void {
  if (!(Math.abs(position) <= FARTHEST)) throw tooFar(position);
}

/**
 * Holds a picture of a pack to the pack.
 *
 * @throws {LockError} for a slack outside its free play, a nose that does not fit the dial, or a wild position
 */
export function checkStart(profile: WheelPackProfile, state: WheelPackState): void {
  const { wheelPack, procedure } = profile;
  const { dial, slack } = state;
  checkReach(dial);
  if (slack.length !== procedure.length) {
    const values = { count: slack.length, wheels: procedure.length };
    throw new LockError(lockProblem("slack-count", ["start", "slack"], values));
  }
  slack.forEach((one, k) => {
    const play = wheelPack.freePlay[k] ?? 0;
    if (!(one >= 0 && one <= play)) {
      throw new LockError(lockProblem("slack-beyond-play", ["start", "slack", k], { play, found: one }));
    }
  });
  checkNose(profile, state);
}

/** A nose that is down fell at an engagement point, and holds the dial between there and the positive stop. */
function checkNose({ draw, graduations }: WheelPackProfile, { dial, engagedAt }: WheelPackState): void {
  if (engagedAt === null) return;
  const drawn = exact((dial - engagedAt) * signOf(draw.turn));
  const isAtMark = wrap(engagedAt - draw.engageAt, graduations) === 0;
  if (isAtMark && drawn >= 0 && drawn <= exact(draw.travel)) return;
  throw new LockError(lockProblem("nose-misfit", ["start", "engagedAt"], { engagedAt, dial }));
}
