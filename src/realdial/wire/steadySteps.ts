/**
 * Holds a count still that flickers by one: an encoder that stands on the edge between two steps goes to and fro, and a dial
 * that is never still never rests. In the direction it runs the count is taken as it is; a turn back counts from the second
 * step on, and then in full. Mutable.
 */
export class SteadySteps {
  private steady = 0;
  private direction = 0;

  /** @param steps - where the count is @returns where it is taken to be: the same, or one step farther on */
  take(steps: number): number {
    const by = steps - this.steady;
    if (by * this.direction < 0 && Math.abs(by) < 2) return this.steady;
    if (by !== 0) this.direction = Math.sign(by);
    this.steady = steps;
    return steps;
  }
}
