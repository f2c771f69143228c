import type { Sighting } from "../../../src/realdial/motion/sighting";
import { type FilmFrame, filmed, type Shooting } from "./film";

/** Errors of readings, graduations. */
export interface Errors {
  readonly count: number;
  readonly mean: number;
  readonly sd: number;
  readonly largest: number;
}

/** What a follower made of a film. */
export interface Judged {
  readonly frames: number;
  /** Below 0.02 turns/s while any of the frame's rows was exposed. */
  readonly rest: Errors;
  /** Other frames to 0.7 turns/s, when the middle row was exposed. */
  readonly slow: Errors;
  /** Those of them whose middle row alone was at rest: a turn began or ended within the frame. */
  readonly edge: Errors;
  readonly fast: Errors;
  /** Frames without a reading, by their reason. */
  readonly without: Readonly<Record<string, number>>;
  /** Readings a quarter of a turn and more off, though nothing was said. */
  readonly miscounted: number;
  /** Frames at which turns were in doubt. */
  readonly doubted: number;
  /** Time of the processor for a frame after the first, and for the first, ms. */
  readonly mean_ms: number;
  readonly first_ms: number;
}

/** Follows a film. @param follow - is given a picture and its time */
export function judged(shooting: Shooting, follow: (frame: FilmFrame) => Sighting): Judged {
  const { graduations } = shooting;
  const judge = new Judge(graduations);
  for (const frame of filmed(shooting)) {
    const before = process.cpuUsage();
    const sighting = follow(frame);
    const { user, system } = process.cpuUsage(before);
    judge.take(frame, sighting, (user + system) / 1000);
  }
  return judge.verdict();
}

class Judge {
  private readonly graduations: number;
  private readonly rest: number[] = [];
  private readonly slow: number[] = [];
  private readonly edge: number[] = [];
  private readonly fast: number[] = [];
  private readonly without: Record<string, number> = {};
  private readonly times: number[] = [];
  private miscounted = 0;
  private doubted = 0;
  /** The first reading's turn is any. */
  private whole: number | null = null;

  constructor(graduations: number) {
    this.graduations = graduations;
  }

  take({ truth }: FilmFrame, { position, reason, turnsInDoubt }: Sighting, took_ms: number): void {
    this.times.push(took_ms);
    if (turnsInDoubt) this.doubted++;
    if (position === null) {
      this.without[reason] = (this.without[reason] ?? 0) + 1;
      return;
    }
    const off = position - truth.position;
    this.whole ??= this.graduations * Math.round(off / this.graduations);
    const error = off - this.whole;
    if (Math.abs(error) < this.graduations / 4) this.note(error, truth);
    else if (!turnsInDoubt) this.miscounted++;
  }

  verdict(): Judged {
    const [first_ms = 0, ...later] = this.times;
    return {
      frames: this.times.length,
      rest: errorsOf(this.rest),
      slow: errorsOf(this.slow),
      edge: errorsOf(this.edge),
      fast: errorsOf(this.fast),
      without: this.without,
      miscounted: this.miscounted,
      doubted: this.doubted,
      mean_ms: later.reduce((sum, one) => sum + one, 0) / Math.max(1, later.length),
      first_ms,
    };
  }

  private note(error: number, { speed, fastest }: FilmFrame["truth"]): void {
    const resting = 0.02 * this.graduations;
    if (fastest < resting) this.rest.push(error);
    else if (Math.abs(speed) < 0.7 * this.graduations) this.slow.push(error);
    else this.fast.push(error);
    if (fastest >= resting && Math.abs(speed) < resting) this.edge.push(error);
  }
}

function errorsOf(errors: readonly number[]): Errors {
  const count = Math.max(1, errors.length);
  const mean = errors.reduce((sum, one) => sum + one, 0) / count;
  const sd = Math.sqrt(errors.reduce((sum, one) => sum + (one - mean) ** 2, 0) / count);
  return { count: errors.length, mean, sd, largest: Math.max(0, ...errors.map(Math.abs)) };
}
