import type { Attempt } from "../../../dialing/attempt";
import { idealMotion } from "../../../dialing/idealMotion";
import type { Graduations, Milliseconds } from "../../../lock/dial";
import type { Profile } from "../../../lock/profile";
import type { Hand } from "../../../realdial/sources/handOf";

/** A path to compare with: none, the perfect hand's, or one's own best. */
export type Ghost = "none" | "ideal" | "best";

/** Every ghost there is; none is the default. */
export const GHOSTS: readonly [Ghost, ...Ghost[]] = ["none", "ideal", "best"];

/** Stops of an attempt, unwrapped graduations, its start first. */
function stopsOf(attempt: Attempt): Graduations[] {
  const { legs, runs } = attempt.reader;
  const first = legs[0];
  if (first === undefined) return [];
  const end = runs[legs.at(-1)?.lastRun ?? 0]?.to ?? first.to;
  return [first.from, ...legs.slice(0, -1).map((leg) => leg.to), end];
}

/** An attempt to be matched. */
interface Best {
  readonly time_ms: Milliseconds;
  readonly stops: readonly Graduations[];
}

const keyOf = ({ combination }: Attempt, hand: Hand) => `${hand} ${combination.join("-")}`;

/** The best attempt at each lock and combination of this visit, with each hand: opened without a fault, in the shortest time. */
export class BestAttempts {
  private readonly best = new WeakMap<Profile, Map<string, Best>>();

  /** Takes in an attempt that opened without a fault. */
  note(attempt: Attempt, time_ms: Milliseconds, hand: Hand): void {
    const known = this.best.get(attempt.profile) ?? new Map<string, Best>();
    this.best.set(attempt.profile, known);
    const key = keyOf(attempt, hand);
    const before = known.get(key);
    if (before === undefined || time_ms < before.time_ms) known.set(key, { time_ms, stops: stopsOf(attempt) });
  }

  /** Stops of the best attempt at the same lock and combination with the same hand, or null. */
  stops(attempt: Attempt, hand: Hand): readonly Graduations[] | null {
    return this.best.get(attempt.profile)?.get(keyOf(attempt, hand))?.stops ?? null;
  }
}

/** The path of a ghost beside an attempt that started at `from`, or null where there is none. */
export function ghostPath(
  ghost: Ghost,
  attempt: Attempt,
  from: Graduations,
  best: BestAttempts,
  hand: Hand,
): readonly Graduations[] | null {
  if (ghost === "none") return null;
  if (ghost === "best") return best.stops(attempt, hand);
  return idealMotion(attempt.profile, attempt.combination, attempt.reader.legs[0]?.from ?? from);
}
