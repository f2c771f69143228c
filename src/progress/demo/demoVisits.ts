import { serviceEnd } from "../../records/job/serviceEnd";
import type { VisitTask } from "../../service/drawVisit";
import { sectionsOf } from "../../service/papers";
import { SERVICE } from "../../service/serviceValues";
import { visitTo } from "../../service/visit";
import { instrumentsFor, looksFor, QUESTIONS, type VisitAct, type VisitChange } from "../../service/visitAct";
import { visitResult } from "../../service/visitResult";
import { drawSeed } from "../../statistics/drawSeed";
import type { DemoEnd } from "./demoWeek";

/** What the papers say is done about what is wrong. */
function remedies({ conditions, instructions }: VisitTask): readonly VisitChange[] {
  const { torque_Nm, lubrication, batteries } = instructions;
  const when = (isSo: boolean, change: VisitChange) => (isSo ? [change] : []);
  const has = (...some: readonly VisitTask["conditions"][number][]) => some.some((one) => conditions.includes(one));
  return [
    ...when(has("key-worn"), { type: "key.replaced" }),
    ...when(has("key-loose", "key-worn"), { type: "screw.tightened", torque_Nm: (torque_Nm[0] + torque_Nm[1]) / 2 }),
    ...when(has("ring-dirty"), { type: "ring.cleaned" }),
    ...when(has("ring-painted"), { type: "paint.removed" }),
    ...when(has("ring-off-center"), { type: "ring.centered" }),
    ...when(
      has("bolt-drags"),
      lubrication.bolt === null ? { type: "bolt.wiped" } : { type: "lubricated", at: "bolt", with: lubrication.bolt },
    ),
    ...when(
      has("bearing-dry"),
      lubrication.bearing === null
        ? { type: "bearing.replaced" }
        : { type: "lubricated", at: "bearing", with: lubrication.bearing },
    ),
    ...when(has("batteries-low", "batteries-old"), { type: "batteries.replaced", which: "set", cells: batteries.type }),
  ];
}

/** A good visit: ask, read, look, measure, do what the papers say, prove, record. */
function actsOf(task: VisitTask): readonly VisitAct[] {
  const { kind } = task.lock;
  const changes = remedies(task);
  const record = { found: task.conditions, hasFigures: true, hasChanges: changes.length > 0, hasProofs: true };
  return [
    ...QUESTIONS.map((question): VisitAct => ({ type: "asked", question })),
    ...sectionsOf(kind).map((section): VisitAct => ({ type: "section.read", section })),
    { type: "record.read" },
    { type: "door.opened" },
    { type: "door.held" },
    { type: "tried" },
    { type: "strap.worn" },
    { type: "cover.taken" },
    ...looksFor(kind).map((at): VisitAct => ({ type: "looked", at })),
    ...instrumentsFor(kind).map((one): VisitAct => ({ type: "measured", with: one })),
    ...changes,
    { type: "cover.put" },
    ...Array.from({ length: SERVICE.proofs }, (): VisitAct => ({ type: "tried" })),
    { type: "record.written", record: { ...record, hasCombination: false } },
    { type: "door.shut" },
  ];
}

/** A service visit. @param forgotten - acts that are left out of a good one */
export const served =
  (...forgotten: readonly VisitAct["type"][]): DemoEnd =>
  (profile, chance) => {
    const seed = drawSeed(chance);
    const visit = visitTo(profile, seed);
    for (const act of actsOf(visit.task)) if (!forgotten.includes(act.type)) visit.act(act);
    visit.leave();
    return serviceEnd(visitResult(visit), seed);
  };
