import type { Milliseconds } from "../../lock/dial";
import { Store } from "../parts/page/store";

/** Work whose time is taken by a clock that only goes on: to set the clock on the wall changes nothing. */
export class TimedWork extends Store {
  /** When it began, by the steady clock, milliseconds; null before. Whoever watches the work sets it. */
  begunAt: Milliseconds | null = null;

  /** Time worked so far. @param steady_ms - now, by the steady clock */
  workedBy(steady_ms: Milliseconds): Milliseconds {
    return this.begunAt === null ? 0 : Math.max(0, steady_ms - this.begunAt);
  }
}
