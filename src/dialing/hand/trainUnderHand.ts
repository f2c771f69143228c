import type { Milliseconds } from "../../lock/dial";
import type { LockTrain, TrainEnd } from "../../lock/train/lockTrain";
import type { UnderHand } from "./handSession";

/** What stands at the end of a train, and may take down a rest. */
interface RestingEnd<Fact> extends TrainEnd<Fact> {
  rest?(at: Milliseconds): readonly Fact[];
}

/** A lock behind ring, lost motion and learned zero, under a hand. @param end - asked at every move: it may be replaced */
export function trainUnderHand<Fact>(train: LockTrain, end: () => RestingEnd<Fact>): UnderHand<Fact> {
  return {
    get dial() {
      return train.dial;
    },
    turnBy: (by, at) => train.drive(end(), by, at),
    rest: (at) => {
      const one = end();
      return one.rest === undefined ? one.turnBy(0, at) : one.rest(at);
    },
  };
}
