import type { Attempt } from "../../dialing/attempt";
import { idealMotion } from "../../dialing/idealMotion";
import type { Graduations, Milliseconds } from "../../lock/dial";

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

/** The best attempt at each combination of this visit: opened without a fault, in the shortest time. */
export class BestAttempts {
  private readonly best = new Map<string, { readonly time_ms: Milliseconds; readonly stops: readonly Graduations[] }>();

  /** Takes in an attempt that opened without a fault. */
  note(attempt: Attempt, time_ms: Milliseconds): void {
    const before = this.best.get(keyOf(attempt));
    if (before === undefined || time_ms < before.time_ms)
      this.best.set(keyOf(attempt), { time_ms, stops: stopsOf(attempt) });
  }

  /** Stops of the best attempt at the same lock and combination, or null. */
  stops(attempt: Attempt): readonly Graduations[] | null {
    return this.best.get(keyOf(attempt))?.stops ?? null;
  }
}

const keyOf = ({ profile, combination }: Attempt) => `${profile.id} ${combination.join("-")}`;

/** The path of a ghost beside an attempt that started at `from`, or null where there is none. */
export function ghostPath(
  ghost: Ghost,
  attempt: Attempt,
  from: Graduations,
  best: BestAttempts,
): readonly Graduations[] | null {
  if (ghost === "none") return null;
  if (ghost === "best") return best.stops(attempt);
  return idealMotion(attempt.profile, attempt.combination, attempt.reader.legs[0]?.from ?? from);
}
