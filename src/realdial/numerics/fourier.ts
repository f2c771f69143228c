/**
 * Fast Fourier transforms of one length, in place (J. Cooley and J. Tukey 1965; radix 2). The transform is
 * X[k] = Σ x[n] e^(−2πi kn/N), the way back has the other sign and 1/N.
 */
export class Fourier {
  readonly length: number;
  private readonly cosines: Float64Array;
  private readonly sines: Float64Array;
  private readonly reversed: Uint32Array;

  /** @param length - a power of two, at least 2 */
  constructor(length: number) {
    const bits = Math.log2(length);
    if (!Number.isInteger(bits) || bits < 1) throw new RangeError(`${length} is no power of two`);
    this.length = length;
    this.cosines = Float64Array.from({ length: length / 2 }, (_, k) => Math.cos((2 * Math.PI * k) / length));
    this.sines = Float64Array.from({ length: length / 2 }, (_, k) => -Math.sin((2 * Math.PI * k) / length));
    this.reversed = new Uint32Array(length);
    for (let k = 1; k < length; k++) {
      this.reversed[k] = ((this.reversed[k >> 1] as number) >> 1) | ((k & 1) << (bits - 1));
    }
  }

  /** Transforms `real + i imaginary` in place. */
  forward(real: Float64Array, imaginary: Float64Array): void {
    this.reorder(real);
    this.reorder(imaginary);
    for (let half = 1; half < this.length; half *= 2) this.combine(real, imaginary, half);
  }

  /** Transforms back in place. */
  backward(real: Float64Array, imaginary: Float64Array): void {
    this.forward(imaginary, real);
    for (let k = 0; k < this.length; k++) {
      real[k] = (real[k] as number) / this.length;
      imaginary[k] = (imaginary[k] as number) / this.length;
    }
  }

  private reorder(values: Float64Array): void {
    for (let k = 0; k < this.length; k++) {
      const other = this.reversed[k] as number;
      if (other <= k) continue;
      const held = values[k] as number;
      values[k] = values[other] as number;
      values[other] = held;
    }
  }

  /** Joins transforms of `half` values each to those of twice as many. */
  private combine(real: Float64Array, imaginary: Float64Array, half: number): void {
    const stride = this.length / (2 * half);
    for (let start = 0; start < this.length; start += 2 * half) {
      for (let k = 0; k < half; k++) {
        const cosine = this.cosines[k * stride] as number;
        const sine = this.sines[k * stride] as number;
        const i = start + k;
        const j = i + half;
        const re = (real[j] as number) * cosine - (imaginary[j] as number) * sine;
        const im = (real[j] as number) * sine + (imaginary[j] as number) * cosine;
        real[j] = (real[i] as number) - re;
        imaginary[j] = (imaginary[i] as number) - im;
        real[i] = (real[i] as number) + re;
        imaginary[i] = (imaginary[i] as number) + im;
      }
    }
  }
}
