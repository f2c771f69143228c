import { readFileSync } from "node:fs";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { resumedRun } from "../../../../../../src/app/exercises/handover/run/kept/resumedRun";
import { motionOfChange } from "../../../../../../src/app/exercises/handover/run/session/changeRecording";
import { changeTo, leaveChange } from "../../../../../../src/app/exercises/handover/run/session/changeWork";
import type { RunSetup } from "../../../../../../src/app/exercises/handover/run/session/doorWork";
import { HandoverSession } from "../../../../../../src/app/exercises/handover/run/session/handoverSession";
import { type KeptRun, keepRun, recallRun } from "../../../../../../src/app/exercises/handover/run/session/keptRun";
import { workOnRing } from "../../../../../../src/app/exercises/handover/run/session/ringWork";
import { idealMotion } from "../../../../../../src/dialing/idealMotion";
import { PackChange } from "../../../../../../src/handover/change/packChange";
import type { Combination } from "../../../../../../src/lock/combination";
import { type Graduations, reading } from "../../../../../../src/lock/dial";
import { shippedProfile } from "../../../../../../src/lock/shippedProfiles";
import { describeSource } from "../../../../../../src/realdial/sources/sourceDescription";
import { SCREEN_SOURCE } from "../../../../../../src/realdial/sources/sourcesSeen";

const KEY = "gatefall.handover-run";
const UNREAD = "gatefall.handover-run.unread";
const store = new Map<string, string>();

beforeEach(() => {
  store.clear();
  vi.stubGlobal("localStorage", {
    getItem: (key: string) => store.get(key) ?? null,
    setItem: (key: string, text: string) => store.set(key, text),
  });
});
afterEach(() => void vi.unstubAllGlobals());

const motionKept = (kept: KeptRun | null) => motionOfChange(kept?.underWay?.change?.motion ?? "");

const setupOf = (id: string): RunSetup => ({ profile: shippedProfile(id), seed: 7, isHandsOff: false });

/** The run as it is after a reload. */
function reloaded(setup: RunSetup): HandoverSession {
  const { kept, problem } = recallRun();
  expect(problem).toBeNull();
  return new HandoverSession(setup, kept);
}

/** A hand that turns in small moves, a tenth of a second each. */
function handOn(session: HandoverSession) {
  let now = 0;
  const turnBy = (by: Graduations) => {
    for (let left = Math.abs(by); left > 1e-9; left -= 7) {
      now += 100;
      session.turnBy(Math.sign(by) * Math.min(7, left), now);
    }
  };
  const dial = (numbers: Combination, index: Graduations, hasDraw: boolean) => {
    const { profile } = session.setup;
    const targets = numbers.map((number) => reading(number + index, profile.graduations));
    const path = idealMotion(profile, targets, session.lock.hand.seen, [], 2);
    const stops = (hasDraw ? path : path.slice(0, -1)).slice(1);
    for (const stop of stops) turnBy(stop - session.lock.hand.seen);
  };
  return { turnBy, dial };
}

/** A run with its ring aligned, so that the index reads what the lock takes. */
function aligned(id: string): HandoverSession {
  const session = new HandoverSession(setupOf(id));
  workOnRing(session, 0);
  session.zeroing.turnRing(-session.zeroing.lock.indexError);
  session.zeroing.clampRing();
  session.show("dial");
  session.act({ type: "ring.aligned" }, 0);
  return session;
}

const rounded = (numbers: readonly Graduations[]) => numbers.map((number) => Number(number.toFixed(6)));

/** Dial, wheels and key, and all that the panel tells. */
function seenOf({ change, lock }: HandoverSession) {
  if (!(change?.change instanceof PackChange)) throw new Error("no change with a key is under way");
  const { keyed, proof } = change.change;
  const { key, loose, numbers } = keyed.state;
  const pack = proof?.attempt.pack?.state ?? keyed.pack.state;
  const { isDone, canBeLeft } = change;
  const wheels = rounded([lock.hand.seen, pack.dial, ...pack.slack, ...numbers]);
  return { key, loose, wheels, words: change.words(false), isDone, canBeLeft };
}

/** Where the key's index stands. */
function changingIndex({ setup: { profile } }: HandoverSession): Graduations {
  if (profile.kind !== "wheel-pack" || profile.changing === undefined) throw new Error("it takes no change key");
  return profile.changing.index;
}

describe("a change of combination under way", () => {
  test("with a key: after every act a reload finds dial, wheels, key and words as they were", () => {
    const wanted = [31, 62, 43];
    let session = aligned("three-wheel");
    const index = changingIndex(session);
    changeTo(session, wanted, 0);
    const work = [
      { dialed: session.lock.meant, acts: ["insertKey", "turnKey"] },
      { dialed: wanted, acts: ["turnKeyBack", "withdrawKey"] },
    ] as const;
    for (const { dialed, acts } of work) {
      handOn(session).dial(dialed, index, false);
      for (const act of acts) {
        session.workOnChange((change) => change.use(act));
        const before = seenOf(session);
        session = reloaded(session.setup);
        expect(seenOf(session)).toEqual(before);
        expect(before.words).toContain("The key is");
      }
    }
    leaveChange(session, 0);
    expect(session.run.situation.combination).toBe("ownTrue");
    expect(session.lock.meant).toEqual(wanted);
    expect(reloaded(session.setup).change).toBeNull();
  });

  test("on a lock without a key: the first of two dialings is still taken, in one sweep or in many small moves", () => {
    const wanted = [22, 47, 71];
    let session = aligned("dial-encoder");
    changeTo(session, wanted, 0);
    // The lock counts from a zero of its own: what the hand dials goes by that here.
    handOn(session).dial(session.lock.meant, session.lock.hand.seen - session.lock.kept.dial, true);
    expect(session.change?.words(false)).toBe("It opened. Press the change button now.");
    session.workOnChange((change) => change.use("pressButton"));
    handOn(session).dial(wanted, session.lock.hand.seen - (session.change?.change.dial ?? 0), true);
    expect(session.change?.words(false)).toBe("First entry accepted. Dial the new numbers again.");
    session.keepIfBegun();
    session = reloaded(session.setup);
    expect(session.change?.words(false)).toBe("First entry accepted. Dial the new numbers again.");
    handOn(session).dial(wanted, session.lock.hand.seen - (session.change?.change.dial ?? 0), true);
    expect(session.change?.words(false)).toBe("Both entries agree. The combination is changed.");
    expect(session.change?.setTo).toEqual(wanted);
  });

  test("that was left does not come back", () => {
    const session = aligned("three-wheel");
    changeTo(session, [31, 62, 43], 0);
    leaveChange(session, 0);
    expect(reloaded(session.setup).activity).toBe("dial");
  });

  test("is kept while the hand turns, for a browser that is killed", () => {
    const session = aligned("three-wheel");
    changeTo(session, [31, 62, 43], 0);
    for (let k = 0; k <= 100; k++) session.turnBy(1, k * 16);
    const { start, positions } = motionKept(recallRun().kept);
    const turned = (positions.at(-1) ?? 0) - start.dial;
    // Half a second of moves of 16 ms each may be missing.
    expect(turned).toBeGreaterThanOrEqual(101 - 32);
  });

  test("is kept at once as something comes of a turn", () => {
    const session = aligned("dial-encoder");
    changeTo(session, [22, 47, 71], 0);
    expect(motionKept(recallRun().kept).positions).toEqual([]);
    handOn(session).dial(session.lock.meant, session.lock.hand.seen - session.lock.kept.dial, true);
    expect(reloaded(session.setup).change?.words(false)).toBe("It opened. Press the change button now.");
  });

  test("goes on by the clock of the new page: a pause after a reload is kept as long as it was", () => {
    let session = aligned("dial-encoder");
    changeTo(session, [22, 47, 71], 0);
    for (const now of [50_000, 90_000]) session.turnBy(3, now);
    session.keepIfBegun();
    session = reloaded(session.setup);
    for (const now of [1000, 21_000]) session.turnBy(3, now);
    const times = motionOfChange(session.change?.kept.motion ?? "").times_ms;
    // A reload is no pause: what follows begins where the last move was.
    expect(times).toEqual([0, 40_000, 40_000, 60_000]);
  });

  test("small moves take little room", () => {
    const session = aligned("three-wheel");
    changeTo(session, [31, 62, 43], 0);
    for (let k = 0; k < 600; k++) session.turnBy(0.1, k * 16);
    const { motion } = session.change?.kept ?? { motion: "" };
    const { start, positions } = motionOfChange(motion);
    expect((positions.at(-1) ?? 0) - start.dial).toBeCloseTo(60, 1);
    expect(motion.length).toBeLessThan(600);
  });
});

test("a change under way that version 0.2.0 kept goes on, and is kept as one motion from then on", () => {
  store.set(KEY, readFileSync("tests/fixtures/0.2.0/handover-under-way.json", "utf8"));
  const session = reloaded(setupOf("three-wheel"));
  expect(session.change?.words(false)).toBe("The key is turned back: the wheels are clamped where they are.");
  const numbers = [31, 62, 43].map((number) => expect.closeTo(number + 0.04, 1));
  expect(session.change?.setTo).toEqual(numbers);
  session.keepIfBegun();
  expect(store.get(KEY)).not.toContain("deeds");
  const again = reloaded(session.setup);
  expect(seenOf(again)).toEqual(seenOf(session));
  again.workOnChange((change) => change.use("withdrawKey"));
  leaveChange(again, 0);
  expect(again.run.situation.combination).toBe("ownTrue");
});

test("a change under way whose motion cannot be read is set aside, and the handover goes on from its last step", () => {
  const session = aligned("three-wheel");
  changeTo(session, [31, 62, 43], 0);
  session.turnBy(5, 0);
  session.keepIfBegun();
  const kept = JSON.parse(store.get(KEY) ?? "");
  kept.underWay.change.motion = "AAAA";
  store.set(KEY, JSON.stringify(kept));
  const { kept: read, problem } = recallRun();
  expect([read?.underWay, problem]).toEqual([null, expect.stringContaining("cannot be read")]);
});

describe("ring and zero under way", () => {
  test("the ring as it was turned, and the readings of an open side", () => {
    const session = new HandoverSession(setupOf("dial-encoder"));
    workOnRing(session, 0);
    session.zeroing.turnRing(0.4 - session.zeroing.lock.indexError);
    session.keepIfBegun();
    const loose = reloaded(session.setup);
    expect([loose.activity, loose.zeroing.state]).toEqual(["ring", "ringLoose"]);
    expect(loose.zeroing.lock.indexError).toBeCloseTo(0.4, 9);
    loose.zeroing.clampRing();
    const reading = { deviation: 0.1, cam: 0.3 };
    loose.zeroing.chart.send({ type: "reading.accepted", reading });
    loose.keepIfBegun();
    const { memory, state } = reloaded(session.setup).zeroing;
    expect(state).toBe("firstSeries");
    expect([...memory.accepted.left, ...memory.accepted.right]).toEqual([reading]);
  });

  test("a run that nobody has begun takes the place of no other", () => {
    store.set(KEY, "another run");
    const session = new HandoverSession(setupOf("three-wheel"));
    session.turnBy(5, 0);
    session.keepIfBegun();
    expect(store.get(KEY)).toBe("another run");
    session.keepNow();
    expect(recallRun().kept?.run.events).toEqual([]);
  });
});

describe("what cannot be read is told, and not lost", () => {
  /** Writes a run with a change under way, altered. */
  function altered(alter: (kept: Record<string, unknown>) => unknown): string {
    const session = aligned("three-wheel");
    changeTo(session, [31, 62, 43], 0);
    const text = JSON.stringify(alter(JSON.parse(store.get(KEY) ?? "{}")));
    store.set(KEY, text);
    return text;
  }

  test("work under way of a wrong shape: the run goes on from its last step", () => {
    const text = altered((kept) => ({ ...kept, underWay: { change: "?" } }));
    const { kept, problem } = recallRun();
    expect(kept?.run.events.map(({ type }) => type)).toEqual(["ring.aligned"]);
    expect(kept?.underWay).toBeNull();
    expect(problem).toMatch(/under way cannot be read.*copy is kept.*last step/);
    expect(store.get(UNREAD)).toBe(text);
  });

  /** The run that the page goes on with. */
  function resumed(): HandoverSession {
    const { kept } = recallRun();
    if (kept === null) throw new Error("nothing is kept");
    return resumedRun(kept, setupOf("dial-encoder"));
  }

  test("a change that fits no such lock: the run goes on from its last step", () => {
    const text = altered((kept) => {
      const { change, ...rest } = kept.underWay as { change: object };
      return { ...kept, underWay: { ...rest, change: { ...change, wanted: [1] } } };
    });
    const { told, change, run } = resumed();
    expect(told?.words).toMatch(/under way cannot be read.*copy is kept.*last step/);
    expect([change, run.steps.length]).toEqual([null, 1]);
    expect(store.get(UNREAD)).toBe(text);
  });

  test.each([
    ["its wheels too few", { slack: [1] }],
    ["numbers that are none", { meant: [] }],
  ])("a lock that cannot be, %s: a fresh run, with or without work under way", (_, wrong) => {
    for (const hasWork of [true, false]) {
      const text = altered(({ underWay, ...kept }) => {
        const doors = (kept.doors as { lock: object }[]).map((door) => ({ ...door, lock: { ...door.lock, ...wrong } }));
        const work = underWay as { door: object };
        return { ...kept, doors, ...(hasWork && { underWay: { ...work, door: doors[0] } }) };
      });
      const { told, run, setup } = resumed();
      expect(told?.words).toMatch(/^The handover .* cannot be read.*copy is kept/);
      expect([run.steps.length, setup.profile.id]).toEqual([0, "dial-encoder"]);
      expect([...store.values()].filter((one) => one === text).length).toBe(2);
    }
  });

  test("a dial farther than the mechanics resolve", () => {
    altered((kept) => {
      const doors = (kept.doors as { lock: object }[]).map((door) => ({ ...door, lock: { ...door.lock, dial: 1e12 } }));
      return { ...kept, doors };
    });
    expect(recallRun()).toMatchObject({ kept: null, problem: expect.stringMatching(/cannot be read.*copy is kept/) });
  });

  test("a run whose lock is not known after every step", () => {
    altered((kept) => ({ ...kept, doors: [] }));
    expect(recallRun()).toMatchObject({ kept: null, problem: expect.stringMatching(/cannot be read.*copy is kept/) });
  });

  test("what was put by before stays, and the same is put by once", () => {
    store.set(UNREAD, "put by before");
    store.set(KEY, "now");
    recallRun();
    recallRun();
    expect([...store]).toEqual([
      [UNREAD, "put by before"],
      [KEY, "now"],
      [`${UNREAD}.2`, "now"],
    ]);
  });

  test("where there is no room to put it by, it says so", () => {
    store.set(KEY, "now");
    vi.stubGlobal("localStorage", {
      getItem: (key: string) => store.get(key) ?? null,
      setItem: () => {
        throw new DOMException("full", "QuotaExceededError");
      },
    });
    const { problem } = recallRun();
    expect(problem).toMatch(/no room.*replaces it/);
    expect(problem).not.toMatch(/not lost/);
  });

  test("a whole run of a wrong shape, and one that cannot have happened", () => {
    for (const run of [
      "?",
      { ...JSON.parse(altered((kept) => kept)).run, events: [{ type: "bolt.thrown", at_ms: 0 }] },
    ]) {
      store.delete(UNREAD);
      const text = altered((kept) => ({ ...kept, run }));
      const { kept, problem } = recallRun();
      expect(kept).toBeNull();
      expect(problem).toMatch(/cannot be read.*copy is kept/);
      expect(store.get(UNREAD)).toBe(text);
    }
  });

  test("a run of before, without anything under way, is read without a word", () => {
    altered(({ underWay: _, ...kept }) => kept);
    expect(recallRun()).toMatchObject({ kept: { underWay: null }, problem: null });
  });
});

test("a browser that keeps nothing loses nothing but the resuming", () => {
  vi.stubGlobal("localStorage", {
    getItem: () => {
      throw new DOMException("denied", "SecurityError");
    },
  });
  const session = new HandoverSession(setupOf("three-wheel"), null, keepRun);
  expect(() => session.keepNow()).not.toThrow();
  expect(recallRun()).toEqual({ kept: null, mark: null, problem: null });
});

describe("what turned the dial of a run", () => {
  const ENCODER = describeSource("encoder", 100 / 2400, 0.012);

  test("is in the run, and still is after a reload", () => {
    const session = aligned("three-wheel");
    session.noteSource(ENCODER);
    session.noteSource();
    session.keepNow();
    const again = reloaded(session.setup);
    expect(again.recorded.sources).toEqual([ENCODER, SCREEN_SOURCE]);
    again.noteSource(ENCODER);
    again.act({ type: "combination.dialed", by: "trainee", opened: false }, 20);
    expect(again.recorded.sources).toEqual([ENCODER, SCREEN_SOURCE]);
  });

  test("is in it with what made its turns doubtful", () => {
    const session = aligned("three-wheel");
    session.noteSource(ENCODER);
    session.noteDoubt("sight-lost");
    session.keepNow();
    const again = reloaded(session.setup);
    expect(again.recorded).toMatchObject({ sources: [ENCODER], doubts: ["sight-lost"] });
    expect(again.turnedBy.forRecord).toEqual({ sources: [ENCODER], doubts: ["sight-lost"] });
    again.noteDoubt("gap");
    again.act({ type: "combination.dialed", by: "trainee", opened: false }, 20);
    expect(again.recorded.doubts).toEqual(["sight-lost", "gap"]);
  });

  /** The text of a run turned by an encoder, as this version keeps it, with other fields. */
  function keptWith(fields: object): HandoverSession {
    const session = aligned("three-wheel");
    session.noteSource(ENCODER);
    session.keepNow();
    const text = JSON.parse(store.get(KEY) ?? "");
    store.set(KEY, JSON.stringify({ ...text, run: { ...text.run, ...fields } }));
    return session;
  }

  test("has no doubts where a run was kept before runs had any", () => {
    const { setup } = keptWith({});
    expect(store.get(KEY)).not.toContain("doubts");
    const again = reloaded(setup);
    expect(again.turnedBy.forRecord).toEqual({ sources: [ENCODER] });
    expect(again.recorded).not.toHaveProperty("doubts");
  });

  test("has no doubts of the hands on the screen, and each once, whatever the text says", () => {
    expect(reloaded(keptWith({ sources: undefined, doubts: ["gap"] }).setup).turnedBy.forRecord).toEqual({});
    expect(reloaded(keptWith({ doubts: ["gap", "gap"] }).setup).turnedBy.forRecord.doubts).toEqual(["gap"]);
  });

  test.each([[["wind"]], [Array(9).fill("gap")], ["gap"]])(
    "is not read with doubts that there are not: %j",
    (doubts) => {
      keptWith({ doubts });
      expect(recallRun()).toMatchObject({ kept: null, problem: expect.stringMatching(/cannot be read/) });
    },
  );

  test("was the screen, where a run that was dialed before says nothing of it", () => {
    const session = aligned("three-wheel");
    session.act({ type: "combination.dialed", by: "trainee", opened: false }, 10);
    session.keepNow();
    const again = reloaded(session.setup);
    expect(again.recorded).not.toHaveProperty("sources");
    again.noteSource(ENCODER);
    again.act({ type: "combination.dialed", by: "trainee", opened: false }, 20);
    expect(again.recorded.sources).toEqual([SCREEN_SOURCE, ENCODER]);
  });
});
