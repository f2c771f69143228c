import type { Graduations } from "../../lock/dial";
import { exact } from "../../lock/exact";
import { driven, lagging } from "../../lock/play";
import { FITTING } from "../trainingValues";

/** A bolt that a hand draws by the dial, and how far both have come; graduations of the draw. */
export interface BoltPull {
  readonly hand: Graduations;
  readonly dial: Graduations;
}

/** Thrown, nobody's hand on the dial. */
export const THROWN: BoltPull = { hand: 0, dial: 0 };

/** How far a dial turns until the bolt is back, graduations. */
export const travelOf = (perTurn: number): Graduations => FITTING.boltTravel * perTurn;

/**
 * A hand goes on with the draw, or back: the dial, and the bolt with it, follows by the play operator (`lock/play`) once the
 * hand is ahead by what holds it. Both ends of the draw are stops: what the hand does beyond them is lost.
 *
 * @param by - in the direction of the draw, graduations
 * @param held - how far the hand gets ahead of the dial, all in all
 */
export function pulled({ hand, dial }: BoltPull, by: Graduations, held: Graduations, travel: Graduations): BoltPull {
  const wanted = exact(hand + by);
  const free = exact(driven(dial, wanted, lagging(held)));
  const stopped = Math.min(travel, Math.max(0, free));
  return { hand: exact(wanted - (free - stopped)), dial: stopped };
}

/** The hand lets go: what it was ahead is lost, and the bolt stays where the strike holds it. */
export const released = ({ dial }: BoltPull): BoltPull => ({ hand: dial, dial });
