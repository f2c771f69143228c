import type { Turn } from "../lock/dial";

/** Where the dial is with respect to the number it is turning to. */
export type Place = "before" | "at" | "past";

/** Something that happened under the hand, as the engine reports it and the dialing chart takes it in. */
export type DialingFact =
  /** Motion in a direction began before the attempt had a first turn. */
  | { readonly type: "run.begun"; readonly turn: Turn }
  /** A run long enough to clear the lock: the attempt starts anew with it. */
  | { readonly type: "fresh.started" }
  /** The number stands at the index with its arrivals made. */
  | { readonly type: "number.reached" }
  /** The dial went on past it. */
  | { readonly type: "number.passed" }
  /** The hand turned about: what follows belongs to the next number, or to the draw. */
  | { readonly type: "turn.reversed" }
  /** That was a short turnback only: the hand goes on in the direction it had. */
  | { readonly type: "turn.resumed"; readonly place: Place }
  /** The draw was turned all its way and the bolt did not come. */
  | { readonly type: "draw.refused" }
  /** The bolt is back and the dial stands at the positive stop. */
  | { readonly type: "bolt.retracted" }
  | { readonly type: "bolt.thrown" }
  /** Spun off: the wheels no longer hold the combination. */
  | { readonly type: "lock.cleared" }
  /** Rested longer than the lock waits. */
  | { readonly type: "pause.exceeded" };

/** Nothing happened: one list for all, since that is the answer to nearly every move. */
export const NO_FACTS: readonly DialingFact[] = [];

/** What happened first and what happened then. Makes no new list where one of them is empty. */
export function joinFacts(first: readonly DialingFact[], then: readonly DialingFact[]): readonly DialingFact[] {
  if (first.length === 0) return then;
  return then.length === 0 ? first : [...first, ...then];
}
