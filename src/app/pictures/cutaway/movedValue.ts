/** A number that takes its time from where it is to where it is to be, faster and faster as what falls. */
export class MovedValue {
  private value: number;
  private frame = 0;
  private readonly show: () => void;

  /** @param show - hears of every change */
  constructor(value: number, show: () => void) {
    this.value = value;
    this.show = show;
  }

  get now(): number {
    return this.value;
  }

  /** @param duration_ms - 0 goes there at once */
  goTo(target: number, duration_ms: number): void {
    this.stop();
    const from = this.value;
    if (duration_ms === 0 || from === target) this.be(target);
    else {
      const started = performance.now();
      const step = (at: number) => {
        const part = Math.min(1, Math.max(0, (at - started) / duration_ms));
        this.be(from + (target - from) * part * part);
        if (part < 1) this.frame = requestAnimationFrame(step);
      };
      this.frame = requestAnimationFrame(step);
    }
  }

  /** Stays where it is. */
  stop(): void {
    cancelAnimationFrame(this.frame);
  }

  private be(value: number): void {
    if (value === this.value) return;
    this.value = value;
    this.show();
  }
}
