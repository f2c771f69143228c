/**
 * Where a dial was seen for sure: columns turned left, columns a ms, over how long that was measured (0: its speed is not
 * known), and when (ms).
 */
export interface Seen {
  readonly turned: number;
  readonly speed: number;
  readonly over: number;
  readonly at: number;
}

/** A hand speeds a dial up or down by at most so much, graduations a second in a second; to stop it takes no time at all. */
const ACCELERATION = 3000;
/** A hand turns no faster than this, graduations a second. */
const FASTEST = 800;
/** What is always left open, graduations. */
const OPEN = 0.6;

/** Where a dial can be after a time. */
export interface Prediction {
  /** Where it is if it goes on as it did, columns. */
  readonly turned: number;
  /** Between what it can be: stopped at once, or sped up, either way. */
  readonly least: number;
  readonly most: number;
  /** Speeds that it can have now, columns a ms: the least, the one it had, the most; and 0 where it can rest. */
  readonly speeds: readonly number[];
}

/**
 * Predicts from where a dial was seen last.
 *
 * @param graduation - columns
 */
export function predicted({ turned, speed, over, at }: Seen, now: number, graduation: number): Prediction {
  const time = Math.max(0, now - at);
  const gain = (ACCELERATION * graduation) / 1e6;
  const fastest = (FASTEST * graduation) / 1e3;
  // The speed is the mean over the time before: at its end it may have changed already.
  const change = gain * (time + over / 2);
  const farthest = (fastest + Math.abs(speed)) * time;
  const way = (over === 0 ? farthest : Math.min(gain * time * (time / 2 + over / 2), farthest)) + OPEN * graduation;
  const on = speed * time;
  return {
    turned: turned + on,
    least: turned + Math.min(0, on) - way,
    most: turned + Math.max(0, on) + way,
    speeds: [0, Math.max(-fastest, speed - change), speed, Math.min(fastest, speed + change)],
  };
}
