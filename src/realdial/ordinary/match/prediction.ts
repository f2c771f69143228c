/** Where a dial was seen for sure: columns turned left, columns a ms, and when (ms). */
export interface Seen {
  readonly turned: number;
  readonly speed: number;
  readonly at: number;
}

/** A hand speeds a dial up or down by at most so much, graduations a second in a second. */
const ACCELERATION = 3000;
/** A hand turns no faster than this, graduations a second. */
const FASTEST = 800;
/** What is always left open, graduations. */
const OPEN = 0.6;

/** Where a dial can be after a time. */
export interface Prediction {
  readonly turned: number;
  /** How far it can be from there, columns. */
  readonly reach: number;
  /** Fastest and slowest that it can turn now, columns a ms. */
  readonly speeds: readonly [number, number, number];
}

/**
 * Predicts from where a dial was seen last.
 *
 * @param graduation - columns
 */
export function predicted({ turned, speed, at }: Seen, now: number, graduation: number): Prediction {
  const time = Math.max(0, now - at);
  const change = (ACCELERATION * graduation * time) / 1e6;
  const fastest = (FASTEST * graduation) / 1e3;
  const way = Math.min(0.5 * change * time, (fastest + Math.abs(speed)) * time);
  return {
    turned: turned + speed * time,
    reach: way + OPEN * graduation,
    speeds: [Math.max(-fastest, speed - change), speed, Math.min(fastest, speed + change)],
  };
}
