import { unreadable } from "../motionError";

/** A step too large for 16 bits stands in a list of its own, and this in its place. */
const ESCAPE = -32768;
const LARGEST_STEP = 32767;
/** What the numbers of a trace are packed into, in order. */
export class Packer {
  private readonly numbers: number[] = [];
  private readonly steps: number[] = [];

  /** Keeps a number whole. */
  number(value: number): void {
    this.numbers.push(value);
  }

  /** Keeps whole numbers as their steps. */
  row(values: readonly number[]): void {
    let before = 0;
    for (const value of values) {
      const step = value - before;
      before = value;
      const isSmall = Math.abs(step) <= LARGEST_STEP;
      this.steps.push(isSmall ? step : ESCAPE);
      if (!isSmall) this.numbers.push(step);
    }
  }

  /** Low bytes apart from high ones: high ones are nearly all alike, and pack to almost nothing. */
  bytes(): Uint8Array {
    const { numbers, steps } = this;
    const bytes = new Uint8Array(8 + 8 * numbers.length + 2 * steps.length);
    const view = new DataView(bytes.buffer);
    view.setUint32(0, numbers.length, true);
    view.setUint32(4, steps.length, true);
    numbers.forEach((value, i) => {
      view.setFloat64(8 + 8 * i, value, true);
    });
    const low = 8 + 8 * numbers.length;
    steps.forEach((step, i) => {
      bytes[low + i] = step & 255;
      bytes[low + steps.length + i] = (step >> 8) & 255;
    });
    return bytes;
  }
}

/** Takes out again what a `Packer` packed. */
export class Unpacker {
  private readonly view: DataView;
  private readonly numberCount: number;
  private readonly stepCount: number;
  private nextNumber = 0;
  private nextStep = 0;

  constructor(bytes: Uint8Array) {
    if (bytes.length < 8) throw unreadable("trace-too-short");
    this.view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    this.numberCount = this.view.getUint32(0, true);
    this.stepCount = this.view.getUint32(4, true);
    if (bytes.length !== 8 + 8 * this.numberCount + 2 * this.stepCount) throw unreadable("trace-length");
  }

  number(): number {
    if (this.nextNumber >= this.numberCount) throw unreadable("trace-number-missing");
    const value = this.view.getFloat64(8 + 8 * this.nextNumber++, true);
    if (!Number.isFinite(value)) throw unreadable("trace-number-none");
    return value;
  }

  /** A count of things that are packed here. */
  count(): number {
    const value = this.number();
    if (!(Number.isInteger(value) && value >= 0 && value <= this.stepCount + this.numberCount)) {
      throw unreadable("trace-length-none");
    }
    return value;
  }

  row(length: number): number[] {
    if (this.nextStep + length > this.stepCount) throw unreadable("trace-move-missing");
    let value = 0;
    return Array.from({ length }, () => {
      value += this.step();
      return value;
    });
  }

  /** Refuses what is left over: packing again must give the same bytes. */
  end(): void {
    if (this.nextNumber !== this.numberCount || this.nextStep !== this.stepCount) throw unreadable("trace-too-long");
  }

  private step(): number {
    const at = 8 + 8 * this.numberCount + this.nextStep++;
    const step = this.view.getUint8(at) | (this.view.getInt8(at + this.stepCount) << 8);
    return step === ESCAPE ? this.number() : step;
  }
}
