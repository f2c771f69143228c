/** A dial that stays within this, graduations, for as long as that, ms, is at rest. */
const WITHIN = 0.5;
const FOR_MS = 1000;
/** The largest standard deviation that readings within a rest can have: of two at its ends, graduations of 100 a turn. */
export const NOISIEST = WITHIN / Math.sqrt(2);

/** A dial at rest. */
export interface Rest {
  /** Mean of its readings, graduations. */
  readonly position: number;
  /** Standard deviation of single readings, graduations. */
  readonly noise: number;
}

/** Tells when a dial rests, and how quiet its readings are then. Mutable. */
export class RestNoise {
  private readings: { readonly at: number; readonly position: number }[] = [];

  /** Takes a reading, graduations, later than the last. @returns the rest, once it has lasted for a second */
  take(position: number, at: number): Rest | null {
    if (this.readings.some((one) => Math.abs(one.position - position) > WITHIN)) this.readings = [];
    this.readings.push({ at, position });
    if (at - (this.readings[0]?.at ?? at) < FOR_MS) return null;
    this.readings = this.readings.filter((one) => at - one.at <= FOR_MS);
    const count = this.readings.length;
    const mean = this.readings.reduce((sum, one) => sum + one.position, 0) / count;
    const square = this.readings.reduce((sum, one) => sum + (one.position - mean) ** 2, 0);
    return { position: mean, noise: Math.sqrt(square / Math.max(1, count - 1)) };
  }
}
