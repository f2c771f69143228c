import { createTestModel } from "@xstate/test";
import { describe, expect, test } from "vitest";
import { createActor, type SnapshotFrom } from "xstate";
import type { EncoderChangeFact } from "../../../src/handover/change/changeFact";
import { EncoderChange } from "../../../src/handover/change/encoderChange";
import {
  type EncoderChangeEvent,
  type EncoderChangeState,
  encoderChangeMachine,
} from "../../../src/handover/change/encoderChangeMachine";
import type { Combination } from "../../../src/lock/combination";
import type { DialEncoderProfile } from "../../../src/lock/profile";
import { shippedProfile } from "../../../src/lock/shippedProfiles";
import { drawnArrows } from "../../support/drawnArrows";
import { openBy } from "./changeHands";

type Snapshot = SnapshotFrom<typeof encoderChangeMachine>;

const EVENTS: readonly EncoderChangeEvent[] = [
  { type: "present.opened" },
  { type: "present.refused" },
  { type: "present.closed" },
  { type: "button.pressed" },
  { type: "entry.taken" },
  { type: "entry.refused", number: 0 },
  { type: "entry.refused", number: 2 },
  { type: "entries.agreed" },
  { type: "entries.differed" },
  { type: "proof.opened" },
  { type: "proof.refused" },
  { type: "door.shut" },
  { type: "change.restarted" },
];
const PRESENT = [43, 16, 58];
const WANTED = [27, 61, 34];

function encoder(): DialEncoderProfile {
  const profile = shippedProfile("dial-encoder");
  if (profile.kind !== "dial-encoder") throw new TypeError("not an encoder lock");
  return profile;
}

const profile = encoder();
const off = (numbers: Combination, by: number) => numbers.map((number, k) => (k === 1 ? number + by : number));
const fresh = () => new EncoderChange(profile, PRESENT, WANTED, { dial: 0.4 });

function act(change: EncoderChange, event: EncoderChangeEvent): EncoderChangeFact[] {
  const facts: EncoderChangeFact[] = [];
  const hand = {
    get dial() {
      return change.dial;
    },
    turnBy: (by: number) => facts.push(...change.turnBy(by).change),
  };
  const throwBolt = () => change.retraction > 0 && hand.turnBy(profile.draw.travel + 30);
  const dial = (numbers: Combination) => {
    // A run that goes on the first way is no fresh start.
    throwBolt();
    hand.turnBy(-40);
    openBy(hand, profile, numbers);
  };
  const acts: Partial<Record<EncoderChangeEvent["type"], () => unknown>> = {
    "present.opened": () => dial(PRESENT),
    "present.refused": () => dial(off(PRESENT, 5)),
    "present.closed": throwBolt,
    "button.pressed": () => facts.push(...change.pressButton().facts),
    "entry.taken": () => dial(WANTED),
    "entry.refused": () => {
      if (event.type !== "entry.refused" || event.number === 0) {
        for (const by of [-40, 350, -250, 150, -10, 20]) hand.turnBy(by);
      } else for (const by of [-40, 350, -90, 150, -20]) hand.turnBy(by);
    },
    "entries.agreed": () => dial(off(WANTED, 1)),
    "entries.differed": () => dial(off(WANTED, 2)),
    "proof.opened": () => dial(WANTED),
    "proof.refused": () => dial(off(WANTED, 5)),
    "door.shut": () => facts.push(...change.shutDoor()),
  };
  acts[event.type]?.();
  return facts;
}

const isTaking = (change: EncoderChange) => change.hand !== change.attempt && change.proof === null;

/** What must be true of the lock itself in each state. */
const TRUE_OF: Readonly<Record<EncoderChangeState, (change: EncoderChange) => boolean>> = {
  dialingPresent: (change) => change.proof === null && !isTaking(change) && change.retraction === 0,
  presentRefused: (change) => change.presentRefused > 0 && change.retraction === 0,
  presentOpen: (change) => change.retraction === 1 && !isTaking(change),
  firstEntry: (change) => isTaking(change) && change.firstEntry === null && change.differed === null,
  secondEntry: (change) => isTaking(change) && change.firstEntry !== null,
  entriesDiffer: (change) => isTaking(change) && change.firstEntry === null && change.differed !== null,
  proving: (change) => change.proof !== null && change.proofs < 3,
  proofRefused: (change) => change.proof !== null && change.proof.refused > 0 && change.retraction === 0,
  proved: (change) => change.isProved,
  doorShut: (change) => change.isDoorShut,
};

const keyOf = ({ value, context }: Snapshot) => JSON.stringify([value, context]);
const takenIn = (state: unknown) => EVENTS.filter((event) => (state as Snapshot).can(event));
const walk = {
  serializeState: (state: unknown, event: unknown, from: unknown) =>
    `${keyOf(state as Snapshot)} by ${JSON.stringify(event)} from ${from ? keyOf(from as Snapshot) : "nowhere"}` as never,
};

describe("the chart of a change on the dial", () => {
  const paths = createTestModel(encoderChangeMachine, walk).getShortestPaths({ ...walk, events: takenIn as never });

  test("its paths reach every state and take every arrow that is drawn", () => {
    const steps = paths.flatMap((path) =>
      path.steps.slice(1).map(({ event }, i) => ({ from: (path.steps[i] ?? path).state as Snapshot, event })),
    );
    const reached = new Set(
      paths.flatMap(({ state, steps: some }) => [state, ...some.map((step) => step.state)]).map((s) => s.value),
    );
    expect([...reached].sort()).toEqual(Object.keys(encoderChangeMachine.states).sort());
    const drawn = drawnArrows(encoderChangeMachine);
    const arrows = drawn.size;
    for (const { from, event } of steps) {
      for (const arrow of encoderChangeMachine.getTransitionData(from, event as EncoderChangeEvent) ?? [])
        drawn.delete(arrow);
    }
    process.stdout.write(`change on the dial: ${reached.size} states, ${arrows} arrows, ${paths.length} paths\n`);
    expect([...drawn.values()]).toEqual([]);
  });

  test("every path is one that a hand can make on a real lock", { timeout: 30_000 }, async () => {
    for (const path of paths) {
      let change = fresh();
      const told = createActor(encoderChangeMachine).start();
      const make = (step: { readonly event: object }) => {
        const event = step.event as EncoderChangeEvent;
        if (event.type === "change.restarted") change = fresh();
        // A bolt thrown on the way to another dialing is the engine's own news, and the chart has it already.
        else
          expect(act(change, event).filter(({ type }) => type !== "present.closed" || event.type === type)).toEqual([
            event,
          ]);
        told.send(event);
      };
      await path.test({
        events: Object.fromEntries(EVENTS.map(({ type }) => [type, make])),
        states: {
          "*": (state) => {
            const { value } = told.getSnapshot();
            expect(keyOf(told.getSnapshot())).toBe(keyOf(state as Snapshot));
            expect(TRUE_OF[value](change), value).toBe(true);
          },
        },
      });
    }
  });
});

describe("what the lock is set to", () => {
  const changedBy = (first: Combination, second: Combination) => {
    const change = fresh();
    act(change, { type: "present.opened" });
    change.pressButton();
    const facts: EncoderChangeFact[] = [];
    const hand = {
      get dial() {
        return change.dial;
      },
      turnBy: (by: number) => facts.push(...change.turnBy(by).change),
    };
    for (const numbers of [first, second]) {
      hand.turnBy(50);
      hand.turnBy(-20);
      openBy(hand, profile, numbers);
    }
    return { change, facts: facts.map(({ type }) => type) };
  };

  test("the graduations nearest to the stops of the first dialing", () => {
    const { change, facts } = changedBy([27.3, 60.6, 34.4], [27, 61, 34]);
    expect(facts).toEqual(["entry.taken", "entries.agreed"]);
    expect(change.setCombination).toEqual([27, 61, 34]);
  });

  test("nothing new where the two differ by more than the stop tolerance", () => {
    const { change, facts } = changedBy([27, 61, 34], [27, 63, 34]);
    expect(facts).toEqual(["entry.taken", "entries.differed"]);
    expect([change.setCombination, change.differed?.[1]]).toEqual([PRESENT, [27, 63, 34]]);
  });

  test("a wrong present combination is a wrong try", () => {
    const change = fresh();
    act(change, { type: "present.refused" });
    expect(change.attempt.memory.wrongTries).toBe(1);
    expect(change.pressButton()).toEqual({ facts: [], refusal: "bolt-out" });
  });
});
