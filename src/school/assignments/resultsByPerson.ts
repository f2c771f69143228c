import type { Milliseconds } from "../../lock/dial";
import type { Outcome } from "../../records/sitting/sittingShown";

/** One sitting of an assignment, as far as it is known. */
export interface SittingLine {
  readonly sittingId: string;
  readonly attempt: number;
  readonly begunAt: Milliseconds;
  /** Null while its record has not come in. */
  readonly receivedAt: Milliseconds | null;
  /** By the server's own marks; null where something does not agree, or nothing has come in. */
  readonly outcome: Outcome | null;
  /** In [0, 1]; 0 while nothing has come in. */
  readonly right: number;
  readonly reloads: number;
  readonly isLate: boolean;
  /** How much does not agree. */
  readonly problems: number;
  /** Tries whose turns are in doubt; left out where there is none. */
  readonly doubted?: number | undefined;
}

/** What a person's sittings of one assignment came to. */
export interface PersonsResult {
  /** The best that came in and agrees; null where there is none. */
  readonly best: SittingLine | null;
  /** The one begun last; null where none was. */
  readonly latest: SittingLine | null;
  /** The rest, in the order they were begun. */
  readonly others: readonly SittingLine[];
  readonly begun: number;
  readonly received: number;
  /** Of all sittings together. */
  readonly reloads: number;
}

const RANKS: Readonly<Record<Outcome, number>> = { passed: 3, "not shown yet": 2, failed: 1, "broken-off": 0 };

const rankOf = ({ outcome }: SittingLine): number => (outcome === null ? -1 : RANKS[outcome]);

/** Whether one sitting came out better than another: by its result, then by what was right, then the earlier one. */
function isBetter(one: SittingLine, other: SittingLine): boolean {
  if (rankOf(one) !== rankOf(other)) return rankOf(one) > rankOf(other);
  if (one.right !== other.right) return one.right > other.right;
  return one.attempt < other.attempt;
}

/** What a person's sittings of one assignment came to, in whatever order they are. */
export function personsResult(sittings: readonly SittingLine[]): PersonsResult {
  const agreed = sittings.filter(({ outcome }) => outcome !== null);
  const pick = (among: readonly SittingLine[], isFirst: (one: SittingLine, other: SittingLine) => boolean) =>
    among.reduce<SittingLine | null>((found, one) => (found === null || isFirst(one, found) ? one : found), null);
  const best = pick(agreed, isBetter);
  const latest = pick(sittings, (one, other) => one.attempt > other.attempt);
  return {
    best,
    latest,
    others: sittings.filter((one) => one !== best && one !== latest).toSorted((a, b) => a.attempt - b.attempt),
    begun: sittings.length,
    received: sittings.filter(({ receivedAt }) => receivedAt !== null).length,
    reloads: sittings.reduce((sum, { reloads }) => sum + reloads, 0),
  };
}
