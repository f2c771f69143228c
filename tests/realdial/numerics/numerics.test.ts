import fc from "fast-check";
import { Matrix, solve as solveByLibrary } from "ml-matrix";
import { describe, expect, test } from "vitest";
import { Fourier } from "../../../src/realdial/numerics/fourier";
import { homographyThrough, inverse, mapped, type Point, product } from "../../../src/realdial/numerics/homography";
import { LeastSquares } from "../../../src/realdial/numerics/leastSquares";
import { solve } from "../../../src/realdial/numerics/linearSystem";

const value = fc.integer({ min: -1000, max: 1000 }).map((k) => k / 100);
const values = (length: number) => fc.array(value, { minLength: length, maxLength: length });

/** Expects two lists to agree to a share of their largest value. */
function expectClose(actual: ArrayLike<number>, expected: ArrayLike<number>, share = 1e-8): void {
  const scale = Math.max(1, ...Array.from(expected, Math.abs));
  Array.from(expected).forEach((one, k) => {
    expect(Math.abs((actual[k] as number) - one) / scale).toBeLessThan(share);
  });
}

describe("a linear system", () => {
  test("has the solution that a library finds", () => {
    const systems = fc.integer({ min: 1, max: 8 }).chain((n) => fc.tuple(values(n * n), values(n)));
    fc.assert(
      fc.property(systems, ([entries, right]) => {
        const n = right.length;
        const rows = Array.from({ length: n }, (_, k) => entries.slice(k * n, (k + 1) * n));
        const matrix = new Matrix(rows);
        const solution = Float64Array.from(right);
        const isSolved = solve(Float64Array.from(entries), solution);
        fc.pre(isSolved);
        const product = matrix.mmul(Matrix.columnVector(Array.from(solution)));
        const size = Math.max(1, ...Array.from(solution, Math.abs));
        expectClose(
          product.to1DArray().map((one) => one / size),
          right.map((one) => one / size),
        );
        if (size < 1e4) expectClose(solution, solveByLibrary(matrix, Matrix.columnVector(right)).to1DArray(), 1e-6);
      }),
    );
  });

  test.each([
    ["two rows alike", [1, 2, 1, 2]],
    ["a column of zeros", [0, 3, 0, 4]],
    ["nothing", [0, 0, 0, 0]],
    ["no numbers", [Number.NaN, 1, 1, 1]],
  ])("with %s has no solution", (_, entries) => {
    expect(solve(Float64Array.from(entries), Float64Array.of(1, 1))).toBe(false);
  });

  test("whose first pivot is 0 is solved", () => {
    const right = Float64Array.of(3, 5);
    expect(solve(Float64Array.of(0, 1, 1, 1), right)).toBe(true);
    expectClose(right, [2, 3]);
  });
});

test("least squares are those of a library", () => {
  const problems = fc.tuple(
    values(8 * 3),
    values(8),
    fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 8, maxLength: 8 }),
  );
  fc.assert(
    fc.property(problems, ([entries, right, weights]) => {
      const fit = new LeastSquares(3);
      const rows = right.map((_, k) => entries.slice(3 * k, 3 * k + 3));
      for (const [k, row] of rows.entries()) fit.add(row, right[k] as number, weights[k]);
      const solution = new Float64Array(3);
      fc.pre(fit.solveInto(solution) && Math.max(...Array.from(solution, Math.abs)) < 100);
      const roots = weights.map(Math.sqrt);
      const weighed = new Matrix(rows.map((row, k) => row.map((one) => one * (roots[k] as number))));
      const wanted = Matrix.columnVector(right.map((one, k) => one * (roots[k] as number)));
      expectClose(solution, solveByLibrary(weighed, wanted, true).to1DArray(), 1e-6);
    }),
  );
});

describe("a perspective map", () => {
  const h = Float64Array.of(1.2, 0.1, 30, -0.2, 0.9, 12, 0.001, -0.0005, 1);
  const grid: Point[] = Array.from({ length: 12 }, (_, k) => ({
    x: 40 * (k % 4) - 50,
    y: 35 * Math.floor(k / 4) - 60,
  }));
  const pictured = grid.map(({ x, y }) => mapped(h, x, y));

  test.each([4, 5, 12])("is found from %d points", (count) => {
    const chosen = [0, 3, 8, 11, 5, 6, 1, 2, 4, 7, 9, 10].slice(0, count);
    const found = homographyThrough(
      chosen.map((k) => grid[k] as Point),
      chosen.map((k) => pictured[k] as Point),
    );
    for (const [k, { x, y }] of grid.entries()) {
      const there = mapped(found as Float64Array, x, y);
      expect(there.x).toBeCloseTo((pictured[k] as Point).x, 7);
      expect(there.y).toBeCloseTo((pictured[k] as Point).y, 7);
    }
  });

  test("and its inverse undo each other", () => {
    const there = mapped(product(inverse(h), h), 17, -23);
    expect(there.x).toBeCloseTo(17, 9);
    expect(there.y).toBeCloseTo(-23, 9);
  });

  test("is not found where four points lie on a line, or all on one spot", () => {
    const line = [0, 1, 2, 3].map((x) => ({ x, y: 2 * x }));
    const spot = line.map(() => ({ x: 3, y: 4 }));
    expect(homographyThrough(line, pictured.slice(0, 4))).toBeNull();
    expect(homographyThrough(spot, pictured.slice(0, 4))).toBeNull();
  });
});

describe("a Fourier transform", () => {
  test("is the sum that defines it", () => {
    fc.assert(
      fc.property(values(16), values(16), (real, imaginary) => {
        const [re, im] = [Float64Array.from(real), Float64Array.from(imaginary)];
        new Fourier(16).forward(re, im);
        for (let k = 0; k < 16; k++) {
          const turn = (n: number) => (-2 * Math.PI * k * n) / 16;
          const sum = (one: (n: number) => number) => real.reduce((total, _, n) => total + one(n), 0);
          const [x, y] = [(n: number) => real[n] as number, (n: number) => imaginary[n] as number];
          expect(re[k]).toBeCloseTo(
            sum((n) => x(n) * Math.cos(turn(n)) - y(n) * Math.sin(turn(n))),
            9,
          );
          expect(im[k]).toBeCloseTo(
            sum((n) => x(n) * Math.sin(turn(n)) + y(n) * Math.cos(turn(n))),
            9,
          );
        }
      }),
    );
  });

  test.each([2, 8, 1024])("of length %d comes back", (length) => {
    const real = Float64Array.from({ length }, (_, k) => Math.sin(k * k));
    const [re, im] = [real.slice(), real.map((one) => 1 - one)];
    const fourier = new Fourier(length);
    fourier.forward(re, im);
    fourier.backward(re, im);
    expectClose(re, real, 1e-12);
  });

  test.each([0, 1, 3, 1.5])("has no length of %d", (length) => {
    expect(() => new Fourier(length)).toThrow(RangeError);
  });
});
