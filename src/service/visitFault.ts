import { MEANT_FOR } from "./changeLock";
import { sectionsOf } from "./papers";
import type { LubricatedPlace } from "./servicedLock";
import { SERVICE } from "./serviceValues";
import type { DoneAct, Visit } from "./visit";
import {
  instrumentsFor,
  isChange,
  looksFor,
  QUESTIONS,
  SECTION_FOR,
  type VisitAct,
  type VisitRecord,
} from "./visitAct";
import type { PlainFault, VisitFault } from "./visitFaultCode";
import type { WrongThing } from "./wrongThing";

const when = (code: PlainFault, isSo: boolean): readonly VisitFault[] => (isSo ? [{ code, about: null }] : []);

type Of<Type extends VisitAct["type"]> = Extract<VisitAct, { readonly type: Type }>;
const actsOf = <Type extends VisitAct["type"]>(done: readonly DoneAct[], type: Type): readonly Of<Type>[] =>
  done.map(({ act }) => act).filter((act): act is Of<Type> => act.type === type);

const firstOr = (otherwise: number, index: number) => (index === -1 ? otherwise : index);

/** What was not asked, read, looked at, or measured on the lock as found. */
export function leftOut({ done, task: { lock } }: Visit): readonly VisitFault[] {
  const asked = actsOf(done, "asked").map(({ question }) => question);
  const read = actsOf(done, "section.read").map(({ section }) => section);
  const places = actsOf(done, "looked").map(({ at }) => at);
  // A figure taken after a change says nothing of the lock as it was found.
  const untouched = done.slice(
    0,
    firstOr(
      done.length,
      done.findIndex(({ act }) => isChange(act)),
    ),
  );
  const instruments = actsOf(untouched, "measured").map((act) => act.with);
  const missing = <One>(all: readonly One[], made: readonly One[]) => all.filter((one) => !made.includes(one));
  return [
    ...missing(QUESTIONS, asked).map((about) => ({ code: "not-asked", about }) as const),
    ...when("last-record-not-read", actsOf(done, "record.read").length === 0),
    ...missing(sectionsOf(lock.kind), read).map((about) => ({ code: "section-not-read", about }) as const),
    ...missing(looksFor(lock.kind), places).map((about) => ({ code: "look-left-out", about }) as const),
    ...missing(instrumentsFor(lock.kind), instruments).map((about) => ({ code: "not-measured", about }) as const),
  ];
}

/** Acts that the instructions decide, done before the section that decides them was read; each kind once. */
function unread(done: readonly DoneAct[]): readonly VisitFault[] {
  const kinds = done.flatMap(({ act }, k) => {
    if (!isChange(act) && act.type !== "cover.taken") return [];
    const read = actsOf(done.slice(0, k), "section.read").map(({ section }) => section);
    return read.includes(SECTION_FOR[act.type]) ? [] : [act.type];
  });
  return [...new Set(kinds)].map((about) => ({ code: "acted-without-instructions", about }) as const);
}

/** What lubricant is put on a place for. On the wheels it is a fault of its own. */
const LUBRICATED_FOR: Readonly<Record<LubricatedPlace, readonly WrongThing[] | null>> = {
  bearing: ["bearing-dry"],
  bolt: ["bolt-drags"],
  wheels: null,
};

/** Whether a change had nothing wrong to set right. */
function isNeedless({ act, wrong }: DoneAct): boolean {
  if (!isChange(act)) return false;
  const meant = act.type === "lubricated" ? LUBRICATED_FOR[act.at] : MEANT_FOR[act.type];
  return meant !== null && !meant.some((thing) => wrong.includes(thing));
}

function hands({ done, task: { lock, instructions } }: Visit): readonly VisitFault[] {
  const [least_Nm, most_Nm] = instructions.torque_Nm;
  const put = actsOf(done, "lubricated");
  const needless = done.filter(isNeedless).map(({ act }) => act);
  const kinds = [...new Set(needless.filter(isChange).map(({ type }) => type))];
  const isOff = ({ torque_Nm }: Of<"screw.tightened">) => torque_Nm < least_Nm || torque_Nm > most_Nm;
  const forbidden = put.filter(({ at }) => instructions.lubrication[at] === null);
  const wrongWith = put.filter((act) => ![null, act.with].includes(instructions.lubrication[act.at]));
  const covers = done.filter(({ act }) => act.type === "cover.taken");
  return [
    ...when(
      "door-not-held",
      done.some(({ act, isHeld }) => (isChange(act) || act.type === "cover.taken") && !isHeld),
    ),
    ...when("cover-without-strap", lock.kind === "electronic" && covers.some(({ hasStrap }) => !hasStrap)),
    ...when("torque-not-as-written", actsOf(done, "screw.tightened").some(isOff)),
    ...when("lubricated-forbidden", forbidden.length > 0),
    ...when("lubricant-not-as-written", wrongWith.length > 0),
    ...kinds.map((about) => ({ code: "changed-sound", about }) as const),
  ];
}

function lockAtEnd(visit: Visit): readonly VisitFault[] {
  const { conditions } = visit.task;
  return visit.wrong.map((about): VisitFault => {
    const wasSo = conditions.some((one) => one === about);
    return wasSo ? { code: "left-wrong", about } : { code: "made-wrong", about };
  });
}

function recordFaults(record: VisitRecord | undefined, { done, task }: Visit): readonly VisitFault[] {
  if (record === undefined) return when("no-record", true);
  const hasChanged = done.some(({ act }) => isChange(act));
  const missed = task.conditions.filter((one) => !record.found.includes(one));
  const invented = record.found.filter((one) => !task.conditions.includes(one));
  const hasMeasured = done.some(({ act }) => act.type === "measured");
  const hasTried = done.some(({ act }) => act.type === "tried");
  const isUntrue =
    (record.hasFigures && !hasMeasured) || (record.hasChanges && !hasChanged) || (record.hasProofs && !hasTried);
  return [
    ...missed.map((about) => ({ code: "missed-in-record", about }) as const),
    ...invented.map((about) => ({ code: "invented-in-record", about }) as const),
    ...when("record-without-figures", !record.hasFigures),
    ...when("record-without-changes", !record.hasChanges && hasChanged),
    ...when("record-without-proofs", !record.hasProofs),
    ...when("record-not-true", isUntrue),
    ...when("combination-in-record", record.hasCombination),
  ];
}

/** All faults of a visit as it is now, in the order in which a visit goes; none where it was a good one. */
export function visitFaults(visit: Visit): readonly VisitFault[] {
  const { done, lock, isOver } = visit;
  const { context, value } = visit.chart.getSnapshot();
  const place = isOver ? context.endedAt : value;
  const isDoorOpen = place === "open" || place === "disturbed" || place === "proved";
  return [
    ...leftOut(visit),
    ...unread(done),
    ...when("not-tried-before", !context.triedBefore),
    ...hands(visit),
    ...lockAtEnd(visit),
    ...when("cover-left-off", !lock.assembly.hasCover),
    ...when("not-proved", context.openings < SERVICE.proofs),
    ...when("shut-before-proof", context.shutUnproved),
    ...recordFaults(actsOf(done, "record.written").at(-1)?.record, visit),
    ...when("door-left-open", isDoorOpen),
  ];
}
