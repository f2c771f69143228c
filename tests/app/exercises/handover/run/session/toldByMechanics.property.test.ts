import fc from "fast-check";
import { describe, expect, test, vi } from "vitest";
import { changeTo } from "../../../../../../src/app/exercises/handover/run/session/changeWork";
import type { RunSetup } from "../../../../../../src/app/exercises/handover/run/session/doorWork";
import { HandoverSession } from "../../../../../../src/app/exercises/handover/run/session/handoverSession";
import type { KeptRun } from "../../../../../../src/app/exercises/handover/run/session/keptRun";
import { ACT_GROUPS, type RunAct } from "../../../../../../src/app/exercises/handover/run/session/runActs";
import { dialBySimulation, turnBack } from "../../../../../../src/app/exercises/handover/run/session/simulatedHand";
import { idealMotion } from "../../../../../../src/dialing/idealMotion";
import { signOf } from "../../../../../../src/lock/dial";
import { shippedProfile } from "../../../../../../src/lock/shippedProfiles";

// A loaded machine must not make a property fail.
vi.setConfig({ testTimeout: 180_000 });

const ACTS = ACT_GROUPS.flatMap(({ acts }) => acts);

/** Something done at the door: an act by its place, a turn of the dial, or a change of the combination. */
type Deed = { readonly act: number } | { readonly turn: number } | keyof typeof WHOLE;

const shut = (session: HandoverSession, now: number) => void session.act({ type: "door.shut" }, now);
const straighten = ({ zeroing }: HandoverSession) => zeroing.turnRing(-zeroing.lock.indexError);

/** Things done in one go. */
const WHOLE = {
  change: (session: HandoverSession, now: number) => changeTo(session, session.drawOwn(), now),
  dial: (session: HandoverSession) => void dialed(session),
  straighten,
  shut,
  openThrowAndShut: (session: HandoverSession, now: number) => {
    straighten(session);
    dialed(session);
    turned(session, -18 * signOf(session.setup.profile.draw.turn));
    shut(session, now);
  },
} as const;

const deed: fc.Arbitrary<Deed> = fc.oneof(
  { weight: 8, arbitrary: fc.nat({ max: ACTS.length - 1 }).map((act) => ({ act })) },
  { weight: 3, arbitrary: fc.integer({ min: -450, max: 450 }).map((turn) => ({ turn })) },
  { weight: 3, arbitrary: fc.constantFrom({ turn: 18 }, { turn: -18 }) },
  { weight: 9, arbitrary: fc.constantFrom("dial", "straighten", "shut", "openThrowAndShut") },
  { weight: 1, arbitrary: fc.constant("change" as const) },
);

/** Turns the dial as a hand does, a little at a time. @returns whether the bolt came back at some moment */
function turned(session: HandoverSession, by: number): boolean {
  let came = false;
  for (let left = Math.abs(by); left > 1e-9; left -= 5) {
    session.turnBy(Math.sign(by) * Math.min(5, left), 0);
    came ||= session.lock.retraction === 1;
  }
  return came;
}

/** Dials the combination as written at the index, by hand. @returns whether the bolt came back at the end */
function dialed(session: HandoverSession): boolean {
  const { profile } = session.setup;
  turned(session, -signOf(profile.draw.turn) * 5.5 * profile.graduations);
  const path = idealMotion(profile, session.lock.meant, session.lock.hand.seen, [], 2);
  for (const stop of path.slice(1)) turned(session, stop - session.lock.hand.seen);
  return session.lock.retraction === 1;
}

/** A run whose every keeping is caught, so that it can be had a second time. */
function watched(setup: RunSetup) {
  let last: KeptRun | null = null;
  const session = new HandoverSession(setup, null, (kept) => {
    last = structuredClone(kept);
  });
  const again = () => {
    session.keepNow();
    return new HandoverSession(setup, last, () => undefined);
  };
  return { session, again };
}

function press(session: HandoverSession, act: RunAct | undefined, now: number): void {
  if (act?.isOffered?.(session) ?? true) act?.does(session, now);
}

function doDeed(session: HandoverSession, one: Deed, now: number): void {
  if (typeof one === "string") WHOLE[one](session, now);
  else if ("turn" in one) turned(session, one.turn);
  else press(session, ACTS[one.act], now);
  // A panel that was opened is left again: its work has tests of its own.
  if (session.activity !== "dial" && session.change === null) session.show("dial");
}

const TURN = /turning the dial ([\d.]+) graduations (left|right) opens it/;
/** How many claims of each kind were met: a property about claims that are never made shows nothing. */
const met = new Map<string, number>();
const meets = (claim: string) => met.set(claim, (met.get(claim) ?? 0) + 1);

/** Holds each claim of one sentence against the lock itself. */
const CLAIMS: readonly { readonly claim: RegExp; readonly holds: (words: string, door: Door) => void }[] = [
  {
    claim: TURN,
    holds: (words, { again }) => {
      const [, size = "", way = ""] = TURN.exec(words) ?? [];
      expect(turned(again(), (way === "left" ? 1 : -1) * (Number(size) + 0.2))).toBe(true);
    },
  },
  {
    claim: /turning the dial on does not open it/,
    holds: (_, { again, session: { setup } }) => {
      const { draw, graduations } = setup.profile;
      expect(turned(again(), signOf(draw.turn) * graduations)).toBe(false);
    },
  },
  {
    claim: /the door is not locked/,
    holds: (_, { session }) => expect(session.lock.retraction).toBeGreaterThan(0),
  },
  {
    claim: /Dialed as written, it opens/,
    holds: (_, { again }) => expect(dialed(again())).toBe(true),
  },
  {
    claim: /Dialed as written, it does not open|You are (still )?locked out/,
    holds: (_, { again }) => expect(dialed(again())).toBe(false),
  },
  {
    claim: /small turn/,
    holds: () => expect.unreachable("nothing is said of a small turn without its size"),
  },
];

interface Door {
  readonly session: HandoverSession;
  readonly again: () => HandoverSession;
}

function holdAgainstLock(door: Door): void {
  const { session } = door;
  const sentences = [session.told?.words ?? "", ...(session.told?.consequences ?? [])];
  for (const words of sentences)
    for (const { claim, holds } of CLAIMS)
      if (claim.test(words)) {
        meets(claim.source);
        holds(words, door);
      }
}

/** What chart and lock say of the same bolt, and of the way in. */
function holdChartAgainstLock({ session, again }: Door): void {
  const { bolt, door } = session.run.situation;
  const { retraction } = session.lock;
  if (bolt === "retracted") expect(retraction).toBeGreaterThan(0);
  else expect(retraction).toBeLessThan(1);
  if (door === "shut" && session.lock.isHeld) expect(bolt).toBe("retracted");
  const isLockedOut = session.danger?.sign === "locked out";
  if (isLockedOut) meets("locked out");
  expect(isLockedOut && dialed(again())).toBe(false);
}

/** Does something, and holds what is told then against the lock. A change by hand is another test's. */
function doAndHold(door: Door, one: Deed, now: number): void {
  const { session } = door;
  if (session.change !== null) return;
  const before = session.told;
  doDeed(session, one, now);
  holdChartAgainstLock(door);
  if (session.told !== before) holdAgainstLock(door);
}

/** What is always done, whatever chance brings: each of them meets a claim about the lock. */
const ALWAYS: readonly (readonly Deed[])[] = [
  ["shut"],
  ["straighten", "dial", "shut"],
  ["openThrowAndShut"],
  ["straighten", "shut"],
  // The bolt comes back, and goes out to the very place where the draw began.
  ["openThrowAndShut", { turn: -18 }, { turn: 15 }],
  ["openThrowAndShut", { turn: -18 }, { turn: 15 }, { turn: -15 }, { turn: 18 }],
];

const SETUPS = ["two-wheel", "three-wheel", "dial-encoder"].flatMap((id) =>
  [true, false].map((isHandsOff) => ({ id, isHandsOff })),
);

describe.each(SETUPS)("$id, a simulated hand: $isHandsOff", ({ id, isHandsOff }) => {
  test("whatever is done, every word about the lock is true of the lock, by dialing it", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 900 }), fc.array(deed, { maxLength: 16 }), (seed, deeds) => {
        const door = watched({ profile: shippedProfile(id), seed, isHandsOff });
        deeds.forEach((one, k) => void doAndHold(door, one, 1000 * k));
      }),
      { numRuns: 30, examples: ALWAYS.map((deeds) => [7, [...deeds]]) },
    );
  });
});

test("a fresh lock whose door is shut at once is told truly: no turn of its dial opens it", () => {
  const { session, again } = watched({ profile: shippedProfile("three-wheel"), seed: 7, isHandsOff: true });
  session.act({ type: "door.shut" }, 0);
  expect(turned(again(), -100)).toBe(false);
  expect(session.told?.consequences.join(" ")).toContain("turning the dial on does not open it");
  expect(session.told?.consequences.join(" ")).not.toMatch(/(?<!not )opens it/);
});

test("a lock thrown and not spun off is told truly: a turn of that size opens it", () => {
  const { session, again } = watched({ profile: shippedProfile("three-wheel"), seed: 7, isHandsOff: true });
  session.zeroing.turnRing(-session.zeroing.lock.indexError);
  dialBySimulation(session, "trainee", 0);
  turnBack(session, "bolt.thrown", 0);
  session.act({ type: "door.shut" }, 0);
  const told = session.told?.consequences.join(" ") ?? "";
  const [, size = ""] = TURN.exec(told) ?? [];
  expect(turned(again(), -(Number(size) + 0.2))).toBe(true);
  expect(turned(again(), -(Number(size) - 0.2))).toBe(false);
});

test("a bolt that comes back by turning on is no proof", () => {
  const { session } = watched({ profile: shippedProfile("three-wheel"), seed: 7, isHandsOff: false });
  session.zeroing.turnRing(-session.zeroing.lock.indexError);
  expect(dialed(session)).toBe(true);
  const dialings = () => session.run.steps.filter(({ event }) => event.type === "combination.dialed").length;
  expect(dialings()).toBe(1);
  turned(session, 18);
  expect(turned(session, -40)).toBe(true);
  expect(dialings()).toBe(1);
  expect(session.told?.words).toContain("That proves nothing");
});

test("a bolt that is back is not said to have stayed: the lock opened", () => {
  const { session } = watched({ profile: shippedProfile("two-wheel"), seed: 1, isHandsOff: false });
  WHOLE.openThrowAndShut(session, 0);
  turned(session, -18);
  expect(session.lock.retraction).toBe(1);
  press(
    session,
    ACTS.find(({ label }) => label === "It does not open"),
    0,
  );
  expect(session.told?.words).toBe("The bolt is back: the lock opened.");
  expect(session.run.situation.bolt).toBe("retracted");
});

test("a bolt part of the way back stays there when one comes back from the ring", () => {
  const { session } = watched({ profile: shippedProfile("three-wheel"), seed: 1, isHandsOff: false });
  straighten(session);
  dialBySimulation(session, "second", 0);
  turned(session, 1);
  const { retraction } = session.lock;
  expect(retraction).toBeLessThan(1);
  for (const by of [0, 3]) {
    session.show("ring");
    session.zeroing.turnBy(by, 0);
    session.show("dial");
    expect(session.lock.retraction).toBeCloseTo(retraction, 9);
  }
});

test("a door shut on a bolt that is back is told truly: it is not locked", () => {
  const door = watched({ profile: shippedProfile("three-wheel"), seed: 7, isHandsOff: true });
  door.session.zeroing.turnRing(-door.session.zeroing.lock.indexError);
  dialBySimulation(door.session, "trainee", 0);
  door.session.act({ type: "door.shut" }, 0);
  expect(door.session.told?.consequences.join(" ")).toContain("the door is not locked");
  holdAgainstLock(door);
});

test("the claims above were met", () => {
  for (const claim of ["locked out", TURN.source, "turning the dial on does not open it", "the door is not locked"])
    expect(met.get(claim) ?? 0, claim).toBeGreaterThan(0);
});
