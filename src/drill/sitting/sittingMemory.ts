import type { Milliseconds } from "../../lock/dial";

/** A pause, or a page that was loaded anew in the middle of a sitting. */
export interface SittingBreak {
  readonly kind: "pause" | "reload";
  /** Working time when it began. */
  readonly at_ms: Milliseconds;
  /**
   * From its beginning until the candidate went on, by the clock of the sitting; never negative. Null where it is not
   * known: version 0.2.0 counted breaks only, and such a one stands at working time 0.
   */
  readonly length_ms: Milliseconds | null;
}

/** A break that has not ended. */
interface OpenBreak extends Omit<SittingBreak, "length_ms"> {
  readonly since_ms: Milliseconds;
}

/** How a sitting ended, or null while it goes on. */
export type SittingEnd = "finished" | "time" | "broken-off";

/** What the chart remembers. */
export interface SittingContext {
  /** Tries done: the next one is planned at this index. */
  readonly triesDone: number;
  /** Whether the hand has moved the dial in the try under way. */
  readonly isTryBegun: boolean;
  /** How often the try under way was broken off because its turns came to be in doubt, and begun again. */
  readonly begunAgain: number;
  readonly answersGiven: number;
  /** Tries lost to a reload. */
  readonly triesLost: number;
  readonly interruptions: number;
  readonly pauses: number;
  /** Every pause and reload that is over, in order. */
  readonly breaks: readonly SittingBreak[];
  /** The one that is not over, or null. */
  readonly openBreak: OpenBreak | null;
  /** Working time up to the last stop of the clock. */
  readonly worked_ms: Milliseconds;
  /** Since when the clock runs, or null while it stands. */
  readonly runningSince_ms: Milliseconds | null;
  readonly ended: SittingEnd | null;
}

/** What a sitting remembers before it has begun; an earlier version persisted less. */
export const FRESH: SittingContext = {
  triesDone: 0,
  isTryBegun: false,
  begunAgain: 0,
  answersGiven: 0,
  triesLost: 0,
  interruptions: 0,
  pauses: 0,
  breaks: [],
  openBreak: null,
  worked_ms: 0,
  runningSince_ms: null,
  ended: null,
};

/** Working time so far; a clock set back in between counts as no time. */
export function workedTime({ worked_ms, runningSince_ms }: SittingContext, now_ms: Milliseconds): Milliseconds {
  return worked_ms + (runningSince_ms === null ? 0 : Math.max(0, now_ms - runningSince_ms));
}

/** The clock is stopped. */
export const stopped = (context: SittingContext, now_ms: Milliseconds) => ({
  worked_ms: workedTime(context, now_ms),
  runningSince_ms: null,
});

/** The breaks once the open one is over. */
export const breaksClosed = ({ breaks, openBreak }: SittingContext, now_ms: Milliseconds) => {
  if (openBreak === null) return { breaks };
  const { since_ms, ...begun } = openBreak;
  return { breaks: [...breaks, { ...begun, length_ms: Math.max(0, now_ms - since_ms) }], openBreak: null };
};

/** A break begins; one that was open is over. */
export const breakOpened = (kind: SittingBreak["kind"], context: SittingContext, now_ms: Milliseconds) => ({
  ...breaksClosed(context, now_ms),
  openBreak: { kind, at_ms: workedTime(context, now_ms), since_ms: now_ms },
});

/** The sitting is over. */
export const ended = (context: SittingContext, now_ms: Milliseconds, how: SittingEnd) => ({
  ...stopped(context, now_ms),
  ...breaksClosed(context, now_ms),
  ended: how,
});
