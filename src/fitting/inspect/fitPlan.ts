import type { Assembly, LockerPlace, Screwed } from "../assembly";
import { trayAt } from "../doorToFit";
import { gapAtFirstHold, type LockToFit, standsOutAt } from "../fittedLock";
import type { BoardAct, FittingAct } from "../fittingAct";
import { leadOf } from "../geometry/spindleThread";
import type { Offset } from "../offCenter";
import { putTogether } from "../putTogether";
import type { Washer } from "../washerStack";

/** How a lock is to be put together: all that a fitter decides, well or badly. */
export interface FitPlan {
  /** Of the spindle, where it holds the middle of the dial off the axis. */
  readonly bend: Offset;
  readonly washers: readonly Washer[];
  readonly body: Screwed;
  readonly ring: { readonly offset: Offset; readonly isTight: boolean };
  readonly gap_mm: number;
  /** The spindle stands out of the cam by as much, or by up to one lead of its thread more; millimeters, from -4 on. */
  readonly out_mm: number;
  /** From 0, the right one, on. */
  readonly keyway: number;
  readonly isKeyDriven: boolean;
  /** Of the key's screw. */
  readonly torque_Nm: number;
  readonly locker: readonly LockerPlace[];
  /** Null where it is left out. */
  readonly strike: { readonly above_mm: number; readonly screws: Screwed } | null;
  readonly hasCover: boolean;
  /** What is done to the board of an electronic lock, in order. */
  readonly wiring: readonly BoardAct[];
}

/** How far to screw the dial in, and how long its spindle must be, for a gap, a keyway and an end of the spindle. */
function reachOf({ gap_mm, out_mm, keyway }: FitPlan, lock: LockToFit) {
  const { perTurn, sizes, slotAt } = lock;
  const lead_mm = leadOf(sizes.threadsPerInch);
  const fromHold_mm = gapAtFirstHold(lock, 0);
  const first = slotAt + (keyway * perTurn) / sizes.keyways;
  const wanted = ((out_mm - standsOutAt(lock, -fromHold_mm, 0)) / lead_mm) * perTurn;
  const turns = Math.max(0, Math.ceil((wanted - first) / perTurn));
  const dialIn = first + turns * perTurn;
  return { dialIn, length_mm: gap_mm + (dialIn / perTurn) * lead_mm - fromHold_mm };
}

/** What a hand does for a plan, in an order in which all of it goes. */
export function actsOf(plan: FitPlan, lock: LockToFit): readonly FittingAct[] {
  const { washers, body, ring, isKeyDriven, torque_Nm, locker, strike, hasCover, wiring } = plan;
  const { dialIn, length_mm } = reachOf(plan, lock);
  const when = (isSo: boolean, act: FittingAct) => (isSo ? [act] : []);
  return [
    { type: "washers.put", washers },
    { type: "body.hung" },
    ...when(body === "by-all", { type: "body.tightened" }),
    { type: "ring.put", offset: ring.offset, turned: 0 },
    ...when(ring.isTight, { type: "ring.tightened" }),
    { type: "spindle.cut", length_mm },
    { type: "spindle.dressed" },
    { type: "dial.screwed", by: dialIn },
    { type: "key.put" },
    ...when(isKeyDriven, { type: "key.driven" }),
    { type: "key.screwed", torque_Nm },
    ...locker.map((at): FittingAct => ({ type: "locker.dropped", at })),
    ...(strike === null ? [] : [{ type: "strike.hung", above_mm: strike.above_mm } as const]),
    ...when(strike?.screws === "by-all", { type: "strike.tightened" }),
    ...(lock.isElectronic ? wiring : []),
    ...when(hasCover, { type: "cover.put" }),
  ];
}

/**
 * A lock put together by a plan, act by act, as a hand does it.
 *
 * @throws {Error} where something stands in the way of one: the plan is none
 */
export function fittedBy(plan: FitPlan, lock: LockToFit): Assembly {
  return actsOf(plan, lock).reduce(
    (now, act) => {
      const { assembly, hindrance } = putTogether(now, act, lock);
      if (hindrance !== null) throw new Error(`a planned fit is stopped at ${act.type}: ${hindrance}`);
      return assembly;
    },
    trayAt({ slotAt: lock.slotAt, bend: plan.bend }, lock),
  );
}
