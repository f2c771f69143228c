import { offsetOf } from "../../src/fitting/offCenter";
import { offsetEstimate } from "../../src/fitting/offsetEstimate";
import { SHIPPED_PROFILES } from "../../src/lock/shippedProfiles";
import { drawVisit, type VisitTask } from "../../src/service/drawVisit";
import type { VisitObservation } from "../../src/service/measure";
import { sectionsOf } from "../../src/service/papers";
import { Visit } from "../../src/service/visit";
import {
  instrumentsFor,
  isChange,
  looksFor,
  QUESTIONS,
  type VisitAct,
  type VisitChange,
} from "../../src/service/visitAct";
import type { Condition } from "../../src/service/wrongThing";
import { seededChance } from "../../src/statistics/chance";

/** A job of a seed, to the lock that its number falls to. */
export function jobOf(seed: number): VisitTask {
  const profile = SHIPPED_PROFILES[seed % SHIPPED_PROFILES.length] ?? SHIPPED_PROFILES[0];
  return drawVisit(profile, seed);
}

/** A visit to the job of a seed; hands and instruments go by a seed of their own. */
export const visitOf = (seed: number): Visit => new Visit(jobOf(seed), seededChance(seed + 90_000));

/** A visit in which acts were done, and then the site left. */
export function after(seed: number, acts: readonly VisitAct[]): Visit {
  const visit = visitOf(seed);
  for (const act of acts) visit.act(act);
  visit.leave();
  return visit;
}

const doAll = (visit: Visit, acts: readonly VisitAct[]) => {
  for (const act of acts) visit.act(act);
};

type Of<Kind extends VisitObservation["kind"]> = Extract<VisitObservation, { readonly kind: Kind }>;
type Conclusions = {
  readonly [Kind in VisitObservation["kind"]]: (seen: Of<Kind>, task: VisitTask) => readonly Condition[];
};

const when = (condition: Condition, isSo: boolean): readonly Condition[] => (isSo ? [condition] : []);

/** What each thing that was seen says, to someone who knows the papers and nothing of the lock. */
const CONCLUSIONS: Conclusions = {
  key: ({ screw }) => when("key-loose", screw === "loose"),
  "lost-motion": ({ play }, { instructions }) => when("key-worn", play > instructions.lostMotionMost),
  ring: ({ isDusty, isPainted }) => [...when("ring-dirty", isDusty), ...when("ring-painted", isPainted)],
  // What scrapes is the ring, or paint on it: whether the bearing is dry too shows once that is gone.
  "turn-round": ({ ahead, scrapes }, { instructions }) =>
    when("bearing-dry", ahead > instructions.aheadMost && !scrapes),
  marks: ({ readings }, { instructions, lock: { toFit } }) => {
    const { offset } = offsetEstimate(readings, toFit.sizes.markRadius_mm, toFit.perTurn);
    return when("ring-off-center", offsetOf(offset) > instructions.ringOffMost_mm);
  },
  battery: ({ volts }, { instructions }) => when("batteries-low", volts < instructions.batteries.atLeast_V),
  case: ({ months }, { instructions }) =>
    when(
      "batteries-old",
      months.some((age) => age > instructions.batteries.months),
    ),
  bolt: ({ drags }) => when("bolt-drags", drags),
  "way-out": () => [],
  try: () => [],
};

/** Dirt or paint makes a dial heavy too: what is under it shows once it is off. */
function conclusions(visit: Visit): readonly Condition[] {
  const all = showed(visit).flatMap((seen) =>
    (CONCLUSIONS[seen.kind] as (seen: VisitObservation, task: VisitTask) => readonly Condition[])(seen, visit.task),
  );
  const isSoiled = all.includes("ring-dirty") || all.includes("ring-painted");
  return [...new Set(all)].filter((one) => one !== "bearing-dry" || !isSoiled);
}

const midTorque = ({ task: { instructions } }: Visit): VisitChange => {
  const [least, most] = instructions.torque_Nm;
  return { type: "screw.tightened", torque_Nm: (least + most) / 2 };
};

function remedies(visit: Visit, found: readonly Condition[]): readonly VisitChange[] {
  const { lubrication, batteries } = visit.task.instructions;
  const has = (one: Condition) => found.includes(one);
  return [
    ...(has("key-worn") ? [{ type: "key.replaced" } as const] : []),
    ...(has("key-loose") || has("key-worn") ? [midTorque(visit)] : []),
    ...(has("ring-dirty") ? [{ type: "ring.cleaned" } as const] : []),
    ...(has("ring-painted") ? [{ type: "paint.removed" } as const] : []),
    ...(has("ring-off-center") ? [{ type: "ring.centered" } as const] : []),
    ...(has("batteries-low") || has("batteries-old")
      ? [{ type: "batteries.replaced", which: "set", cells: batteries.type } as const]
      : []),
    ...(has("bolt-drags") ? [boltRemedy(lubrication.bolt)] : []),
    ...(has("bearing-dry") ? [bearingRemedy(lubrication.bearing)] : []),
  ];
}

const bearingRemedy = (lubricant: Visit["task"]["instructions"]["lubrication"]["bearing"]): VisitChange =>
  lubricant === null ? { type: "bearing.replaced" } : { type: "lubricated", at: "bearing", with: lubricant };

const boltRemedy = (lubricant: Visit["task"]["instructions"]["lubrication"]["bolt"]): VisitChange =>
  lubricant === null ? { type: "bolt.wiped" } : { type: "lubricated", at: "bolt", with: lubricant };

const showed = (visit: Visit) => visit.done.flatMap((one) => one.showed ?? []);

/** What each visit begins with: ask, read, open and hold, try, look, measure. */
function inspect(visit: Visit): void {
  const { kind } = visit.task.lock;
  doAll(visit, [
    ...QUESTIONS.map((question) => ({ type: "asked", question }) as const),
    ...sectionsOf(kind).map((section) => ({ type: "section.read", section }) as const),
    { type: "record.read" },
    { type: "door.opened" },
    { type: "door.held" },
    { type: "tried" },
    ...(kind === "electronic" ? [{ type: "strap.worn" } as const] : []),
    { type: "cover.taken" },
    ...looksFor(kind).map((at) => ({ type: "looked", at }) as const),
    ...instrumentsFor(kind).map((one) => ({ type: "measured", with: one }) as const),
  ]);
}

const hasChanged = ({ done }: Visit) => done.some(({ act }) => isChange(act));

/** Turned once more after a change: under dirt or paint a dry bearing does not show. */
function isStillHeavy(visit: Visit): boolean {
  visit.act({ type: "measured", with: "turn-round" });
  const again = showed(visit).at(-1);
  return again?.kind === "turn-round" && again.ahead > visit.task.instructions.aheadMost;
}

/** A technician who reads everything, measures everything, and does what the papers say. Knows nothing of what is hidden. */
export function serve(visit: Visit): readonly Condition[] {
  inspect(visit);
  const found = new Set(conclusions(visit));
  doAll(visit, remedies(visit, [...found]));
  if (hasChanged(visit) && isStillHeavy(visit) && !found.has("bearing-dry")) {
    found.add("bearing-dry");
    doAll(visit, remedies(visit, ["bearing-dry"]));
  }
  doAll(visit, [{ type: "cover.put" }, { type: "tried" }, { type: "tried" }, { type: "tried" }]);
  const record = {
    found: [...found],
    hasFigures: true,
    hasChanges: hasChanged(visit),
    hasProofs: true,
    hasCombination: false,
  };
  doAll(visit, [{ type: "record.written", record }, { type: "door.shut" }]);
  visit.leave();
  return [...found];
}
