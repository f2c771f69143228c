import { createTestModel } from "@xstate/test";
import { initialTransition, type SnapshotFrom, transition } from "xstate";
import { changeTo } from "../../../src/app/exercises/handover/run/session/changeWork";
import type { RunSetup } from "../../../src/app/exercises/handover/run/session/doorWork";
import { HandoverSession } from "../../../src/app/exercises/handover/run/session/handoverSession";
import { ACT_GROUPS } from "../../../src/app/exercises/handover/run/session/runActs";
import { handoverMachine } from "../../../src/handover/run/chart/handoverMachine";
import type { HandoverEvent } from "../../../src/handover/run/rules/handoverEvent";
import type { Region, Situation } from "../../../src/handover/run/rules/situation";
import { situationLines } from "../../../src/handover/run/situationWords";
import { shippedProfile } from "../../../src/lock/shippedProfiles";
import { cleanSteps, eventsOf } from "../../support/handoverEvents";
import { doorWith, Handover } from "../handover";
import { expect, test } from "../page";
import { fewest, wayTo } from "./chartPaths";

/*
 * The handover's chart on the page: paths through parts of it, as @xstate/test finds them, made by what a person does with a
 * simulated hand. After each step the page shows every region as the chart has it. What a door cannot do (a lock that does not
 * open although it is in order) ends a path there; the arrows that no door takes are listed below, with the reason.
 */

type Snapshot = SnapshotFrom<ReturnType<typeof handoverMachine>>;
type Situated = Omit<Situation, "asWritten">;

/** Part of the duty: what was done before, what may happen, the regions that are told apart, and doors to do it at. */
interface Walk {
  readonly name: string;
  readonly done: readonly HandoverEvent[];
  readonly events: readonly HandoverEvent[];
  readonly regions: readonly Region[];
  readonly doors: readonly RunSetup[];
  /** Arrows that no door takes, and why. */
  readonly untaken: readonly string[];
}

/** The first door that is mounted too high. */
function highDoor(): RunSetup {
  for (let seed = 1; seed < 500; seed++) {
    const setup = { profile: shippedProfile("two-wheel"), seed, isHandsOff: true };
    if (new HandoverSession(setup, null, () => {}).recorded.scene.height_in > 48) return setup;
  }
  throw new Error("no seed gives a door that is too high");
}

const FREE = doorWith({ slips: false });
const upTo = (last: HandoverEvent["type"]) => {
  const steps = cleanSteps("wheel-pack");
  return steps.slice(0, steps.findIndex(({ type }) => type === last) + 1);
};

const WALKS: readonly Walk[] = [
  {
    name: "door and people",
    done: [{ type: "mounting.measured", height_in: 44 }, { type: "ring.aligned" }],
    events: [
      { type: "combination.changed", outcome: "true", isAllowed: true },
      { type: "combination.changed", outcome: "off", isAllowed: true },
      { type: "combination.dialed", by: "trainee", opened: true },
      { type: "combination.dialed", by: "trainee", opened: false },
      ...eventsOf("bolt.thrown", "lock.spunOff", "holdback.set", "holdback.released"),
      ...eventsOf("observer.entered", "observer.left", "release.failed", "wayOut.checked", "wayOut.cleared"),
      ...eventsOf("door.shut", "door.opened"),
    ],
    regions: ["door", "bolt", "holdback", "inside", "wayOut", "combination", "escape", "entry"],
    doors: [FREE, doorWith({ isBlocked: true, slips: false }), doorWith({ slips: true })],
    // They want a lock that a slip has spoiled at just that moment, and nobody chooses when the simulated hand slips.
    untaken: [
      "bolt: retracted to thrown by combination.dialed",
      "entry: free to lockedOut by bolt.thrown",
      "entry: free to lockedOut by combination.dialed",
      "entry: free to lockedOut by lock.spunOff",
      "entry: free to lockedOut by release.failed",
      "entry: lockedOut to free by combination.dialed",
      "escape: free to shutIn by combination.dialed",
    ],
  },
  {
    name: "preparation and lock",
    done: [],
    events: [
      ...eventsOf("ring.aligned", "ring.loosened", "zero.set"),
      { type: "combination.dialed", by: "trainee", opened: true },
      { type: "combination.dialed", by: "trainee", opened: false },
      { type: "combination.dialed", by: "second", opened: true },
      { type: "combination.changed", outcome: "true", isAllowed: true },
    ],
    regions: ["ring", "zero", "shippedTry", "combination", "rules", "proofs", "second"],
    doors: [doorWith({ profile: shippedProfile("dial-encoder") })],
    // The lock takes its zero turning right first.
    untaken: [
      "zero: leftSet to bothSet by zero.set",
      "zero: leftSet to notSet by ring.loosened",
      "zero: notSet to leftSet by zero.set",
    ],
  },
  {
    name: "the height",
    done: [],
    events: eventsOf("mounting.measured", "authorization.asked", "ring.aligned", "duty.signed"),
    regions: ["mounting", "ring"],
    doors: [FREE, highDoor()],
    untaken: [],
  },
  {
    name: "from the third proof to the signature",
    done: upTo("combination.changed").concat(cleanSteps("wheel-pack").slice(4, 7)),
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
    doors: [FREE],
    untaken: [],
  },
];

const kindOf = ({ doors }: Walk) => doors[0]?.profile.kind ?? "wheel-pack";

/** Every region but what only the lock itself can say. */
function situated(state: Pick<Snapshot, "value">): Situated | null {
  const { working } = state.value as { readonly working?: Situation & { readonly watch: unknown } };
  if (working === undefined) return null;
  const { watch: _, asWritten: __, ...situation } = working;
  return situation;
}

/** What an event changes, region by region: the arrows as drawn. */
function arrowsOf(from: Situated | null, event: HandoverEvent, to: Situated | null): string[] {
  if (from === null) return [];
  if (to === null) return [`working to handedOver by ${event.type}`];
  return (Object.keys(from) as (keyof Situated)[])
    .filter((region) => from[region] !== to[region])
    .map((region) => `${region}: ${from[region]} to ${to[region]} by ${event.type}`);
}

const NAMES: { readonly [Type in HandoverEvent["type"]]?: string } = {
  "mounting.measured": "Measure the height",
  "authorization.asked": "Get the exception in writing",
  "ring.aligned": "Align the ring",
  "ring.loosened": "Loosen the ring",
  "bolt.thrown": "Throw the bolt",
  "lock.spunOff": "Spin off",
  "pack.rebuilt": "Rebuild the wheel pack",
  "holdback.set": "Set the holdback",
  "holdback.released": "Release the holdback",
  "observer.left": "Let the person inside out",
  "wayOut.checked": "Test the inside release",
  "wayOut.cleared": "Clear the inside release",
  "release.failed": "Knock: have it opened from inside",
  "door.shut": "Shut the door",
};
const OPENED = {
  outside: "Pull the door open",
  inside: "Knock: have it opened from inside",
  emergency: "Have it opened by force",
} as const;

/** The button by which a person makes an event happen; null where it has a form of its own. */
function buttonOf(event: HandoverEvent): string | null {
  switch (event.type) {
    case "zero.set":
      return `Set the zero turning ${event.side}`;
    case "combination.dialed":
      return event.by === "trainee" ? "Dial the combination" : "Let the second person open it";
    case "observer.entered":
      return event.canOpen ? "Show an observer the release and let them in" : "Let someone in, shown nothing";
    case "door.opened":
      return OPENED[event.by];
    default:
      return NAMES[event.type] ?? null;
  }
}

/** Does on a twin of the page's run what a person does on the page. */
function doOnTwin(twin: HandoverSession, event: HandoverEvent): void {
  const button = buttonOf(event);
  if (button !== null) {
    const act = ACT_GROUPS.flatMap(({ acts }) => acts).find(({ label }) => label === button);
    if (act === undefined) throw new Error(`no act "${button}"`);
    act.does(twin, 0);
  } else if (event.type === "combination.changed") changeTo(twin, twin.drawOwn(), 0);
  else twin.act(event, 0);
}

async function doOnPage(handover: Handover, event: HandoverEvent): Promise<void> {
  const button = buttonOf(event);
  if (button !== null) await handover.does(button);
  else if (event.type === "combination.changed") await handover.change();
  else if (event.type === "record.written") await handover.writeRecord();
  else await handover.does("Sign the door off");
}

/** One thing that is done, for the sake of an arrow that it takes. */
interface Step {
  readonly arrow: string;
  /** Everything done so far with it, in order. */
  readonly events: readonly HandoverEvent[];
}

/** Whether a run is as the chart has it, but for what only the lock itself can say. */
function isAs(twin: HandoverSession, situation: Situated | null): boolean {
  if (situation === null) return twin.run.isHandedOver;
  const is: Situation = twin.run.situation;
  return (Object.keys(situation) as (keyof Situated)[]).every((region) => is[region] === situation[region]);
}

/** Does something on the twin. @returns what happened, which says besides whether the lock opens as written; null for another thing */
function happenedOn(twin: HandoverSession, wanted: HandoverEvent): HandoverEvent | null {
  const before = twin.recorded.events.length;
  doOnTwin(twin, wanted);
  const happened = (twin.recorded.events[before] as HandoverEvent | undefined) ?? wanted;
  return happened.type === wanted.type ? happened : null;
}

/** The events of a path that a door can do, with the arrows each takes: until the door and the chart part. */
function stepsAt(walk: Walk, door: RunSetup, path: readonly HandoverEvent[]): readonly Step[] {
  const twin = new HandoverSession(door, null, () => {});
  const machine = handoverMachine(door.profile.kind);
  let [state] = initialTransition(machine);
  const events: HandoverEvent[] = [];
  const steps: Step[] = [];
  for (const wanted of [...walk.done, ...path]) {
    const from = situated(state);
    const event = happenedOn(twin, wanted);
    if (event === null) break;
    [state] = transition(machine, state, event);
    const to = situated(state);
    if (!isAs(twin, to)) break;
    events.push(event);
    for (const arrow of arrowsOf(from, event, to)) steps.push({ arrow, events: [...events] });
  }
  return steps;
}

/** The shortest paths to every state that a part tells apart. */
function pathsOf(walk: Walk): readonly (readonly HandoverEvent[])[] {
  const machine = handoverMachine(kindOf(walk));
  const [begun] = initialTransition(machine);
  const options = {
    fromState: walk.done.reduce<Snapshot>((state, event) => transition(machine, state, event)[0], begun as Snapshot),
    serializeState: (state: unknown) => {
      const situation = situated(state as Snapshot);
      return JSON.stringify(
        situation === null ? null : walk.regions.map((region) => situation[region as keyof Situated]),
      ) as never;
    },
    events: [...walk.events],
    limit: 1_000_000,
  };
  return createTestModel(machine, options)
    .getShortestPaths(options)
    .map(({ steps }) => steps.slice(1).map(({ event }) => event as unknown as HandoverEvent));
}

/** How many ways to an arrow are tried at each door before it counts as one that no door takes. */
const TRIED = 6;

/** Each arrow that the chart takes by an event at the end of a shortest path, with the ways to it, the shortest first. */
function waysOf(walk: Walk): ReadonlyMap<string, readonly (readonly HandoverEvent[])[]> {
  const machine = handoverMachine(kindOf(walk));
  const ways = new Map<string, (readonly HandoverEvent[])[]>();
  for (const path of [...pathsOf(walk)].sort((one, other) => one.length - other.length)) {
    const [begun] = initialTransition(machine);
    const state = [...walk.done, ...path].reduce<Snapshot>(
      (at, event) => transition(machine, at, event)[0],
      begun as Snapshot,
    );
    const from = situated(state);
    for (const event of walk.events) {
      const to = situated(transition(machine, state, event)[0]);
      for (const arrow of arrowsOf(from, event, to)) ways.set(arrow, [...(ways.get(arrow) ?? []), [...path, event]]);
    }
  }
  return ways;
}

type Taken = Step & { readonly door: RunSetup };

/** Paths that doors can do and that between them take every arrow that one of them takes; and the arrows that none takes. */
function walked(walk: Walk): { readonly paths: readonly (readonly Taken[])[]; readonly untaken: readonly string[] } {
  const found: (readonly Taken[])[] = [];
  const taken = new Set<string>();
  const goAt = (path: readonly HandoverEvent[], door: RunSetup) => {
    const steps = stepsAt(walk, door, path).map((step) => ({ ...step, door }));
    found.push(steps);
    for (const { arrow } of steps) taken.add(arrow);
  };
  const ways = waysOf(walk);
  for (const [arrow, paths] of ways) {
    const tries = paths.slice(0, TRIED).flatMap((path) => walk.doors.map((door) => [path, door] as const));
    for (const [path, door] of tries) if (!taken.has(arrow)) goAt(path, door);
  }
  return { paths: fewest(found), untaken: [...ways.keys()].filter((arrow) => !taken.has(arrow)).sort() };
}

for (const walk of WALKS) {
  const { paths: chosen, untaken } = walked(walk);
  const taken = new Set(chosen.flat().map(({ arrow }) => arrow));

  test(`handover, ${walk.name}: which arrows the page is made to take`, () => {
    process.stdout.write(`handover on the page, ${walk.name}: ${taken.size} arrows, ${chosen.length} paths\n`);
    expect(taken.size).toBeGreaterThan(3);
    expect(untaken).toEqual(walk.untaken);
  });

  for (const [k, path] of chosen.entries()) {
    test(`handover, ${walk.name}: the page shows the chart at every step of path ${k + 1}`, async ({ page }) => {
      const last = path.at(-1);
      if (last === undefined) throw new Error("a path has steps");
      const { door, events } = last;
      const handover = new Handover(page);
      await handover.open(door);
      const machine = handoverMachine(door.profile.kind);
      let [state] = initialTransition(machine);
      for (const [i, event] of events.entries()) {
        [state] = transition(machine, state, event);
        await doOnPage(handover, event);
        const situation = situated(state);
        if (situation === null) {
          await expect(handover.debrief).toBeVisible();
          continue;
        }
        const lines = situationLines({ ...situation, asWritten: "unknown" });
        const message = wayTo(
          events.map(({ type }) => ({ arrow: type })),
          i,
        );
        for (const { region, words } of lines) await expect(handover.state(region), message).toHaveText(words);
      }
    });
  }
}
