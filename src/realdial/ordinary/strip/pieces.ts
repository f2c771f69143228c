import { AROUND } from "../pose/ring";
import { ROWS } from "./strip";

/** Directions, and bands of rows (numbers, marks), whose pieces of the ring are judged each by itself. */
const DIRECTIONS = 64;
const BANDS = 2;

/** Pieces of a strip, first those of the inner band; and the columns and rows that each has. */
export const PIECES = DIRECTIONS * BANDS;
/** See `PIECES`. */
export const PIECE_COLUMNS = AROUND / DIRECTIONS;
/** See `PIECES`. */
export const BAND_ROWS = ROWS / BANDS;

/** The first column of a piece. */
export const beginOf = (piece: number): number => (piece % DIRECTIONS) * PIECE_COLUMNS;

/** The first cell of a row of a piece. */
export const cellOf = (piece: number, row: number): number =>
  ((piece < DIRECTIONS ? 0 : BAND_ROWS) + row) * AROUND + beginOf(piece);

/** The piece that a cell belongs to. */
export const pieceOf = (cell: number): number =>
  (cell < BAND_ROWS * AROUND ? 0 : DIRECTIONS) + Math.floor((cell % AROUND) / PIECE_COLUMNS);
