import { type Graduations, type Position, reading } from "../dial";

/** Something that holds the dial for a part of each turn, such as a key that rides on the lever. */
export interface Catching {
  /** The middle of where it holds, a place of the dial, graduations. */
  readonly at: Graduations;
  /** How far round it holds, graduations in [0, one turn). */
  readonly arc: Graduations;
  /** How much farther the hand gets ahead there, graduations, >= 0. */
  readonly drag: Graduations;
}

/** Nearer to an edge than this, graduations, is past it: a step that small can be lost in the decimals. */
const AT_EDGE: Graduations = 1e-9;

/** How far it is from a position to the next edge of the arc that lies ahead, and whether it holds up to there. */
function ahead({ at, arc }: Catching, position: Position, sign: number, perTurn: number) {
  const round = reading(sign * (position - at) + arc / 2, perTurn);
  const into = perTurn - round < AT_EDGE ? 0 : round;
  return into < arc - AT_EDGE ? { holds: true, toEdge: arc - into } : { holds: false, toEdge: perTurn - into };
}

/**
 * Where a hand on a springy grip has turned a dial that has friction everywhere and more of it in one part of the turn.
 *
 * The play operator (`lock/play`) with room that goes by where the dial stands: the dial goes on while the hand is farther
 * ahead than the friction there lets it. So it sticks where the arc begins, and jumps where it ends.
 *
 * @param dial - where it stands, unwrapped
 * @param hand - where the hand is now, unwrapped
 * @param drag - how far the hand gets ahead everywhere, graduations
 * @returns where the dial stands now
 */
export function caught(dial: Position, hand: Graduations, drag: Graduations, catching: Catching, perTurn: number) {
  const sign = hand < dial ? -1 : 1;
  let at = dial;
  for (;;) {
    const { holds, toEdge } = ahead(catching, at, sign, perTurn);
    const room = drag + (holds ? catching.drag : 0);
    const free = sign * (hand - at) - room;
    if (free <= 0) return at;
    if (free < toEdge) return hand - sign * room;
    at += sign * toEdge;
  }
}
