import type { Hand } from "../../dialing/hand/handSession";
import type { Graduations, Milliseconds } from "../../lock/dial";
import type { DialDoubt } from "../../realdial/sources/dialDoubt";
import type { SourceDescription } from "../../realdial/sources/sourceDescription";
import { SCREEN_SOURCE, SourcesSeen } from "../../realdial/sources/sourcesSeen";
import { Store } from "../parts/page/store";

/**
 * A store with a dial that a hand turns. Weight, rests and time are the hand's; an exercise adds its lock and what it
 * listens for. Its screen takes hold of it by `useHandStore`, else no time passes over it.
 */
export abstract class HandStore extends Store {
  protected abstract readonly hand: Hand;
  /** What has turned the dial, for the record. */
  readonly turnedBy = new SourcesSeen();

  /** How far the hand is ahead of a heavy dial, graduations. */
  get windUp(): Graduations {
    return this.hand.windUp;
  }

  /** Whether a light dial moves by itself. */
  get isRunningOn(): boolean {
    return this.hand.isRunningOn;
  }

  /** Takes down what turns the dial from here on. @param source - the hands on the screen where left out @returns whether it may */
  noteSource(source: SourceDescription = SCREEN_SOURCE): boolean {
    this.turnedBy.note(source);
    return true;
  }

  /** The turns may be miscounted from here on. @returns whether what is under way is marked by it */
  noteDoubt(why: DialDoubt): boolean {
    return this.turnedBy.doubt(why);
  }

  /** The hand turns. @param by - graduations, left positive, one direction @param at - milliseconds of a steady clock */
  turnBy(by: Graduations, at: Milliseconds): void {
    if (this.hand.turnBy(by, at)) this.changed();
  }

  /** Lets time pass over a light dial that runs on. */
  runOn(at: Milliseconds): void {
    if (this.hand.runOn(at)) this.changed();
  }

  /** Lets time pass over a resting hand. */
  rest(at: Milliseconds): void {
    if (this.hand.rest(at)) this.changed();
  }
}
