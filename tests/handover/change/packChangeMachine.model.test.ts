import { createTestModel } from "@xstate/test";
import { expect, test } from "vitest";
import { createActor, type SnapshotFrom } from "xstate";
import type { PackChangeFact } from "../../../src/handover/change/changeFact";
import { PackChange } from "../../../src/handover/change/packChange";
import {
  type PackChangeEvent,
  type PackChangeState,
  packChangeMachine,
} from "../../../src/handover/change/packChangeMachine";
import type { Combination } from "../../../src/lock/combination";
import { drawnArrows } from "../../support/drawnArrows";
import { dialTo, KEYED, openBy } from "./changeHands";

type Snapshot = SnapshotFrom<typeof packChangeMachine>;

const EVENTS: readonly PackChangeEvent[] = [
  { type: "present.stands" },
  { type: "present.left" },
  { type: "key.inserted" },
  { type: "key.turned" },
  { type: "pack.spoiled", numbers: [], errors: [] },
  { type: "new.stands" },
  { type: "new.left" },
  { type: "key.turnedBack" },
  { type: "key.withdrawn" },
  { type: "change.again" },
  { type: "proof.opened" },
  { type: "proof.refused" },
  { type: "door.shut" },
  { type: "change.restarted" },
];

const takenIn = (state: unknown) => EVENTS.filter((event) => (state as Snapshot).can(event));

const keyOf = ({ value, context }: Snapshot) => JSON.stringify([value, context]);

const isAtPort = ({ keyed }: PackChange) => keyed.unaligned().length === 0;
const isNewSet = ({ keyed, wanted, profile }: PackChange) =>
  keyed.hubErrors(wanted).every((error, k) => Math.abs(error) <= (profile.wheelPack.gateTolerance[k] ?? 0));

/** What must be true of the lock itself in each state, read off its mechanics. */
const TRUE_OF: Readonly<Record<PackChangeState, (change: PackChange) => boolean>> = {
  dialingPresent: (change) => change.keyed.key === "out" && !isAtPort(change) && change.proof === null,
  presentStands: (change) => change.keyed.key === "out" && isAtPort(change) && change.proof === null,
  keyIn: (change) => change.keyed.key === "in" && isAtPort(change),
  keyForced: (change) => change.keyed.key === "in" && !isAtPort(change),
  dialingNew: (change) => change.keyed.key === "turned" && !isNewSet(change),
  newStands: (change) => change.keyed.key === "turned" && isNewSet(change),
  keyBack: (change) => change.keyed.key === "in" && isAtPort(change) && change.record.newHand !== null,
  proving: (change) => change.proof !== null && change.proofs < 3,
  proofRefused: (change) => change.proof !== null && change.proof.refused > 0 && change.retraction === 0,
  proved: (change) => change.isProved,
  spoiled: (change) => change.isSpoiled,
  doorShut: (change) => change.isDoorShut && change.keyed.key === "out",
};

/** One lock under a hand that makes any fact happen on demand. */
class Bench {
  private change: PackChange;
  /** Facts that came along with the one asked for. */
  private pending: PackChangeFact[] = [];
  private readonly profile;
  private readonly present: Combination;

  constructor(profile: (typeof KEYED)[number]) {
    this.profile = profile;
    this.present = profile.asSet ?? [];
    this.change = this.fresh();
  }

  make(event: PackChangeEvent): void {
    const waiting = this.pending;
    this.pending = [];
    if (waiting.some(({ type }) => type === event.type)) return;
    if (event.type === "change.restarted") {
      this.change = this.fresh();
      return;
    }
    const facts = this.act(event);
    const at = facts.findIndex(({ type }) => type === event.type);
    expect(at, `${event.type} among ${JSON.stringify(facts)}`).toBeGreaterThanOrEqual(0);
    // What came before on the way is over again by now, or the chart would differ.
    this.pending = facts.slice(at + 1);
  }

  /** Whether the lock is what a state says it is; facts that the chart has not been told yet speak for themselves. */
  isIn(state: PackChangeState): boolean {
    return this.pending.some(({ type }) => type.endsWith(".stands")) || TRUE_OF[state](this.change);
  }

  private fresh() {
    const wanted = this.present.map((number, k) => (number + 9 + 4 * k) % 100);
    return new PackChange(this.profile, this.present, wanted);
  }

  private act(event: PackChangeEvent): PackChangeFact[] {
    const { change, profile } = this;
    const facts: PackChangeFact[] = [];
    const hand = {
      get dial() {
        return change.dial;
      },
      turnBy: (by: number) => facts.push(...change.turnBy(by).change),
    };
    const index = profile.changing.index;
    const throwBolt = () => change.retraction > 0 && hand.turnBy(profile.graduations);
    const acts: Partial<Record<PackChangeEvent["type"], () => unknown>> = {
      "present.stands": () => dialTo(hand, profile, change.hand.combination, index),
      "present.left": () => hand.turnBy(5),
      "key.inserted": () => facts.push(...change.insertKey().facts),
      "key.turned": () => facts.push(...change.turnKey().facts),
      "pack.spoiled": () => facts.push(...change.turnKey().facts),
      "new.stands": () => dialTo(hand, profile, change.wanted, index),
      "new.left": () => hand.turnBy(5),
      "key.turnedBack": () => facts.push(...change.turnKeyBack().facts),
      "key.withdrawn": () => facts.push(...change.withdrawKey().facts),
      "change.again": () => {
        hand.turnBy(profile.graduations + 40);
        facts.push(...change.changeAgain());
      },
      "proof.opened": () => {
        throwBolt();
        openBy(hand, profile, change.setCombination ?? []);
      },
      "proof.refused": () => {
        throwBolt();
        openBy(
          hand,
          profile,
          (change.setCombination ?? []).map((number, k) => (k === 0 ? (number + 33) % 100 : number)),
        );
      },
      "door.shut": () => {
        // The key must be out first; a spoiled pack gives it back.
        change.turnKeyBack();
        change.withdrawKey();
        facts.push(...change.shutDoor());
      },
    };
    acts[event.type]?.();
    // A number stands under the hand for a moment on many ways; only where a move ends does it matter.
    return facts.filter(
      ({ type }, i) => !(type.endsWith(".stands") && facts[i + 1]?.type === type.replace("stands", "left")),
    );
  }
}

const walk = {
  serializeState: (state: unknown, event: unknown, from: unknown) =>
    `${keyOf(state as Snapshot)} by ${JSON.stringify(event)} from ${from ? keyOf(from as Snapshot) : "nowhere"}` as never,
};
const paths = createTestModel(packChangeMachine, walk).getShortestPaths({ ...walk, events: takenIn as never });
const steps = paths.flatMap((path) =>
  path.steps.slice(1).map(({ event }, i) => ({
    from: (path.steps[i] ?? path).state as Snapshot,
    event: event as PackChangeEvent,
  })),
);

test("the paths reach every state and take every arrow that is drawn", () => {
  const reached = new Set(
    paths.flatMap((path) => [path.state, ...path.steps.map(({ state }) => state)]).map(({ value }) => value),
  );
  expect([...reached].sort()).toEqual(Object.keys(packChangeMachine.states).sort());
  const drawn = drawnArrows(packChangeMachine);
  const arrows = drawn.size;
  for (const { from, event } of steps) {
    for (const arrow of packChangeMachine.getTransitionData(from, event) ?? []) drawn.delete(arrow);
  }
  process.stdout.write(`change with a key: ${reached.size} states, ${arrows} arrows, ${paths.length} paths\n`);
  expect([...drawn.values()]).toEqual([]);
});

test.each(KEYED)("every path is one that a hand can make on a real $id", { timeout: 30_000 }, async (profile) => {
  for (const path of paths) {
    const bench = new Bench(profile);
    const told = createActor(packChangeMachine).start();
    const make = (step: { readonly event: object }) => {
      bench.make(step.event as PackChangeEvent);
      told.send(step.event as PackChangeEvent);
    };
    await path.test({
      events: Object.fromEntries(EVENTS.map(({ type }) => [type, make])),
      states: {
        "*": (state) => {
          const { value } = told.getSnapshot();
          expect(keyOf(told.getSnapshot())).toBe(keyOf(state as Snapshot));
          expect(bench.isIn(value), value).toBe(true);
        },
      },
    });
  }
});
