/*
 * An independent judge of the wheel pack, for motions in decimals: discs that follow each other step by step, the hand
 * moving one small step at a time. Everything is counted in whole steps, so nothing can be rounded. It shares no code
 * and no formula with src/lock: no closed form, no next mark, no arithmetic of positions; only "push what you touch".
 */

/** A lock as the judge is told of it; every size in whole steps. */
export interface StepwiseLock {
  readonly turn: number;
  /** Wheel 1 first. */
  readonly freePlay: readonly number[];
  readonly gateTolerance: readonly number[];
  /** Which way each number is dialed: +1 left, -1 right. */
  readonly ways: readonly (1 | -1)[];
  readonly combination: readonly number[];
  readonly engageAt: number;
  readonly travel: number;
  readonly drawWay: 1 | -1;
}

const around = (count: number, turn: number) => ((count % turn) + turn) % turn;

export class StepwisePack {
  dial: number;
  /** Wheel 1 first. */
  readonly wheels: number[];
  opened = false;
  /** Steps of the draw made since the nose dropped, or null while it rides on the cam. */
  drawn: number | null = null;
  private readonly lock: StepwiseLock;

  /** At rest, every wheel lying against its driver from the left. */
  constructor(lock: StepwiseLock, dial: number) {
    this.lock = lock;
    this.dial = dial;
    this.wheels = lock.combination.map(() => dial);
  }

  /** The hand moves by so many whole steps, one after another. */
  turnBy(steps: number): void {
    const way = steps < 0 ? -1 : 1;
    for (let made = 0; made < Math.abs(steps); made++) this.step(way);
  }

  /** How far the gate of each wheel is off the fence, either way. */
  gapsOff(): number[] {
    const { turn, combination, ways, freePlay } = this.lock;
    return this.wheels.map((wheel, k) => {
      // A wheel dialed right hangs at the far end of every play between the dial and it.
      let hangs = 0;
      for (let j = k; j < freePlay.length && ways[k] === -1; j++) hangs += freePlay[j] ?? 0;
      const off = around(wheel - (combination[k] ?? 0) - hangs, turn);
      return Math.min(off, turn - off);
    });
  }

  private step(way: 1 | -1): void {
    const { travel, drawWay } = this.lock;
    if (this.drawn === travel && way === drawWay) return;
    this.drawn = this.drawnAfter(way);
    this.dial += way;
    this.push(way);
    if (this.drawn === null && way === drawWay && this.isNoseOverGates()) this.drawn = 0;
    if (this.drawn === travel) this.opened = true;
  }

  /** A nose that is down goes with the cam, and is lifted where the cam turns back past the place it fell. */
  private drawnAfter(way: 1 | -1): number | null {
    const drawn = this.drawn === null ? -1 : this.drawn + way * this.lock.drawWay;
    return drawn < 0 ? null : drawn;
  }

  /** Each disc pushes the next one out where they touch; none is pushed by more than the one step. */
  private push(way: 1 | -1): void {
    let driver = this.dial;
    for (let k = this.wheels.length - 1; k >= 0; k--) {
      const wheel = this.wheels[k] ?? 0;
      const lead = wheel - driver;
      const isPushed = way === 1 ? lead < 0 : lead > (this.lock.freePlay[k] ?? 0);
      if (!isPushed) return;
      this.wheels[k] = wheel + way;
      driver = wheel + way;
    }
  }

  private isNoseOverGates(): boolean {
    const { turn, engageAt, gateTolerance } = this.lock;
    if (around(this.dial - engageAt, turn) !== 0) return false;
    return this.gapsOff().every((gap, k) => gap <= (gateTolerance[k] ?? 0));
  }
}
