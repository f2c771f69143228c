import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { gradientAt } from "../../../src/realdial/image/gradient";
import { type GrayImage, isInside, sampleAt } from "../../../src/realdial/image/grayImage";
import { SummedArea } from "../../../src/realdial/image/summedArea";

/** A picture whose brightness is a plane, exact where it needs no rounding. */
const slope = (width: number, height: number, right: number, down: number): GrayImage => ({
  width,
  height,
  data: Uint8Array.from({ length: width * height }, (_, k) => 10 + right * (k % width) + down * Math.floor(k / width)),
});

const images = fc
  .tuple(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 1, max: 9 }))
  .chain(([width, height]) =>
    fc
      .uint8Array({ minLength: width * height, maxLength: width * height })
      .map((data): GrayImage => ({ width, height, data })),
  );

describe("brightness between pixels", () => {
  test.each([
    [0, 0, 10],
    [2, 1, 21],
    [2.5, 1, 23.5],
    [1.25, 1.5, 10 + 6.25 + 1.5],
  ])("at (%d, %d) of a plane lies on the plane", (x, y, level) => {
    expect(sampleAt(slope(6, 4, 5, 1), x, y)).toBeCloseTo(level, 12);
  });

  test.each([
    [-0.1, 1],
    [5, 1],
    [1, 3],
    [Number.NaN, 1],
  ])("there is none at (%d, %d)", (x, y) => {
    expect(isInside(slope(6, 4, 5, 1), x, y)).toBe(false);
    expect(sampleAt(slope(6, 4, 5, 1), x, y)).toBeNaN();
  });
});

describe("a gradient", () => {
  test("of a plane is the plane's", () => {
    const gradient = { x: 0, y: 0 };
    expect(gradientAt(slope(8, 8, 3, 7), 3.3, 4.6, gradient)).toBeCloseTo(10 + 9.9 + 32.2, 10);
    expect(gradient.x).toBeCloseTo(3, 10);
    expect(gradient.y).toBeCloseTo(7, 10);
  });

  test("is not taken at the picture's edge", () => {
    const gradient = { x: -1, y: -1 };
    expect(gradientAt(slope(8, 8, 3, 7), 0.5, 4, gradient)).toBeNaN();
    expect(gradientAt(slope(8, 8, 3, 7), 4, 6, gradient)).toBeNaN();
    expect(gradient).toEqual({ x: -1, y: -1 });
  });
});

test("sums over rectangles are those of the pixels, also when filled again", () => {
  const areas = new SummedArea();
  fc.assert(
    fc.property(images, fc.infiniteStream(fc.nat()), (image, numbers) => {
      const next = (limit: number) => (numbers.next().value as number) % limit;
      areas.fill(image);
      const [column, row, reach] = [next(image.width), next(image.height), next(5)];
      const pixels = Array.from(image.data).filter((_, k) => {
        const [x, y] = [k % image.width, Math.floor(k / image.width)];
        return Math.abs(x - column) <= reach && Math.abs(y - row) <= reach;
      });
      const mean = pixels.reduce((sum, level) => sum + level, 0) / pixels.length;
      expect(areas.meanAround(column, row, reach)).toBeCloseTo(mean, 10);
    }),
  );
});
