import { describe, expect, test } from "vitest";
import { createActor } from "xstate";
import { dialingMachine } from "../../../src/dialing/dialingMachine";
import { HandSession } from "../../../src/dialing/hand/handSession";
import { changeAdvice } from "../../../src/handover/change/changeAdvice";
import type { ChangeAct, ChangeEvent } from "../../../src/handover/change/changeInHand";
import type { KeyedProfile } from "../../../src/handover/change/changeProfile";
import { PackChange } from "../../../src/handover/change/packChange";
import { dialTo, KEYED } from "./changeHands";

/** A change under a hand that is told what to do. */
function underHand(profile: KeyedProfile, wanted: readonly number[]) {
  const change = new PackChange(profile, profile.asSet ?? [], [...wanted]);
  const chart = createActor(dialingMachine(profile)).start();
  const hand = new HandSession<ChangeEvent>(change, { chart });
  const turned = {
    get dial() {
      return change.dial;
    },
    turnBy: (by: number) => hand.turnBy(by, 0),
  };
  return {
    change,
    dial: (numbers: readonly number[], errors: readonly number[] = []) =>
      dialTo(turned, profile, [...numbers], profile.changing.index, errors),
    act: (act: ChangeAct) => hand.did(change.act(act).facts),
    said: (help: "full" | "counts" | "silent" = "full") =>
      changeAdvice(change, chart.getSnapshot().value, help)?.say ?? "",
  };
}

describe.each(KEYED)("$id", (profile) => {
  const wanted = (profile.asSet ?? []).map((number, k) => (number + 9 + 4 * k) % 100);

  test("whoever does what is said, in order, changes the combination", () => {
    const { change, dial, act, said } = underHand(profile, wanted);
    expect(said()).toMatch(/^Dial current, to the changing index: turn (left|right), at least/);
    dial(change.present);
    expect(said()).toBe("Every wheel is at the key port. Insert the change key.");
    act("insertKey");
    expect(said()).toBe("Turn the key.");
    act("turnKey");
    expect(said()).toMatch(/^Dial new, to the changing index/);
    dial(wanted);
    expect(said()).toBe("The new combination is dialed. Turn the key back.");
    act("turnKeyBack");
    expect(said()).toBe("Remove the key.");
    act("withdrawKey");
    expect(said()).toMatch(/^Prove it at the opening index: turn (left|right), at least/);
    expect(change.setCombination).toEqual(wanted);
  });

  test("a miss is told before the key can spoil anything, and nothing is told in silence", () => {
    const { change, dial, act, said } = underHand(profile, wanted);
    dial(change.present, [4]);
    expect(said()).toMatch(/^This wheel will not line up\. Start over: turn/);
    expect(said("counts")).not.toMatch(/right|Start over/);
    expect(said("silent")).toBe("");
    act("insertKey");
    expect(said()).toBe("Do not turn the key. Remove it.");
    expect(said("counts")).toBe("");
  });
});
