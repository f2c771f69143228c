import type { Milliseconds } from "../../lock/dial";
import type { DiagnosisMark } from "./markDiagnosis";
import type { Trouble, TroubleKind, TroubleTask } from "./trouble";
import type { TroubleContext } from "./troubleMachine";

/** What came of one lock on the trouble bench: plain data, to be kept. */
export interface TroubleResult {
  /** Id of the lock's profile. */
  readonly profile: string;
  /** Lock, pool and seed give the same exercise again. */
  readonly seed: number;
  readonly pool: readonly TroubleKind[];
  readonly truth: Trouble;
  readonly named: Trouble;
  readonly isKindRight: boolean;
  /** In the unit of the kind; null where the kind named is another. */
  readonly sizeError: number | null;
  readonly isSizeWithin: boolean;
  /** From 0 to 2. */
  readonly points: number;
  readonly tries: number;
  readonly measurements: number;
  readonly time_ms: Milliseconds;
}

/** What a result is made of. */
export interface TroubleEnd {
  readonly task: TroubleTask;
  readonly seed: number;
  readonly pool: readonly TroubleKind[];
  readonly named: Trouble;
  readonly mark: DiagnosisMark;
  readonly counts: Pick<TroubleContext, "tries" | "measurements">;
  /** From the first move or measurement to the diagnosis. */
  readonly time_ms: Milliseconds;
}

/** The result of an exercise that has been told. */
export function troubleResult({ task, seed, pool, named, mark, counts, time_ms }: TroubleEnd): TroubleResult {
  return {
    profile: task.card.profile.id,
    seed,
    pool,
    truth: task.trouble,
    named,
    isKindRight: mark.isKindRight,
    sizeError: mark.sizeError,
    isSizeWithin: mark.isSizeWithin,
    points: mark.points.kind + mark.points.size,
    tries: counts.tries,
    measurements: counts.measurements,
    time_ms,
  };
}
