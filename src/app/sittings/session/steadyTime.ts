import type { Milliseconds } from "../../../lock/dial";

/** Where times are read: the clock on the wall, which anybody may set, and one that only goes on. */
export interface TimeSources {
  /** Milliseconds since 1970. */
  readonly wall: () => Milliseconds;
  /** Milliseconds since any moment. */
  readonly steady: () => Milliseconds;
}

/** A wall clock is trimmed by little all the time; more than this is a jump, milliseconds. */
const JUMP: Milliseconds = 2000;

/** A page that was suspended for less is not worth a word, milliseconds. */
const SUSPENDED: Milliseconds = 10_000;

/**
 * The time that a sitting goes by: it begins as the clock on the wall and then goes on steadily, whatever becomes of
 * that. From one page to the next only the wall can tell; there it never goes back.
 */
export class SteadyTime {
  private readonly sources: TimeSources;
  private origin: Milliseconds;
  private drift: Milliseconds = 0;

  constructor(sources: TimeSources) {
    this.sources = sources;
    this.origin = sources.wall() - sources.steady();
  }

  /** Begins again as the clock on the wall: a machine that slept has left the steady one behind. */
  begin(): void {
    this.origin = this.sources.wall() - this.sources.steady();
    this.drift = 0;
  }

  now(): Milliseconds {
    return this.origin + this.sources.steady();
  }

  wall(): Milliseconds {
    return this.sources.wall();
  }

  /** How far the wall clock has jumped since this was last asked; 0 where it has not, negative where it was set back. */
  takeJump(): Milliseconds {
    const drift = this.wall() - this.now();
    const by = drift - this.drift;
    if (Math.abs(by) < JUMP) return 0;
    this.drift = drift;
    return Math.round(by);
  }

  /**
   * Takes in a jump that may have been a machine asleep: in some browsers the steady clock stops with it.
   *
   * A clock that was set back and is put right again jumps forward too; that much is never taken in.
   *
   * @param jump - as `takeJump` gave it
   * @returns how much time was taken in, 0 for none
   */
  catchUp(jump: Milliseconds): Milliseconds {
    const missed = Math.min(jump, this.drift);
    if (missed <= SUSPENDED) return 0;
    this.origin += missed;
    this.drift -= missed;
    return missed;
  }

  /**
   * Goes on from the time of a page before this one.
   *
   * @param seen_ms - last moment of that page, by its own steady time
   * @param wall_ms - the same moment by the wall
   * @returns how far the wall clock was set back in between, negative; else 0
   */
  goOnFrom(seen_ms: Milliseconds, wall_ms: Milliseconds): Milliseconds {
    const away = this.wall() - wall_ms;
    this.origin = seen_ms + Math.max(0, away) - this.sources.steady();
    this.drift = this.wall() - this.now();
    return away < -JUMP ? Math.round(away) : 0;
  }
}

/** The time of this page. */
export const pageTime = new SteadyTime({ wall: () => Date.now(), steady: () => performance.now() });
