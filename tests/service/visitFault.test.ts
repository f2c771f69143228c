import { describe, expect, test } from "vitest";
import type { VisitTask } from "../../src/service/drawVisit";
import { Visit } from "../../src/service/visit";
import type { VisitAct, VisitRecord } from "../../src/service/visitAct";
import { visitFaults } from "../../src/service/visitFault";
import { FAULTS_ABOUT, PLAIN_FAULTS } from "../../src/service/visitFaultCode";
import { CONDITIONS, WRONG_THINGS, type WrongThing } from "../../src/service/wrongThing";
import { seededChance } from "../../src/statistics/chance";
import { after, jobOf, serve, visitOf } from "../support/technician";

/** The first job of a kind. */
function seedWhere(isSo: (task: VisitTask) => boolean): number {
  const seed = Array.from({ length: 2000 }, (_, k) => k).find((k) => isSo(jobOf(k)));
  if (seed === undefined) throw new Error("no such job");
  return seed;
}

const isSound = ({ conditions }: VisitTask) => conditions.length === 0;
const PACK = seedWhere((task) => isSound(task) && task.lock.kind === "wheel-pack");
const ELECTRONIC = seedWhere((task) => isSound(task) && task.lock.kind === "electronic");
const LOOSE = seedWhere(({ conditions }) => conditions.join() === "key-loose");
const DRY_FORBIDDEN = seedWhere(
  ({ conditions, instructions }) => conditions.join() === "bearing-dry" && instructions.lubrication.bearing === null,
);
const DRY_ALLOWED = seedWhere(
  ({ conditions, instructions }) =>
    conditions.join() === "bearing-dry" && instructions.lubrication.bearing === "grease",
);
const GREASED_BOLT = seedWhere((task) => isSound(task) && task.instructions.lubrication.bolt === "grease");
const DRAGS_WIPED = seedWhere(
  ({ conditions, instructions }) => conditions.join() === "bolt-drags" && instructions.lubrication.bolt === null,
);
const DRAGS_GREASED = seedWhere(
  ({ conditions, instructions }) => conditions.join() === "bolt-drags" && instructions.lubrication.bolt === "grease",
);
const LOW = seedWhere(({ conditions }) => conditions.join() === "batteries-low");

/** The acts of a good visit to a job. */
function goodActs(seed: number): readonly VisitAct[] {
  const visit = visitOf(seed);
  serve(visit);
  return visit.done.map(({ act }) => act);
}

const EMPTY_RECORD: VisitRecord = {
  ...{ found: [], hasFigures: false, hasChanges: false, hasProofs: false, hasCombination: false },
};

/** Everything that can be changed, in a way that spoils. */
const EVERY_CHANGE: readonly VisitAct[] = [
  { type: "screw.tightened", torque_Nm: 1.1 },
  { type: "bearing.replaced" },
  { type: "ring.cleaned" },
  { type: "paint.removed" },
  { type: "bolt.wiped" },
  { type: "ring.centered" },
  { type: "lubricated", at: "bearing", with: "graphite" },
  { type: "batteries.replaced", which: "one", cells: "lithium" },
  { type: "key.replaced" },
];
const ONE_CELL: readonly VisitAct[] = [
  { type: "batteries.replaced", which: "one", cells: "lithium" },
  { type: "key.replaced" },
];
/** What no act brings about. */
const UNMADE: readonly WrongThing[] = CONDITIONS.filter((one) => one !== "key-loose");
/** What no lock has when the technician comes. */
const SPOILED_NOW = WRONG_THINGS.filter((one) => !CONDITIONS.some((other) => other === one));

type Bend = (acts: readonly VisitAct[]) => readonly VisitAct[];

const without =
  (type: VisitAct["type"]): Bend =>
  (acts) =>
    acts.filter((act) => act.type !== type);
const instead =
  (type: VisitAct["type"], act: VisitAct): Bend =>
  (acts) =>
    acts.map((one) => (one.type === type ? act : one));
/** Done right before the cover goes on again. */
const alsoDoes =
  (...more: readonly VisitAct[]): Bend =>
  (acts) =>
    acts.flatMap((act) => (act.type === "cover.put" ? [...more, act] : [act]));
const records =
  (change: Partial<VisitRecord>): Bend =>
  (acts) =>
    acts.map((act) => (act.type === "record.written" ? { ...act, record: { ...act.record, ...change } } : act));
const named = (seed: number, bend: Bend) =>
  visitFaults(after(seed, bend(goodActs(seed)))).map(({ code, about }) => (about === null ? code : `${code} ${about}`));

const TABLE: readonly (readonly [what: string, seed: number, bend: Bend, faults: readonly string[]])[] = [
  ["a good visit", PACK, (acts) => acts, []],
  ["a good visit that tightens the key's screw", LOOSE, (acts) => acts, []],
  ["the last record not read", PACK, without("record.read"), ["last-record-not-read"]],
  ["the door not held", PACK, without("door.held"), ["door-not-held"]],
  ["the strap left off", ELECTRONIC, without("strap.worn"), ["cover-without-strap"]],
  ["nothing written", PACK, without("record.written"), ["no-record"]],
  ["the door left open", PACK, without("door.shut"), ["door-left-open"]],
  [
    "no try after",
    PACK,
    (acts) => acts.filter((act, k) => act.type !== "tried" || k < acts.findIndex((one) => one.type === "cover.taken")),
    ["not-proved", "shut-before-proof"],
  ],
  [
    "no try before",
    PACK,
    (acts) => acts.filter((act, k) => act.type !== "tried" || k > acts.findIndex((one) => one.type === "cover.taken")),
    ["not-tried-before"],
  ],
  ["the cover left off", PACK, without("cover.put"), ["cover-left-off"]],
  ["the combination in the record", PACK, records({ hasCombination: true }), ["combination-in-record"]],
  ["no figures in the record", PACK, records({ hasFigures: false }), ["record-without-figures"]],
  ["no proofs in the record", PACK, records({ hasProofs: false }), ["record-without-proofs"]],
  ["no changes in the record", LOOSE, records({ hasChanges: false }), ["record-without-changes"]],
  ["changes in the record that nobody made", PACK, records({ hasChanges: true }), ["record-not-true"]],
  ["a defect in the record that is not there", PACK, records({ found: ["key-worn"] }), ["invented-in-record key-worn"]],
  ["a defect not in the record", LOOSE, records({ found: [] }), ["missed-in-record key-loose"]],
  [
    "a screw turned too hard",
    LOOSE,
    instead("screw.tightened", { type: "screw.tightened", torque_Nm: 1.1 }),
    ["torque-not-as-written", "made-wrong key-stripped", "not-proved", "shut-before-proof"],
  ],
  [
    "a screw turned too lightly",
    LOOSE,
    instead("screw.tightened", { type: "screw.tightened", torque_Nm: 0.2 }),
    ["torque-not-as-written", "left-wrong key-loose"],
  ],
  [
    "a loose screw left",
    LOOSE,
    (acts) => records({ hasChanges: false })(without("screw.tightened")(acts)),
    ["left-wrong key-loose"],
  ],
  [
    "grease where the bearing must stay dry",
    DRY_FORBIDDEN,
    instead("bearing.replaced", { type: "lubricated", at: "bearing", with: "grease" }),
    ["lubricated-forbidden", "made-wrong gummed"],
  ],
  [
    "oil where grease is written",
    DRY_ALLOWED,
    instead("lubricated", { type: "lubricated", at: "bearing", with: "oil" }),
    ["lubricant-not-as-written", "made-wrong gummed"],
  ],
  [
    "oil on the wheels",
    PACK,
    (acts) => records({ hasChanges: true })(alsoDoes({ type: "lubricated", at: "wheels", with: "oil" })(acts)),
    ["lubricated-forbidden", "made-wrong gummed"],
  ],
  [
    "grease on a bolt that does not need it",
    GREASED_BOLT,
    (acts) => records({ hasChanges: true })(alsoDoes({ type: "lubricated", at: "bolt", with: "grease" })(acts)),
    ["changed-sound lubricated"],
  ],
  [
    "a dragging bolt greased where it must stay dry",
    DRAGS_WIPED,
    instead("bolt.wiped", { type: "lubricated", at: "bolt", with: "grease" }),
    ["lubricated-forbidden", "made-wrong gummed"],
  ],
  [
    "a dragging bolt wiped where grease is written",
    DRAGS_GREASED,
    instead("lubricated", { type: "bolt.wiped" }),
    ["left-wrong bolt-drags"],
  ],
  [
    "a good key replaced",
    PACK,
    (acts) => records({ hasChanges: true })(alsoDoes({ type: "key.replaced" })(acts)),
    ["changed-sound key.replaced", "made-wrong key-loose"],
  ],
  [
    "one cell replaced",
    LOW,
    instead("batteries.replaced", { type: "batteries.replaced", which: "one", cells: "alkaline" }),
    ["left-wrong batteries-low", "made-wrong batteries-mixed"],
  ],
  [
    "cells of another type",
    LOW,
    instead("batteries.replaced", { type: "batteries.replaced", which: "set", cells: "lithium" }),
    ["made-wrong batteries-wrong-type"],
  ],
  [
    "a sound lock's ring centered",
    PACK,
    (acts) => records({ hasChanges: true })(alsoDoes({ type: "ring.centered" })(acts)),
    ["changed-sound ring.centered"],
  ],
  [
    "the door shut and opened between change and proof",
    PACK,
    (acts) =>
      acts.flatMap((act): readonly VisitAct[] =>
        act.type === "cover.put" ? [act, { type: "door.shut" }, { type: "door.opened" }] : [act],
      ),
    ["shut-before-proof"],
  ],
];

test("the papers decide: the same dragging bolt is greased by some and wiped by others, and each is wrong by the other's", () => {
  const { lock } = jobOf(DRAGS_WIPED);
  const acts: readonly VisitAct[] = [
    { type: "door.opened" },
    { type: "cover.taken" },
    { type: "lubricated", at: "bolt", with: "grease" },
  ];
  const wiping: readonly VisitAct[] = [{ type: "door.opened" }, { type: "bolt.wiped" }];
  const wrongBy = (seed: number, done: readonly VisitAct[]) => {
    const visit = new Visit({ ...jobOf(seed), lock }, seededChance(1));
    for (const act of done) visit.act(act);
    return visit.wrong;
  };
  expect([DRAGS_WIPED, DRAGS_GREASED].map((seed) => wrongBy(seed, acts))).toEqual([["gummed"], []]);
  expect([DRAGS_WIPED, DRAGS_GREASED].map((seed) => wrongBy(seed, wiping))).toEqual([[], ["bolt-drags"]]);
});

test("every fault about something is reached by some visit, with each thing that it can be about", () => {
  const reached = new Set<string>();
  const note = (seed: number, acts: readonly VisitAct[]) => {
    for (const { code, about } of visitFaults(after(seed, acts))) reached.add(`${code} ${about}`);
  };
  const found = [...CONDITIONS];
  const invents: VisitAct = { type: "record.written", record: { ...EMPTY_RECORD, found } };
  for (let seed = 0; seed < 400; seed++) {
    note(seed, []);
    note(seed, [{ type: "record.written", record: EMPTY_RECORD }]);
    note(seed, [{ type: "door.opened" }, { type: "cover.taken" }, ...EVERY_CHANGE, invents]);
  }
  note(LOW, [{ type: "door.opened" }, { type: "cover.taken" }, ...ONE_CELL]);
  const all = Object.entries(FAULTS_ABOUT).flatMap(([code, abouts]) => abouts.map((about) => `${code} ${about}`));
  expect(all.filter((one) => !reached.has(one)).sort()).toEqual(
    // What was made wrong is told as new; what years alone can do no visit makes; wiping a ring is never needless.
    [
      "changed-sound ring.cleaned",
      ...UNMADE.map((one) => `made-wrong ${one}`),
      ...SPOILED_NOW.map((one) => `left-wrong ${one}`),
    ].sort(),
  );
});

describe("a fault for each thing a visit does wrong", () => {
  for (const [what, seed, bend, faults] of TABLE) {
    test(what, () => expect(named(seed, bend)).toEqual(faults));
  }

  test("a cover taken off, and a change made, before the section that decides it is read", () => {
    const last: Bend = (acts) => [
      ...acts.filter(({ type }) => type !== "section.read" && type !== "door.shut"),
      ...acts.filter(({ type }) => type === "section.read" || type === "door.shut"),
    ];
    expect(named(LOOSE, last)).toEqual([
      "acted-without-instructions cover.taken",
      "acted-without-instructions screw.tightened",
    ]);
  });

  test("what is left out is named by what it is", () => {
    const faults = visitFaults(after(ELECTRONIC, []));
    const abouts = faults.map(({ about }) => about).filter((about) => about !== null);
    expect(abouts).toEqual([
      ...["trouble", "work-nearby"],
      ...["safety", "lubrication", "limits", "batteries", "proof"],
      ...["ring", "bolt", "way-out", "case"],
      ...["turn-round", "lost-motion", "marks", "key", "battery"],
    ]);
  });

  test("the table has every fault that says all by its code", () => {
    const all = new Set(TABLE.flatMap(([, , , faults]) => faults));
    expect(PLAIN_FAULTS.filter((code) => !all.has(code))).toEqual([]);
  });
});
