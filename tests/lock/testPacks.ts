import type { Combination } from "../../src/lock/combination";
import { type Graduations, opposite, reading, signOf, type Turn } from "../../src/lock/dial";
import type { WheelPackProfile } from "../../src/lock/profile";
import { parseProfile } from "../../src/lock/profileSchema";

/** What differs between the packs of the tests. */
export interface PackParts {
  /** Wheel 1 first, graduations; its length is the number of wheels. */
  readonly freePlay: readonly Graduations[];
  readonly perTurn?: number;
  readonly gateTolerance?: Graduations;
  readonly firstTurn?: Turn;
  readonly engageAt?: Graduations;
  readonly travel?: Graduations;
}

/** A profile whose directions alternate, dialed n + 1, n, ... 2 times, and drawn against the last number. */
export function packProfile(parts: PackParts): WheelPackProfile {
  const { freePlay, perTurn = 100, gateTolerance = 1.25, firstTurn = "left", engageAt = 5, travel = 15 } = parts;
  const turns = freePlay.map((_, k) => (k % 2 === 0 ? firstTurn : opposite(firstTurn)));
  const profile = parseProfile({
    id: "test-pack",
    kind: "wheel-pack",
    graduations: perTurn,
    procedure: turns.map((turn, k) => ({
      turn,
      arrivals: freePlay.length + 1 - k,
      rule: k === 0 ? "at-least" : "exactly",
    })),
    draw: { turn: opposite(turns.at(-1) ?? firstTurn), engageAt, travel },
    wheelPack: { freePlay, gateTolerance: freePlay.map(() => gateTolerance) },
  });
  if (profile.kind !== "wheel-pack") throw new TypeError("not a wheel pack");
  return profile;
}

/**
 * Dial position of the a-th arrival at a number.
 *
 * @param from - where the turn begins; a number under the index there has not arrived
 */
export function arrivalAt(number: Graduations, arrivals: number, turn: Turn, from: Graduations, perTurn = 100) {
  const sign = signOf(turn);
  const toFirst = reading(sign * (number - from), perTurn) || perTurn;
  return from + sign * (toFirst + (arrivals - 1) * perTurn);
}

/** Dial positions at which a perfect hand stops, one for each number. */
export function stopsOf(profile: WheelPackProfile, combination: Combination, start: Graduations): Graduations[] {
  let from = start;
  return profile.procedure.map(({ turn, arrivals }, k) => {
    from = arrivalAt(combination[k] ?? 0, arrivals, turn, from, profile.graduations);
    return from;
  });
}
