import { describe, expect, test } from "vitest";
import { type ActorRefFrom, createActor } from "xstate";
import { dialingMachine } from "../../../src/dialing/dialingMachine";
import { changeAdvice } from "../../../src/handover/change/changeAdvice";
import { PackChange } from "../../../src/handover/change/packChange";
import { packChangeMachine } from "../../../src/handover/change/packChangeMachine";
import type { Combination } from "../../../src/lock/combination";
import type { Graduations } from "../../../src/lock/dial";
import { dialTo, KEYED } from "./changeHands";

/** A change with its two charts, as a screen keeps them. */
class Guided {
  readonly change: PackChange;
  private readonly chart: ActorRefFrom<typeof packChangeMachine>;
  private readonly dialer: ActorRefFrom<ReturnType<typeof dialingMachine>>;

  constructor(profile: (typeof KEYED)[number], wanted: Combination) {
    this.change = new PackChange(profile, profile.asSet ?? [], wanted);
    this.chart = createActor(packChangeMachine).start();
    this.dialer = createActor(dialingMachine(profile)).start();
  }

  get dial(): Graduations {
    return this.change.dial;
  }

  turnBy(by: Graduations): void {
    const before = this.change.hand;
    const { dialing, change } = this.change.turnBy(by);
    for (const fact of dialing) this.dialer.send(fact);
    for (const fact of change) this.chart.send(fact);
    if (this.change.hand !== before) this.dialer.send({ type: "attempt.restarted" });
  }

  act(act: "insertKey" | "turnKey" | "turnKeyBack" | "withdrawKey"): void {
    const before = this.change.hand;
    for (const fact of this.change[act]().facts) this.chart.send(fact);
    if (this.change.hand !== before) this.dialer.send({ type: "attempt.restarted" });
  }

  say(help: "full" | "counts" | "silent" = "full"): string {
    const state = this.chart.getSnapshot().value;
    const dialing = this.dialer.getSnapshot().value;
    return changeAdvice({ change: this.change, state, dialing }, help)?.say ?? "";
  }
}

describe.each(KEYED)("$id", (profile) => {
  const wanted = (profile.asSet ?? []).map((number, k) => (number + 9 + 4 * k) % 100);
  const { index } = profile.changing;

  test("whoever does what is said, in order, changes the combination", () => {
    const guided = new Guided(profile, wanted);
    expect(guided.say()).toMatch(/^Dial current, to the changing index: turn (left|right), at least/);
    dialTo(guided, profile, guided.change.present, index);
    expect(guided.say()).toBe("Every wheel is at the key port. Insert the change key.");
    guided.act("insertKey");
    expect(guided.say()).toBe("Turn the key.");
    guided.act("turnKey");
    expect(guided.say()).toMatch(/^Dial new, to the changing index/);
    dialTo(guided, profile, wanted, index);
    expect(guided.say()).toBe("The new combination is dialed. Turn the key back.");
    guided.act("turnKeyBack");
    expect(guided.say()).toBe("Remove the key.");
    guided.act("withdrawKey");
    expect(guided.say()).toMatch(/^Prove it at the opening index: turn (left|right), at least/);
    expect(guided.change.setCombination).toEqual(wanted);
  });

  test("a miss is told before the key can spoil anything, and nothing is told in silence", () => {
    const guided = new Guided(profile, wanted);
    const { present } = guided.change;
    dialTo(guided, profile, present, index, [4]);
    expect(guided.say()).toMatch(/^This wheel will not line up\. Start over: turn/);
    expect(guided.say("counts")).not.toMatch(/right|Start over/);
    expect(guided.say("silent")).toBe("");
    guided.act("insertKey");
    expect(guided.say()).toBe("Do not turn the key. Remove it.");
    expect(guided.say("counts")).toBe("");
  });
});
