import { type Hand, handOf } from "../realdial/sources/handOf";
import { handsOf } from "../realdial/sources/handsOf";
import type { SourceDescription } from "../realdial/sources/sourceDescription";
import type { JobKind } from "../records/jobRecord";

/** Jobs in which no dial is turned: they are of no hand, and count beside every one. */
const WITHOUT_DIAL: readonly JobKind[] = ["fitting", "service", "inspection"];

/** An attempt, or a job as a practice. */
interface TriedByHand {
  readonly exercise: string;
  readonly sources?: readonly SourceDescription[] | undefined;
}

/** Whether a dial is turned in an exercise, so that it is done with one hand or another. */
export const turnsDial = (exercise: string): boolean => !WITHOUT_DIAL.some((kind) => kind === exercise);

/**
 * The rule by which no statistic mixes hands: what counts for one hand is what was tried with it, from its first move to its
 * last, and whatever turns no dial. All that aggregates tries takes them through here.
 */
export const ofHand = <One extends TriedByHand>(tries: readonly One[], hand: Hand): One[] =>
  tries.filter((one) => !turnsDial(one.exercise) || handOf(one) === hand);

/** The same of jobs. */
export const jobsOfHand = <One extends Omit<TriedByHand, "exercise"> & { readonly kind: JobKind }>(
  jobs: readonly One[],
  hand: Hand,
): One[] => jobs.filter((one) => !turnsDial(one.kind) || handOf(one) === hand);

/** Every hand that somebody tried, the one used last first; the screen where no dial was turned. @param tries - oldest first */
export function handsTried(tries: readonly TriedByHand[]): readonly [Hand, ...Hand[]] {
  const [first = "screen", ...others] = handsOf(tries.filter(({ exercise }) => turnsDial(exercise)));
  return [first, ...others];
}

/**
 * Every hand that a class tried, that of its figures first: the screen where anyone used it, since one person with another dial
 * must not change what the others are seen by.
 *
 * @param tries - oldest first
 */
export function handsOfClass(tries: readonly TriedByHand[]): readonly [Hand, ...Hand[]] {
  const [first, ...others] = handsTried(tries);
  return others.includes("screen")
    ? ["screen", first, ...others.filter((one) => one !== "screen")]
    : [first, ...others];
}
