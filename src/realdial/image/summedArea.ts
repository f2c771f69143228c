import type { GrayImage } from "./grayImage";

/**
 * Sums of brightness over any upright rectangle in four look-ups (F. Crow, Summed-area tables for texture mapping,
 * SIGGRAPH 1984). One can be refilled with pictures of the same size without asking for memory.
 */
export class SummedArea {
  private width = 0;
  private height = 0;
  private sums = new Uint32Array(0);

  /** Takes the sums of a picture. At most 16 million pixels, so that a sum fits 32 bits. */
  fill({ width, height, data }: GrayImage): void {
    const stride = width + 1;
    if (width !== this.width || height !== this.height) {
      this.width = width;
      this.height = height;
      this.sums = new Uint32Array(stride * (height + 1));
    }
    const { sums } = this;
    for (let row = 0, pixel = 0; row < height; row++) {
      let line = 0;
      let at = (row + 1) * stride + 1;
      for (let column = 0; column < width; column++, at++, pixel++) {
        line += data[pixel] as number;
        sums[at] = (sums[at - stride] as number) + line;
      }
    }
  }

  /**
   * Mean brightness of the pixels within a number of pixels of one, as far as they are in the picture.
   *
   * @param column,row - a pixel of the picture
   * @param reach - pixels each way, 0 or more
   */
  meanAround(column: number, row: number, reach: number): number {
    const left = Math.max(0, column - reach);
    const top = Math.max(0, row - reach);
    const right = Math.min(this.width, column + reach + 1);
    const bottom = Math.min(this.height, row + reach + 1);
    return this.sum(left, top, right, bottom) / ((right - left) * (bottom - top));
  }

  /** Sum of brightness of columns `left` to before `right`, rows `top` to before `bottom`, all inside the picture. */
  sum(left: number, top: number, right: number, bottom: number): number {
    const { sums } = this;
    const stride = this.width + 1;
    const upper = (sums[top * stride + right] as number) - (sums[top * stride + left] as number);
    const lower = (sums[bottom * stride + right] as number) - (sums[bottom * stride + left] as number);
    return lower - upper;
  }
}
