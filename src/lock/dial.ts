import { exact, fromMillionths, inMillionths } from "./exact";

/** Angle on a dial, in graduations. Unwrapped unless a name says otherwise; left (counter-clockwise) is positive. */
export type Graduations = number;

declare const frame: unique symbol;
type In<Frame extends string> = Graduations & { readonly [frame]?: Frame };

/*
 * Where something stands, by what it is measured at. A plain number passes for any of them, as sums and differences are plain
 * numbers; one of them never passes for another. It costs nothing when the program runs.
 */
/** Where the dial stands, unwrapped graduations. */
export type Position = In<"dial">;
/** Where the cam stands, or where the lock behind it takes the dial to be, unwrapped graduations. */
export type CamPosition = In<"cam">;
/** What an index reads, graduations; in [0, one turn) unless a name says otherwise. */
export type Reading = In<"index">;

/** A span or a moment of time, milliseconds. */
export type Milliseconds = number;

/** Direction of turning as the operator sees it: left is counter-clockwise, right is clockwise. */
export type Turn = "left" | "right";

/**
 * Sign of a direction in dial coordinates.
 *
 * @returns +1 for left, -1 for right
 */
export function signOf(turn: Turn): 1 | -1 {
  return turn === "left" ? 1 : -1;
}

/** The other direction. */
export function opposite(turn: Turn): Turn {
  return turn === "left" ? "right" : "left";
}

/**
 * Direction of a move.
 *
 * @param by - graduations, not zero
 */
export function turnOf(by: Graduations): Turn {
  return by > 0 ? "left" : "right";
}

/**
 * Number under the opening index, exact to the step (`exact.ts`).
 *
 * @param position - unwrapped dial position, graduations
 * @param perTurn - graduations in one turn of the dial, > 0
 * @returns reading in [0, perTurn), graduations
 */
export function reading(position: Position | Reading, perTurn: number): Reading {
  const turn = inMillionths(perTurn);
  const at = inMillionths(position);
  // Whole numbers, so all of this is exact; in a third of the time of the remainder operator.
  const rest = at - Math.floor(at / turn) * turn;
  // A quotient just below a whole number may have been rounded to it.
  return fromMillionths(rest < 0 ? rest + turn : rest);
}

/**
 * Shortest signed way that an angle stands for.
 *
 * @param angle - graduations, wrapped or not
 * @param perTurn - graduations in one turn of the dial, > 0
 * @returns graduations in (-perTurn/2, perTurn/2]; positive is to the left
 */
export function wrap(angle: Graduations, perTurn: number): Graduations {
  const left = reading(angle, perTurn);
  return left > perTurn / 2 ? exact(left - perTurn) : left;
}

/**
 * The number engraved where a reading lies. Faces whose numbers grow the other way differ in display alone.
 *
 * @param at - reading, graduations in [0, perTurn)
 * @param numbersIncrease - the turn under which the numbers at the index grow
 * @returns the number on the face in [0, perTurn)
 */
export function faceNumber(at: Reading, perTurn: number, numbersIncrease: Turn): Graduations {
  return numbersIncrease === "left" ? at : reading(-at, perTurn);
}
