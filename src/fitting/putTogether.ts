import {
  type Assembly,
  isGluedIn,
  type KeyIn,
  type LockerPlace,
  newSpindle,
  type RingOn,
  type Spindle,
} from "./assembly";
import { boardAfter } from "./board";
import { farthestIn, keywayAt, type LockToFit, standsOutNow } from "./fittedLock";
import type { BoardAct, FittingAct, Hindrance } from "./fittingAct";
import { screwAfter } from "./keySeat";
import { stackFit } from "./washerStack";

/** What came of an act: the lock as it is now, or what stood in the way. */
export type PutTogether =
  | { readonly assembly: Assembly; readonly hindrance: null }
  | { readonly assembly: Assembly; readonly hindrance: Hindrance };

type Of<Type extends FittingAct["type"]> = Extract<FittingAct, { readonly type: Type }>;
type Change = Partial<Assembly>;
type Done = Change | Hindrance;
type Acts = { readonly [Type in FittingAct["type"]]: (now: Assembly, act: Of<Type>, lock: LockToFit) => Done };

/** The first thing in the way, or what is changed where nothing is. */
const unless = (hindrances: readonly (readonly [Hindrance, boolean])[], change: () => Done): Done =>
  hindrances.find(([, isSo]) => isSo)?.[0] ?? change();

const hasDial = ({ dialIn }: Assembly) => dialIn !== null;
/** Its screws are under the dial. */
const dialInTheWay = (now: Assembly) => ["dial-in-the-way", hasDial(now)] as const;
const coverInTheWay = (now: Assembly) => ["cover-in-the-way", now.hasCover] as const;

const without = ({ locker }: Assembly, place: LockerPlace) => locker.filter((at) => at !== place);

/** A mark on what was sawn off is gone with it. */
const markLeft = ({ mark_mm }: Spindle, length_mm: number) =>
  mark_mm === null || mark_mm >= length_mm ? null : mark_mm;

const changeRing = (now: Assembly, mustBe: "loose" | "any", change: (ring: RingOn) => Change): Done => {
  const { ring } = now;
  if (hasDial(now)) return "dial-in-the-way";
  if (ring === null) return "no-ring";
  return mustBe === "loose" && ring.isTight ? "ring-is-tight" : change(ring);
};

const changeKey = (now: Assembly, change: (key: KeyIn) => Change): Done => {
  if (now.hasCover) return "cover-in-the-way";
  return now.key === null ? "no-key" : change(now.key);
};

const changeBoard = ({ board, hasCover }: Assembly, act: BoardAct, { sizes }: LockToFit): Done => {
  if (board === null) return "no-board";
  if (hasCover && "luck" in act) return "cover-in-the-way";
  const done = boardAfter(board, act, sizes.staticHarms);
  return typeof done === "string" ? done : { board: done };
};

const ACTS: Acts = {
  "ring.put": (now, { offset, turned }) =>
    unless([dialInTheWay(now), ["is-there-already", now.ring !== null]], () => ({
      ring: { offset, turned, isTight: false },
    })),
  "ring.turned": (now, { by }) => changeRing(now, "loose", (ring) => ({ ring: { ...ring, turned: ring.turned + by } })),
  "ring.tightened": (now) => changeRing(now, "any", (ring) => ({ ring: { ...ring, isTight: true } })),
  "ring.loosened": (now) => changeRing(now, "any", (ring) => ({ ring: { ...ring, isTight: false } })),
  "ring.taken": (now) => changeRing(now, "loose", () => ({ ring: null })),

  "spindle.marked": (now, _, lock) =>
    unless([["no-dial", !hasDial(now)], coverInTheWay(now), ["ends-inside", standsOutNow(lock, now) <= 0]], () => ({
      spindle: { ...now.spindle, mark_mm: now.spindle.length_mm - standsOutNow(lock, now) },
    })),
  "spindle.cut": (now, { length_mm }) =>
    unless([dialInTheWay(now), ["too-short-to-cut", !(length_mm > 0 && length_mm < now.spindle.length_mm)]], () => ({
      spindle: { ...now.spindle, length_mm, end: "sawn", mark_mm: markLeft(now.spindle, length_mm) },
    })),
  "spindle.dressed": (now) =>
    unless([dialInTheWay(now), ["not-sawn", now.spindle.end !== "sawn"]], () => ({
      spindle: { ...now.spindle, end: "dressed" },
    })),
  "spindle.replaced": (now, _, { sizes }) =>
    unless([dialInTheWay(now), ["no-spare", now.spares === 0]], () => ({
      spindle: newSpindle(sizes.spindle_mm),
      spares: now.spares - 1,
      locker: without(now, "spindle-thread"),
    })),

  "washers.put": (now, { washers }, lock) =>
    unless(
      [
        ["body-in-the-way", now.body !== null],
        ["washers-too-thick", stackFit(washers, lock.sizes).force_N === Number.POSITIVE_INFINITY],
      ],
      () => ({ washers }),
    ),
  "body.hung": (now) => unless([["is-there-already", now.body !== null]], () => ({ body: "by-one" })),
  "body.tightened": (now) => unless([["no-body", now.body === null], coverInTheWay(now)], () => ({ body: "by-all" })),
  "body.taken": (now) =>
    unless([["no-body", now.body === null], coverInTheWay(now), dialInTheWay(now)], () => ({ body: null })),

  "dial.screwed": (now, { by }, lock) =>
    unless(
      [
        ["no-body", now.body === null],
        ["key-holds-dial", now.key !== null],
        ["glued-in", isGluedIn(now)],
        ["burr-in-the-thread", now.spindle.end === "sawn"],
      ],
      () => {
        const before = now.dialIn ?? 0;
        const most = now.ring === null ? Number.POSITIVE_INFINITY : farthestIn(lock, now.spindle.length_mm);
        if (by > 0 && now.dialIn !== null && before >= most) return "on-the-ring";
        return { dialIn: Math.max(0, Math.min(most, before + by)) };
      },
    ),
  "dial.taken": (now) =>
    unless(
      [
        ["no-dial", !hasDial(now)],
        ["key-holds-dial", now.key !== null],
        ["glued-in", isGluedIn(now)],
      ],
      () => ({ dialIn: null }),
    ),

  "key.put": (now, _, lock) =>
    unless([["no-dial", !hasDial(now)], coverInTheWay(now), ["is-there-already", now.key !== null]], () => {
      const keyway = keywayAt(lock, now.dialIn ?? 0);
      if (keyway === null) return "keyways-apart";
      return { key: { keyway, isSeated: false, screw: now.spindle.isStripped ? "stripped" : "out" } };
    }),
  "key.driven": (now) => changeKey(now, (key) => ({ key: { ...key, isSeated: true } })),
  "key.screwed": (now, { torque_Nm }, { sizes }) =>
    changeKey(now, (key) => {
      if (now.spindle.isStripped) return {};
      const screw = screwAfter(torque_Nm, [sizes.screwHolds_Nm, sizes.screwStrips_Nm]);
      return { key: { ...key, screw }, spindle: { ...now.spindle, isStripped: screw === "stripped" } };
    }),
  "key.taken": (now) => changeKey(now, () => ({ key: null, locker: without(now, "key-screw") })),
  "locker.dropped": (now, { at }) =>
    unless([coverInTheWay(now), ["no-wheels", at === "wheels" && now.board !== null]], () => ({
      locker: [...without(now, at), at],
    })),

  "strike.hung": (now, { above_mm }) =>
    unless([["is-there-already", now.strike !== null]], () => ({ strike: { above_mm, screws: "by-one" } })),
  "strike.moved": ({ strike }, { by_mm }) => {
    if (strike === null) return "no-strike";
    if (strike.screws === "by-all") return "strike-is-tight";
    return { strike: { ...strike, above_mm: strike.above_mm + by_mm } };
  },
  "strike.tightened": ({ strike }) => (strike === null ? "no-strike" : { strike: { ...strike, screws: "by-all" } }),
  "strike.loosened": ({ strike }) => (strike === null ? "no-strike" : { strike: { ...strike, screws: "by-one" } }),

  "cover.put": (now, _, lock) =>
    unless(
      [
        ["no-body", now.body === null],
        ["is-there-already", now.hasCover],
        ["cover-touches-spindle", hasDial(now) && standsOutNow(lock, now) > lock.sizes.outMost_mm],
      ],
      () => ({ hasCover: true }),
    ),
  "cover.taken": (now) => unless([["no-cover", !now.hasCover]], () => ({ hasCover: false })),

  "strap.put": changeBoard,
  "strap.taken": changeBoard,
  "cable.plugged": changeBoard,
  "cable.pulled": changeBoard,
  "battery.connected": changeBoard,
  "battery.disconnected": changeBoard,
  "fuse.replaced": changeBoard,
  "board.replaced": changeBoard,
};

/**
 * A lock after an act. Nothing but what stands in the way prevents one: an unwise order shows in the lock that comes of it.
 *
 * @returns the lock as it is then; unchanged, with what stood in the way, where the act could not be done
 */
export function putTogether(now: Assembly, act: FittingAct, lock: LockToFit): PutTogether {
  const done = (ACTS[act.type] as (now: Assembly, act: FittingAct, lock: LockToFit) => Done)(now, act, lock);
  if (typeof done === "string") return { assembly: now, hindrance: done };
  return { assembly: { ...now, ...done }, hindrance: null };
}
