import type { Graduations, Milliseconds, Turn } from "../../lock/dial";
import { RestNoise } from "../motion/restNoise";
import { type StopAsked, stopError } from "./stopAsked";

/** Farther from the number than this a dial is on its way there, graduations. */
const ON_ITS_WAY: Graduations = 3;
/** A hand that wobbles by less than this has not turned back, graduations. */
const WOBBLE: Graduations = 1;

/** How a stop that was asked for is getting on. */
export type StopProgress =
  | { readonly state: "turning" }
  /** It rests at the number, but came there by the other turn. */
  | { readonly state: "other-turn" }
  /** It rests at the number. @property error - past the number, left positive @property noise - at rest, graduations */
  | { readonly state: "stopped"; readonly error: Graduations; readonly noise: Graduations };

/** Waits for one stop that was asked for: a rest of a second at the number, come to by the turn asked for. Mutable. */
export class StopTaker {
  private readonly asked: StopAsked;
  private readonly perTurn: Graduations;
  private rest = new RestNoise();
  /** How far it came by the turn that it makes now. */
  private farthest: Graduations | null = null;
  /** Null until it has moved: a dial that stands at the number came there before it was asked. */
  private turn: Turn | null = null;

  constructor(asked: StopAsked, perTurn: Graduations) {
    this.asked = asked;
    this.perTurn = perTurn;
  }

  /** The dial was turned: more often than it is looked at. @param position - unwrapped, left positive, graduations */
  turned(position: Graduations): void {
    this.farthest ??= position;
    const by = position - this.farthest;
    const goesOn = this.turn === null ? false : this.turn === "left" ? by > 0 : by < 0;
    if (!goesOn && Math.abs(by) < WOBBLE) return;
    this.turn = by > 0 ? "left" : "right";
    this.farthest = position;
  }

  /** @param position - as of `turned` @param at - later than the last */
  take(position: Graduations, at: Milliseconds): StopProgress {
    this.turned(position);
    const rest = this.rest.take(position, at);
    if (rest === null) return { state: "turning" };
    const error = stopError(rest.position, this.asked.number, this.perTurn);
    if (Math.abs(error) > ON_ITS_WAY) return { state: "turning" };
    const isAsAsked = this.turn === null || this.turn === this.asked.turn;
    return isAsAsked ? { state: "stopped", error, noise: rest.noise } : { state: "other-turn" };
  }

  /** What the dial shows is not known for now: it has to rest anew. */
  loseSight(): void {
    this.rest = new RestNoise();
  }
}
