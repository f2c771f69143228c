import { createTestModel } from "@xstate/test";
import { describe, expect, test } from "vitest";
import { initialTransition, type SnapshotFrom, transition } from "xstate";
import { handoverMachine } from "../../../../src/handover/run/chart/handoverMachine";
import { HandoverRun } from "../../../../src/handover/run/handoverRun";
import type { HandoverEvent } from "../../../../src/handover/run/rules/handoverEvent";
import { hindranceOf } from "../../../../src/handover/run/rules/hindrances";
import { REGIONS, type Region, type Situation } from "../../../../src/handover/run/rules/situation";
import { shippedProfile } from "../../../../src/lock/shippedProfiles";
import { cleanSteps, DOOR_TO_FIT, eventsOf, fitted } from "../../../support/handoverEvents";
import { plainStep } from "../../../support/plainHandover";

const PROFILES = { "wheel-pack": shippedProfile("three-wheel"), "dial-encoder": shippedProfile("dial-encoder") };

type Machine = ReturnType<typeof handoverMachine>;
type Snapshot = SnapshotFrom<Machine>;
type Kind = Parameters<typeof handoverMachine>[0];

/** Part of the duty, walked to the end: the regions told apart, the events that may come, and what was done before. */
interface Walk {
  readonly name: string;
  readonly kind: Kind;
  /** Whether the run begins with the lock in its tray. */
  readonly isToFit?: boolean;
  readonly done: readonly HandoverEvent[];
  readonly events: readonly HandoverEvent[];
  /** Regions that bear on each other; the rest of the situation follows and is not told apart. */
  readonly regions: readonly Region[];
  readonly states: number;
}

const upTo = (kind: Kind, last: HandoverEvent["type"]): HandoverEvent[] => {
  const steps = cleanSteps(kind);
  return steps.slice(0, steps.findIndex(({ type }) => type === last) + 1);
};

const WALKS: readonly Walk[] = [
  {
    name: "door and people",
    kind: "wheel-pack",
    done: [{ type: "mounting.measured", height_in: 44 }, { type: "ring.aligned" }],
    events: [
      ...eventsOf(
        "combination.changed",
        "pack.rebuilt",
        "bolt.thrown",
        "bolt.drawnAgain",
        "lock.spunOff",
        "holdback.set",
      ),
      ...eventsOf("holdback.released", "observer.entered", "observer.left", "release.failed"),
      { type: "combination.dialed", by: "trainee", opened: true },
      { type: "combination.dialed", by: "trainee", opened: false },
      ...eventsOf("wayOut.checked", "wayOut.cleared", "door.shut", "door.opened"),
    ],
    regions: ["door", "bolt", "holdback", "inside", "wayOut", "combination", "escape", "entry"],
    states: 288,
  },
  {
    name: "preparation and lock",
    kind: "dial-encoder",
    done: [],
    events: [
      ...eventsOf("ring.aligned", "ring.loosened", "zero.set"),
      ...eventsOf("combination.dialed", "combination.changed", "pack.rebuilt"),
    ],
    regions: ["ring", "zero", "shippedTry", "combination", "rules", "proofs", "second"],
    states: 66,
  },
  {
    name: "the height",
    kind: "wheel-pack",
    done: [],
    events: eventsOf("mounting.measured", "authorization.asked", "ring.aligned", "duty.signed"),
    regions: ["mounting", "ring"],
    states: 8,
  },
  {
    name: "what the lock itself says of its numbers",
    kind: "wheel-pack",
    done: [],
    events: [
      ...[true, false].flatMap((opensAsWritten) =>
        eventsOf("lock.spunOff").map((event) => ({ ...event, opensAsWritten })),
      ),
      { type: "door.shut" },
      { type: "door.opened", by: "emergency" },
      { type: "observer.entered", canOpen: true },
    ],
    regions: ["door", "bolt", "inside", "escape", "entry", "asWritten"],
    states: 12,
  },
  {
    name: "from the third proof to the signature",
    kind: "wheel-pack",
    done: upTo("wheel-pack", "combination.changed").concat(cleanSteps("wheel-pack").slice(4, 7)),
    events: [
      { type: "combination.dialed", by: "second", opened: true },
      { type: "combination.dialed", by: "trainee", opened: true },
      ...eventsOf("lock.spunOff", "holdback.set", "holdback.released", "observer.left", "door.shut"),
      { type: "wayOut.checked", isFree: true },
      { type: "observer.entered", canOpen: true },
      { type: "door.opened", by: "outside" },
      ...eventsOf("record.written", "duty.signed"),
    ],
    regions: ["door", "bolt", "holdback", "shown", "second", "inside", "wayOut", "observed", "outside", "record"],
    states: 285,
  },
  {
    name: "the fit, the door and the bolt",
    kind: "wheel-pack",
    isToFit: true,
    done: [{ type: "mounting.measured", height_in: 44 }],
    events: [
      ...eventsOf("lock.fitted", "lock.takenApart", "parts.replaced", "ring.aligned", "ring.loosened", "lock.spunOff"),
      ...eventsOf("bolt.thrown", "bolt.drawnAgain", "holdback.set", "holdback.released", "pack.rebuilt"),
      { type: "combination.dialed", by: "trainee", opened: true },
      { type: "combination.dialed", by: "trainee", opened: false },
      { type: "combination.changed", outcome: "spoiled", isAllowed: true },
      { type: "door.shut" },
      { type: "door.opened", by: "emergency" },
      { type: "duty.signed" },
    ],
    regions: ["fit", "fitChecks", "ring", "bolt", "holdback", "door", "combination"],
    states: 98,
  },
  {
    name: "a lock taken apart with its zero and its proofs",
    kind: "dial-encoder",
    isToFit: true,
    done: [fitted(true), { type: "mounting.measured", height_in: 44 }],
    events: [
      ...eventsOf("lock.fitted", "lock.takenApart", "ring.aligned", "ring.loosened", "zero.set"),
      { type: "combination.dialed", by: "trainee", opened: true },
      { type: "combination.dialed", by: "second", opened: true },
      { type: "combination.changed", outcome: "true", isAllowed: true },
    ],
    regions: ["fit", "fitChecks", "ring", "zero", "combination", "proofs", "second"],
    states: 44,
  },
];

/** Where the regions stand, the watchers left out; nowhere once the door is handed over. */
const situationOf = ({ value }: Snapshot): Situation | undefined => {
  const { working } = value as { working?: Situation & { watch: unknown } };
  if (working === undefined) return undefined;
  const { watch: _, ...situation } = working;
  return situation;
};

const projected = (state: Snapshot, regions: readonly Region[]) => {
  const situation = situationOf(state);
  return JSON.stringify(situation === undefined ? state.value : regions.map((region) => situation[region]));
};

const startOf = ({ kind, isToFit, done }: Walk): Snapshot => {
  const machine = handoverMachine(kind, isToFit);
  const [begun] = initialTransition(machine);
  return done.reduce<Snapshot>((state, event) => transition(machine, state, event)[0], begun);
};

const reachedAnywhere = new Map<string, Set<string>>();

describe.each(WALKS)("the handover's chart: $name", (walk) => {
  const machine = handoverMachine(walk.kind, walk.isToFit);
  const options = {
    fromState: startOf(walk),
    serializeState: (state: unknown) => projected(state as Snapshot, walk.regions) as never,
    events: [...walk.events],
    limit: 1_000_000,
  };
  const paths = createTestModel(machine, options).getShortestPaths(options);
  const met = paths.flatMap((path) => [...path.steps.map(({ state }) => state), path.state]) as Snapshot[];
  const states = [...new Map(met.map((state) => [projected(state, walk.regions), state])).values()];
  /** Every transition that the walk allows, with the state it leads to. */
  const steps = states.flatMap((from) =>
    situationOf(from) === undefined
      ? []
      : walk.events.map((event) => ({ from, event, to: transition(machine, from, event)[0] as Snapshot })),
  );

  for (const state of states) {
    for (const [region, at] of Object.entries(situationOf(state) ?? {})) {
      const known = reachedAnywhere.get(region) ?? new Set();
      if (typeof at === "string") reachedAnywhere.set(region, known.add(at));
    }
  }

  test("its paths reach every state, and all transitions stay among them", () => {
    process.stdout.write(`handover chart, ${walk.name}: ${states.length} states, ${steps.length} transitions\n`);
    const known = new Set(states.map((state) => projected(state, walk.regions)));
    expect(steps.filter(({ to }) => !known.has(projected(to, walk.regions)))).toEqual([]);
    expect(states.length).toBe(walk.states);
  });

  test("every transition is what the plain telling says, and so are its faults", () => {
    for (const { from, event, to } of steps) {
      const before = situationOf(from) as Situation;
      const plain = plainStep(before, event);
      const told = { ...to.context, isHandedOver: to.status === "done" };
      expect(
        [told.faults.slice(from.context.faults.length).sort(), told.isHandedOver],
        JSON.stringify([before, event]),
      ).toEqual([[...plain.faults].sort(), plain.isHandedOver]);
      if (!told.isHandedOver) expect(situationOf(to), JSON.stringify([before, event])).toMatchObject(plain.situation);
    }
  });

  test("nobody comes to be shut in, and no one locked out, without a fault on record at that very step", () => {
    for (const { from, to } of steps) {
      const added = to.context.faults.slice(from.context.faults.length);
      const isNow = (region: "escape" | "entry", state: string) =>
        situationOf(to)?.[region] === state && situationOf(from)?.[region] !== state;
      expect(added.includes("shut-in")).toBe(isNow("escape", "shutIn"));
      expect(added.includes("locked-out")).toBe(isNow("entry", "lockedOut"));
    }
  });

  test("what is hindered changes nothing and is no fault; what is not hindered is taken", () => {
    for (const { from, event, to } of steps) {
      const before = situationOf(from) as Situation;
      if (hindranceOf(event, before) === undefined) continue;
      expect([to.context, situationOf(to)], JSON.stringify([before, event])).toEqual([from.context, before]);
    }
  });

  test("a run takes every path, and ends where the model says", async () => {
    for (const path of paths) {
      const run = new HandoverRun({ ...PROFILES[walk.kind] }, walk.isToFit ? DOOR_TO_FIT : null);
      let at = 0;
      const make = (event: HandoverEvent) => {
        at += 1;
        if (run.hindrance(event) === undefined) run.take({ ...event, at_ms: at });
      };
      walk.done.forEach(make);
      await path.test({
        // The step's event carries its payload, but is typed by its name alone.
        events: Object.fromEntries(
          walk.events.map(({ type }) => [
            type,
            (step: { readonly event: object }) => make(step.event as HandoverEvent),
          ]),
        ),
        states: {
          "*": (state) => {
            const situation = situationOf(state as Snapshot);
            expect(run.isHandedOver).toBe(situation === undefined);
            expect(walk.regions.map((region) => run.situation[region])).toEqual(
              walk.regions.map((region) => (situation ?? run.situation)[region]),
            );
          },
        },
      });
    }
  });
});

test("between them, these walks reach every state of every region", () => {
  const drawn = Object.entries(REGIONS).map(([region, states]) => [region, [...states].sort()]);
  const reached = Object.keys(REGIONS).map((region) => [region, [...(reachedAnywhere.get(region) ?? [])].sort()]);
  expect(reached).toEqual(drawn);
});

const WAYS = (["wheel-pack", "dial-encoder"] as const).flatMap((kind) => [
  { kind, door: null, how: "that came on its door", steps: cleanSteps(kind) },
  { kind, door: DOOR_TO_FIT, how: "that was fitted first", steps: [fitted(true), ...cleanSteps(kind)] },
]);

describe.each(WAYS)("a clean handover of a $kind $how", ({ kind, door, steps }) => {
  const made = (events: readonly HandoverEvent[]) => {
    const run = new HandoverRun(PROFILES[kind], door);
    for (const [at_ms, event] of events.entries()) {
      if (run.hindrance(event) === undefined) run.take({ ...event, at_ms });
    }
    return run;
  };

  test("is signed off without a fault", () => {
    const run = made(steps);
    expect([run.isHandedOver, run.steps.flatMap(({ faults }) => faults)]).toEqual([true, []]);
  });

  const singles = steps.slice(0, -1).map((_, k) => [k, k] as const);
  const neighbors = singles.slice(1).map(([k]) => [k - 1, k] as const);
  const ways = [...singles, ...neighbors];

  test(`is not signed off with a step or two neighbors left out, in any of ${ways.length} ways`, () => {
    for (const [one, other] of ways) {
      const run = made(steps.filter((_, k) => k !== one && k !== other));
      const last = run.steps.at(-1);
      expect([run.isHandedOver, last?.faults.includes("signed-too-early")], `without ${one}, ${other}`).toEqual([
        false,
        true,
      ]);
      expect(last?.missing.length).toBeGreaterThan(0);
    }
  });
});
