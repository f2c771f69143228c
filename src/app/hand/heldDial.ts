import type { Graduations, Milliseconds } from "../../lock/dial";
import type { Store } from "../parts/page/store";

/** A dial under a hand, as the store of an exercise gives it. */
export interface HeldDial extends Pick<Store, "subscribe"> {
  /** How far the hand is ahead of a heavy dial, graduations. */
  readonly windUp: Graduations;
  /** Whether a light dial moves by itself. */
  readonly isRunningOn: boolean;
  turnBy(by: Graduations, at: Milliseconds): void;
  /** Lets time pass over a light dial that runs on. */
  runOn(at: Milliseconds): void;
}

/** The same dial, turned by way of something that has more to do with it. */
export const heldBy = (dial: HeldDial, ways: Partial<Pick<HeldDial, "turnBy" | "runOn">>): HeldDial => ({
  get windUp() {
    return dial.windUp;
  },
  get isRunningOn() {
    return dial.isRunningOn;
  },
  subscribe: dial.subscribe,
  turnBy: (by, at) => dial.turnBy(by, at),
  runOn: (at) => dial.runOn(at),
  ...ways,
});
