import fc from "fast-check";
import { expect, test } from "vitest";
import { BenchSession } from "../../../src/app/exercises/bench/benchSession";
import { ChangeSession } from "../../../src/app/exercises/handover/change/changeSession";
import { ProveSession } from "../../../src/app/exercises/zeroing/session/proveSession";
import type { HandStore } from "../../../src/app/hand/handStore";
import { DialingTry } from "../../../src/app/sittings/tries/dialingTry";
import type { HandledLock } from "../../../src/dialing/attempt";
import type { DialingState } from "../../../src/dialing/dialingMachine";
import { DIAL_WEIGHTS, type DialWeight } from "../../../src/dialing/hand/dialFeel";
import type { Graduations } from "../../../src/lock/dial";
import type { DialEncoderProfile } from "../../../src/lock/profile";
import { shippedProfile } from "../../../src/lock/shippedProfiles";
import { seededChance } from "../../../src/statistics/chance";
import { ZeroLock } from "../../../src/zeroing/zeroLock";
import { lockSays, movesOf, type Piece, piece } from "../../support/randomHand";
import { dialingStation } from "../../support/testSheet";
import { setupOf } from "../sittings/jobTries";

const PACK = shippedProfile("three-wheel");
const ENCODER = shippedProfile("dial-encoder") as DialEncoderProfile;
const COMBINATION = [38, 71, 26];

/** An exercise on whose dial a combination is dialed: its lock, and where the chart that its screen shows is. */
interface Dialed {
  readonly session: HandStore;
  readonly lock: () => HandledLock;
  readonly state: () => DialingState;
  readonly dial: () => Graduations;
  /** What the hand can do besides turning. */
  readonly acts?: readonly (() => void)[];
}

/** As one changes a combination, and then some. */
const KEY_ACTS = ["insertKey", "turnKey", "turnKeyBack", "withdrawKey", "pressButton", "changeAgain"] as const;

function benchOf(profile: typeof PACK) {
  return (weight: DialWeight): Dialed => {
    const setup = { profile, source: "own", combination: COMBINATION, help: "full", dial: weight } as const;
    const session = new BenchSession(setup, seededChance(4));
    return { session, lock: () => session.attempt, state: () => session.state, dial: () => session.dial };
  };
}

function changeOf(profile: typeof PACK) {
  return (weight: DialWeight): Dialed => {
    const session = new ChangeSession({ profile, help: "full", weight }, seededChance(4));
    const { change } = session;
    const state = () => session.chart.getSnapshot().value;
    const acts = KEY_ACTS.map((act) => () => session.act(act));
    return { session, lock: () => change.hand, state, dial: () => session.dial, acts };
  };
}

const EXERCISES: Readonly<Record<string, (weight: DialWeight) => Dialed>> = {
  "bench with a wheel pack": benchOf(PACK),
  "bench with an encoder": benchOf(ENCODER),
  "change of a wheel pack": changeOf(PACK),
  "change of an encoder": changeOf(ENCODER),
  sitting: (weight) => {
    const conditions = weight === "usual" ? [] : [{ kind: `${weight}-dial` } as const];
    const session = new DialingTry(setupOf(dialingStation({ conditions })));
    return { session, lock: () => session.attempt, state: () => session.state, dial: () => session.seen };
  },
  "prove it": (weight) => {
    const lock = new ZeroLock({ indexOffset: 0.25, lostMotion: 0.5, noise: 0, start: 5 }, 100);
    const zero = { right: lock.trueZero("right"), left: lock.trueZero("left") };
    const session = new ProveSession({ lock, zero, profile: ENCODER, combination: COMBINATION, weight });
    // The hand goes by the index.
    const dial = () => lock.dial - lock.indexError;
    return { session, lock: () => session.attempt, state: () => session.chart.getSnapshot().value, dial };
  },
};

/** Works on it as a page does, and holds chart and lock together after every move. */
function work({ session, lock, state, dial, acts = [] }: Dialed, pieces: readonly Piece[]): void {
  let [now, done] = [0, 0];
  const step = (after: number, does: () => void) => {
    now += after;
    does();
    const [chart, { value }] = [state(), lockSays(lock())];
    // A refusal is remembered by the chart alone.
    if (chart === "failed") expect(lock().opened).toBe(false);
    else expect(chart).toBe(value);
  };
  for (const one of pieces) {
    if ("rest" in one) step(one.rest, () => [session.runOn(now), session.rest(now)]);
    else for (const by of movesOf(one, lock(), dial())) step(400, () => session.turnBy(by, now));
    // One after the other, so that those that need each other follow each other.
    const act = acts[done++ % acts.length];
    if (act !== undefined) step(10, act);
  }
}

const AGAIN: Piece[] = [{ errors: [] }, { by: 400 }, { errors: [] }];

test.each(Object.entries(EXERCISES))("whatever a hand does, chart and lock say the same: %s", (_, begin) => {
  fc.assert(
    fc.property(fc.constantFrom(...DIAL_WEIGHTS), fc.array(piece, { maxLength: 12 }), (weight, pieces) =>
      work(begin(weight), pieces),
    ),
    { numRuns: 150, examples: [["usual", AGAIN]] },
  );
});
