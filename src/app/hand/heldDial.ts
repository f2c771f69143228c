import type { HandStore } from "./handStore";

/** A dial under a hand, as the store of an exercise gives it. */
export type HeldDial = Pick<
  HandStore,
  "subscribe" | "windUp" | "isRunningOn" | "noteSource" | "noteDoubt" | "turnBy" | "runOn"
> & {
  /** Whether its record is made of every move: then nothing turns it of which no motion is kept. */
  readonly keepsMoves?: boolean | undefined;
};

/** The same dial, turned by way of something that has more to do with it. */
export const heldBy = (
  dial: HeldDial,
  ways: Partial<Pick<HeldDial, "noteSource" | "noteDoubt" | "turnBy" | "runOn">>,
): HeldDial => ({
  get windUp() {
    return dial.windUp;
  },
  get isRunningOn() {
    return dial.isRunningOn;
  },
  keepsMoves: dial.keepsMoves,
  subscribe: dial.subscribe,
  noteSource: (source) => dial.noteSource(source),
  noteDoubt: (why) => dial.noteDoubt(why),
  turnBy: (by, at) => dial.turnBy(by, at),
  runOn: (at) => dial.runOn(at),
  ...ways,
});
