import { AROUND } from "../pose/ring";
import { CELLS, ROWS } from "./strip";

/**
 * How far each cell of a strip lies left of where a pose says, columns, from what the pieces of the ring say: two bands of
 * rows, which differ on a conical face; between their middles it goes over evenly.
 */
export function bentThrough(pieces: Float64Array): Float32Array {
  const half = pieces.length / 2;
  const inner = aroundThrough(pieces.subarray(0, half));
  const outer = aroundThrough(pieces.subarray(half));
  return Float32Array.from({ length: CELLS }, (_, cell) => {
    const row = Math.floor(cell / AROUND);
    const part = Math.min(1, Math.max(0, (row - (ROWS / 4 - 0.5)) / (ROWS / 2)));
    const column = cell % AROUND;
    return (inner[column] as number) * (1 - part) + (outer[column] as number) * part;
  });
}

function aroundThrough(pieces: Float64Array): Float32Array {
  const length = AROUND / pieces.length;
  return Float32Array.from({ length: AROUND }, (_, i) => {
    const at = (i + 0.5) / length - 0.5;
    const whole = Math.floor(at);
    const one = pieces[(whole + pieces.length) % pieces.length] as number;
    const next = pieces[(whole + 1) % pieces.length] as number;
    return one + (next - one) * (at - whole);
  });
}

/** A strip read anew, each cell as far to the left as it is bent. */
export function unbent(strip: Float32Array, bent: Float32Array): Float32Array {
  return Float32Array.from(strip, (_, cell) => {
    const column = cell % AROUND;
    const start = cell - column;
    const at = column + (bent[cell] as number);
    const whole = Math.floor(at);
    const one = strip[start + (whole & (AROUND - 1))] as number;
    const next = strip[start + ((whole + 1) & (AROUND - 1))] as number;
    return one + (next - one) * (at - whole);
  });
}

/** Columns as radians. */
export const asAngles = (bent: Float32Array): Float32Array => bent.map((columns) => (columns * 2 * Math.PI) / AROUND);
