import { describe, expect, test } from "vitest";
import type { ChangeFact } from "../../../src/handover/change/changeFact";
import type { ChangeState } from "../../../src/handover/change/changeInHand";
import { EncoderChange } from "../../../src/handover/change/encoderChange";
import { encoderChangeMachine } from "../../../src/handover/change/encoderChangeMachine";
import type { Combination } from "../../../src/lock/combination";
import type { DialEncoderProfile } from "../../../src/lock/profile";
import { shippedProfile } from "../../../src/lock/shippedProfiles";
import { walkedChart } from "../../support/walkedChart";
import { openBy } from "./changeHands";
import { ACT_OF, walkOnLock } from "./changeWalk";

const EVENTS: readonly ChangeFact[] = [
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

/** Makes a fact happen by dial, button and door. */
function make(change: EncoderChange, fact: ChangeFact): void {
  const throwBolt = () => change.retraction > 0 && change.turnBy(profile.draw.travel + 30);
  const dial = (numbers: Combination) => {
    // A run that goes on the first way is no fresh start.
    throwBolt();
    change.turnBy(-40);
    openBy(change, profile, numbers);
  };
  const ways: Partial<Record<ChangeFact["type"], () => unknown>> = {
    "present.opened": () => dial(PRESENT),
    "present.refused": () => dial(off(PRESENT, 5)),
    "present.closed": throwBolt,
    "entry.taken": () => dial(WANTED),
    "entry.refused": () => {
      const tooFew = fact.type === "entry.refused" && fact.number > 0;
      for (const by of tooFew ? [-40, 350, -90, 150, -20] : [-40, 350, -250, 150, -10, 20]) change.turnBy(by);
    },
    "entries.agreed": () => dial(off(WANTED, 1)),
    "entries.differed": () => dial(off(WANTED, 2)),
    "proof.opened": () => dial(WANTED),
    "proof.refused": () => dial(off(WANTED, 5)),
  };
  ways[fact.type]?.();
  const act = ACT_OF[fact.type];
  if (act !== undefined) expect(change.act(act).refusal, act).toBeNull();
}

const isTaking = (change: EncoderChange) => change.hand !== change.attempt && change.proof === null;

const TRUE_OF: Readonly<Partial<Record<ChangeState, (change: EncoderChange) => boolean>>> = {
  dialingPresent: (change) => change.proof === null && !isTaking(change) && change.retraction === 0,
  presentRefused: (change) => change.presentRefused > 0 && change.retraction === 0,
  presentOpen: (change) => change.retraction === 1 && !isTaking(change),
  firstEntry: (change) => isTaking(change) && change.firstEntry === null && change.differed === null,
  secondEntry: (change) => isTaking(change) && change.firstEntry !== null,
  entriesDiffer: (change) => isTaking(change) && change.firstEntry === null && change.differed !== null,
  proving: (change) => change.proof !== null,
  proofRefused: (change) => change.proof !== null && change.proof.refused > 0 && change.retraction === 0,
  proved: (change) => change.proof !== null && change.proof.opened >= 3,
  doorShut: () => true,
};

describe("the chart of a change on the dial", () => {
  const walked = walkedChart(encoderChangeMachine, EVENTS);

  test("is walked through every state and every arrow, and none is drawn in vain", () => {
    process.stdout.write(
      `change on the dial: ${walked.states.length} states, ${walked.places} with memory, ${walked.arrows} arrows\n`,
    );
    expect(walked.states).toEqual(Object.keys(encoderChangeMachine.states).sort());
    expect([walked.untaken, walked.unused]).toEqual([[], []]);
  });

  test("comes on every path to the same on a real lock", { timeout: 30_000 }, () => {
    walkOnLock({ chart: encoderChangeMachine, fresh, make, isTrue: TRUE_OF }, walked.paths);
  });
});

describe("what the lock is set to", () => {
  const changedBy = (first: Combination, second: Combination) => {
    const change = fresh();
    for (const type of ["present.opened", "button.pressed"] as const) make(change, { type });
    const states = [first, second].map((numbers) => {
      change.turnBy(50);
      change.turnBy(-20);
      openBy(change, profile, numbers);
      return change.state;
    });
    return { change, states };
  };

  test("the graduations nearest to the stops of the first dialing", () => {
    const { change, states } = changedBy([27.3, 60.6, 34.4], [27, 61, 34]);
    expect(states).toEqual(["secondEntry", "proving"]);
    expect(change.setCombination).toEqual([27, 61, 34]);
  });

  test("nothing new where the two differ by more than the stop tolerance", () => {
    const { change, states } = changedBy([27, 61, 34], [27, 63, 34]);
    expect(states).toEqual(["secondEntry", "entriesDiffer"]);
    expect([change.setCombination, change.differed?.[1]]).toEqual([PRESENT, [27, 63, 34]]);
  });

  test("a wrong present combination is a wrong try", () => {
    const change = fresh();
    make(change, { type: "present.refused" });
    expect(change.attempt.memory.wrongTries).toBe(1);
    expect(change.act("pressButton")).toEqual({ facts: [], refusal: "bolt-out" });
  });
});
