import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { BenchSession } from "../../../src/app/exercises/bench/benchSession";
import { ChangeSession } from "../../../src/app/exercises/handover/change/changeSession";
import { HoldbackSession } from "../../../src/app/exercises/handover/holdback/holdbackSession";
import { HandoverSession } from "../../../src/app/exercises/handover/run/session/handoverSession";
import { PlaySession } from "../../../src/app/exercises/zeroing/session/playSession";
import { ProveSession } from "../../../src/app/exercises/zeroing/session/proveSession";
import { ZeroingSession } from "../../../src/app/exercises/zeroing/session/zeroingSession";
import type { HandStore } from "../../../src/app/hand/handStore";
import { BREAKAWAY, type DialWeight, DRAG_LAG } from "../../../src/dialing/hand/dialFeel";
import { idealMotion } from "../../../src/dialing/idealMotion";
import type { DialEncoderProfile } from "../../../src/lock/profile";
import { shippedProfile } from "../../../src/lock/shippedProfiles";
import { attemptOutcome } from "../../../src/records/attemptOutcome";
import { seededChance } from "../../../src/statistics/chance";
import { replay } from "../../../src/trace/replay";
import { usualRules } from "../../../src/zeroing/zeroingRules";
import { USUAL_RANGES, ZeroLock } from "../../../src/zeroing/zeroLock";

const PROFILE = shippedProfile("three-wheel");
const ENCODER = shippedProfile("dial-encoder") as DialEncoderProfile;
const COMBINATION = PROFILE.asSet ?? [];
const ZERO = { right: 0, left: 0 };
const chance = () => seededChance(4);
const zeroing = (weight: DialWeight) => ({
  graduations: 100,
  rules: usualRules(100),
  ranges: { ...USUAL_RANGES, lostMotion: [0, 0] as const },
  creep: [0, 0] as const,
  weight,
});
const bench = (weight: DialWeight, fit?: { indexOffset: number; lostMotion: number }) =>
  new BenchSession(
    { profile: PROFILE, source: "own", combination: COMBINATION, help: "full", dial: weight, fit },
    chance(),
  );
const zeroLock = () => new ZeroLock({ indexOffset: 0, lostMotion: 0, noise: 0, start: 5 }, 100);

/** Every exercise that turns a dial, asked for a weight of it, and where its dial stands. */
const EXERCISES: Readonly<Record<string, (weight: DialWeight) => { session: HandStore; dial: () => number }>> = {
  bench: (weight) => {
    const session = bench(weight);
    return { session, dial: () => session.dial };
  },
  change: (weight) => {
    const session = new ChangeSession({ profile: PROFILE, help: "full", weight }, chance());
    return { session, dial: () => session.change.dial };
  },
  holdback: (weight) => {
    const session = new HoldbackSession({ profile: PROFILE, weight }, chance());
    return { session, dial: () => session.lock.dial };
  },
  "set zero": (weight) => {
    const session = new ZeroingSession(zeroing(weight), chance());
    return { session, dial: () => session.lock.dial };
  },
  "find the play": (weight) => {
    const session = new PlaySession(zeroing(weight), chance());
    return { session, dial: () => session.lock.dial };
  },
  "prove it": (weight) => {
    const lock = zeroLock();
    const session = new ProveSession({ lock, zero: ZERO, profile: ENCODER, combination: [38, 71, 26], weight });
    return { session, dial: () => lock.dial };
  },
  handover: (weight) => {
    const session = new HandoverSession({ profile: PROFILE, seed: 3, isHandsOff: false, weight }, null, () => {});
    return { session, dial: () => session.lock.hand.dial };
  },
};
const NAMES = Object.keys(EXERCISES);

const exerciseOf = (name: string, weight: DialWeight) => {
  const make = EXERCISES[name];
  if (make === undefined) throw new Error(name);
  return make(weight);
};

/** The bench of a lock with a defect: its dial turns as it should. */
const WITHOUT_WEIGHT = ["TroubleSession"];

test("every exercise with a dial is held to this", () => {
  const folder = "src/app/exercises";
  const found = readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((file) => file.endsWith(".ts"))
    .flatMap((file) => [...readFileSync(`${folder}/${file}`, "utf8").matchAll(/class (\w+) extends HandStore/g)])
    .map(([, name]) => name);
  const held = NAMES.map((name) => exerciseOf(name, "usual").session.constructor.name);
  expect(found.sort(), "each session has a line in EXERCISES above").toEqual([...held, ...WITHOUT_WEIGHT].sort());
});

// Away from the positive stop, on which a lock that stands open is.
const AWAY = 6;

describe.each(NAMES)("the dial of %s", (name) => {
  test("does what the hand does as it should be", () => {
    const { session, dial } = exerciseOf(name, "usual");
    const stood = dial();
    session.turnBy(AWAY, 10);
    expect([dial() - stood, session.windUp, session.isRunningOn]).toEqual([expect.closeTo(AWAY, 5), 0, false]);
  });

  test("stays behind the hand when it is heavy", () => {
    const { session, dial } = exerciseOf(name, "heavy");
    const stood = dial();
    session.turnBy(BREAKAWAY, 10);
    expect(dial()).toBe(stood);
    session.turnBy(AWAY, 20);
    expect(dial() - stood).toBeCloseTo(BREAKAWAY + AWAY - DRAG_LAG, 1);
  });

  test("runs on when it is light, until time has passed", () => {
    const { session, dial } = exerciseOf(name, "light");
    session.turnBy(AWAY, 10);
    const before = dial();
    expect(session.isRunningOn).toBe(true);
    session.runOn(3000);
    expect([dial() > before, session.isRunningOn]).toEqual([true, false]);
  });
});

describe("the bench with an index that stands off and a cam that follows with play", () => {
  const FIT = { indexOffset: 0.75, lostMotion: 1.5 };
  /** Dials by what the index reads, and lets go at the end. */
  const dialed = (session: BenchSession) => {
    let now = 0;
    const seen = () => session.dial - session.indexError;
    for (const stop of idealMotion(PROFILE, COMBINATION, seen(), [], 5).slice(1)) {
      now += 700;
      session.turnBy(stop - seen(), now);
    }
    return attemptOutcome(session.attempt).stops.map(({ error }) => error);
  };

  test("shows both in the stops of a perfect hand: left the index, right the play against it", () => {
    expect(dialed(bench("usual"))).toEqual([0, 0, 0]);
    const [first, second, third] = dialed(bench("usual", FIT));
    expect([first, second, third]).toEqual([0.75, expect.closeTo(-0.75 - 1.5, 1), 0.75]);
  });

  test("records what the lock took in, and replays to the same", () => {
    const session = bench("usual", { indexOffset: 0.3, lostMotion: 0.7 });
    dialed(session);
    const again = replay({ profile: PROFILE, combination: COMBINATION, ...session.recording });
    expect(again.dial).toBe(session.attempt.dial);
    expect(attemptOutcome(again)).toEqual(attemptOutcome(session.attempt));
  });
});

describe("a change of combination with an index that stands off", () => {
  const index = PROFILE.kind === "wheel-pack" ? (PROFILE.changing?.index ?? 0) : 0;
  /** Dials the current combination to the changing index as drawn, and puts the key in. */
  const keyPutIn = (indexOffset: number, lostMotion = 0) => {
    const fit = { indexOffset, lostMotion };
    const session = new ChangeSession({ profile: PROFILE, help: "full", fit }, chance());
    for (const stop of idealMotion(PROFILE, session.setup.present, session.seen).slice(1, -1))
      session.turnBy(stop - session.seen, 0);
    session.act("insertKey");
    return session;
  };

  test("brings every wheel as far from the key port as the index stands off", () => {
    expect([keyPutIn(0).state, keyPutIn(3).state]).toEqual(["keyIn", "keyForced"]);
    const { change, dial, seen } = keyPutIn(3);
    expect("keyed" in change && change.keyed.keyErrors()).toEqual([3, 3, 3].map((error) => expect.closeTo(error, 6)));
    expect(dial - seen).toBeCloseTo(3 + index, 6);
  });

  test("whose cam follows with play leaves the wheel that is set turning right behind by it", () => {
    const { change } = keyPutIn(0, 3);
    expect("keyed" in change && change.keyed.keyErrors()).toEqual([0, 3, 0].map((error) => expect.closeTo(error, 6)));
  });
});
