import { describe, expect, test } from "vitest";
import type { ChangeState } from "../../../src/handover/change/changeInHand";
import { EncoderChange } from "../../../src/handover/change/encoderChange";
import { encoderChangeMachine } from "../../../src/handover/change/encoderChangeMachine";
import type { Combination } from "../../../src/lock/combination";
import type { DialEncoderProfile } from "../../../src/lock/profile";
import { shippedProfile } from "../../../src/lock/shippedProfiles";
import { DIAL_FACTS, makeOnDial } from "../../support/changeWays";
import { walkedChart } from "../../support/walkedChart";
import { openBy } from "./changeHands";
import { walkOnLock } from "./changeWalk";

const PRESENT = [43, 16, 58];
const WANTED = [27, 61, 34];

function encoder(): DialEncoderProfile {
  const profile = shippedProfile("dial-encoder");
  if (profile.kind !== "dial-encoder") throw new TypeError("not an encoder lock");
  return profile;
}

const profile = encoder();
const fresh = () => new EncoderChange(profile, PRESENT, WANTED, { dial: 0.4 });

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
  const walked = walkedChart(encoderChangeMachine, DIAL_FACTS);

  test("is walked through every state and every arrow, and none is drawn in vain", () => {
    process.stdout.write(
      `change on the dial: ${walked.states.length} states, ${walked.places} with memory, ${walked.arrows} arrows\n`,
    );
    expect(walked.states).toEqual(Object.keys(encoderChangeMachine.states).sort());
    expect([walked.untaken, walked.unused]).toEqual([[], []]);
  });

  test("comes on every path to the same on a real lock", { timeout: 30_000 }, () => {
    walkOnLock({ chart: encoderChangeMachine, fresh, make: makeOnDial, isTrue: TRUE_OF }, walked.paths);
  });
});

describe("what the lock is set to", () => {
  const changedBy = (first: Combination, second: Combination) => {
    const change = fresh();
    for (const type of ["present.opened", "button.pressed"] as const) makeOnDial(change, { type });
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
    makeOnDial(change, { type: "present.refused" });
    expect(change.attempt.memory.wrongTries).toBe(1);
    expect(change.act("pressButton")).toEqual({ facts: [], refusal: "bolt-out" });
  });
});
