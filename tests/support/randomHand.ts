import fc from "fast-check";
import type { HandledLock } from "../../src/dialing/attempt";
import type { DialingState } from "../../src/dialing/dialingMachine";
import { idealMotion } from "../../src/dialing/idealMotion";
import { placeOf } from "../../src/dialing/leg";
import type { Graduations, Milliseconds, Position } from "../../src/lock/dial";

export const exact = (from: number, to: number) => fc.integer({ min: from * 64, max: to * 64 }).map((n) => n / 64);

/** A piece of a hand's work: one move, a whole combination dialed with stops that are off, or a rest. */
export type Piece =
  | { readonly by: Graduations }
  | { readonly errors: readonly Graduations[] }
  | { readonly rest: Milliseconds };
export const piece: fc.Arbitrary<Piece> = fc.oneof(
  { weight: 3, arbitrary: exact(-420, 420).map((by) => ({ by })) },
  { weight: 3, arbitrary: exact(-30, 30).map((by) => ({ by })) },
  { weight: 3, arbitrary: fc.constantFrom(300, 400, -300, -400, 20, -20).map((by) => ({ by })) },
  { weight: 4, arbitrary: fc.array(exact(-2, 2), { maxLength: 4 }).map((errors) => ({ errors })) },
  { weight: 2, arbitrary: fc.constantFrom(100, 2000, 40_000).map((rest) => ({ rest })) },
);
/** The moves of a piece that is no rest, graduations each. */
export function movesOf(
  piece: Exclude<Piece, { readonly rest: Milliseconds }>,
  { profile, combination }: Pick<HandledLock, "profile" | "combination">,
  from: Position,
): Graduations[] {
  const path = "by" in piece ? [0, piece.by] : idealMotion(profile, combination, from, piece.errors, 5);
  return path.slice(1).map((position, i) => position - (path[i] ?? position));
}

/** What a lock under a hand tells of itself; where no lock answers yet, nothing of a bolt. */
type Told = Pick<HandledLock, "profile" | "reader" | "opened"> & {
  readonly isThrown?: boolean;
  readonly isSecured?: boolean;
};

/** What the lock under the hand says of itself, in the words of the chart; a refusal only the chart remembers. */
export function lockSays(lock: Told): { readonly value: DialingState; readonly number?: number } {
  const { reader, profile } = lock;
  const { leg } = reader;
  if (lock.opened) return { value: lock.isThrown ? (lock.isSecured ? "secured" : "thrown") : "open" };
  if (leg === undefined) return { value: reader.runs.length === 0 ? "waiting" : "wrongWay" };
  const target = reader.targetOf(leg);
  if (target === undefined) return { value: "drawing", number: profile.procedure.length - 1 };
  const VALUES = { before: "turning", at: "resting", past: "overrun" } as const;
  return { value: VALUES[placeOf(leg, target)], number: leg.step };
}
