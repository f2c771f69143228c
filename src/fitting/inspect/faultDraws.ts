import type { Range } from "../../lock/profile";
import type { Chance } from "../../statistics/chance";
import { anyWay } from "../doorToFit";
import { BOARD_FAULTS, FIT_FAULTS, type FitFault } from "../fitFault";
import type { LockToFit } from "../fittedLock";
import type { BoardAct } from "../fittingAct";
import { leadOf } from "../geometry/spindleThread";
import type { Offset } from "../offCenter";
import type { Washer } from "../washerStack";
import type { FitPlan } from "./fitPlan";

/** Draws what a plan leaves to chance. */
interface Draws {
  readonly between: (range: Range) => number;
  readonly oneOf: <T>(first: T, ...others: readonly T[]) => T;
  /** Any way off the middle. @param range - least and most, millimeters */
  readonly anyWay: (range: Range) => Offset;
}

const drawsOf = (chance: Chance): Draws => {
  const between = ([least, most]: Range) => least + (most - least) * chance();
  return {
    between,
    oneOf: (first, ...others) => others[Math.floor(chance() * (others.length + 1)) - 1] ?? first,
    anyWay: (range) => anyWay(range, chance),
  };
};

/**
 * What is drawn: training values. A good size keeps clear of the limits of a good fit, and a bad one lies beyond them, by
 * more than what hand and instrument are off, so that a check tells the two apart.
 */
function rangesOf({ sizes }: LockToFit) {
  const { gapLeast_mm, gapMost_mm, outLeast_mm, outMost_mm, rimRoom_mm, screwHolds_Nm, screwStrips_Nm } = sizes;
  const inGap = (part: number) => gapLeast_mm + part * (gapMost_mm - gapLeast_mm);
  const inScrew = (part: number) => screwHolds_Nm + part * (screwStrips_Nm - screwHolds_Nm);
  const lead_mm = leadOf(sizes.threadsPerInch);
  const strikePlay_mm = (sizes.hole_mm - sizes.bolt_mm) / 2;
  const rising = (least: number, most: number): Range => [least, Math.max(least, most)];
  return {
    goodOffset_mm: [0, 0.06],
    // Farther off than its room at the rim, a dial rubs too.
    badOffset_mm: rising(0.45, Math.min(0.7, rimRoom_mm - 0.1)),
    goodGap_mm: [inGap(0.3), inGap(0.8)],
    noGap_mm: [0.15 * gapLeast_mm, 0.75 * gapLeast_mm],
    wideGap_mm: [gapMost_mm + 0.1, gapMost_mm + 0.6],
    goodOut_mm: rising(outLeast_mm + 0.3, outMost_mm - 0.35 - lead_mm),
    short_mm: rising(outLeast_mm - 1.9, outLeast_mm - 0.35 - lead_mm),
    long_mm: [outMost_mm + 0.3, outMost_mm + 1.1],
    firm_Nm: [inScrew(0.2), inScrew(0.8)],
    loose_Nm: [0.1 * screwHolds_Nm, 0.75 * screwHolds_Nm],
    strips_Nm: [1.2 * screwStrips_Nm, 1.8 * screwStrips_Nm],
    goodStrike_mm: [-0.7 * strikePlay_mm, 0.7 * strikePlay_mm],
    binds_mm: [strikePlay_mm + 0.5, strikePlay_mm + 2.5],
  } as const satisfies Readonly<Record<string, Range>>;
}

/** A spring that touches the cam scrapes it. */
const SCRAPING: readonly Washer[] = ["spring", "flat", "flat"];

/** Touches with the strap on do no harm, whatever the luck. */
const STRAP_ON: BoardAct = { type: "strap.put" };
const CABLE: BoardAct = { type: "cable.plugged", luck: 0 };
const BATTERY: BoardAct = { type: "battery.connected", leads: "right", luck: 0 };
const REVERSED: BoardAct = { type: "battery.connected", leads: "reversed", luck: 0 };
const WIRED: readonly BoardAct[] = [STRAP_ON, CABLE, BATTERY];

/** A plan with nothing wrong. */
export function goodPlan(lock: LockToFit, chance: Chance): FitPlan {
  const ranges = rangesOf(lock);
  const { between, oneOf, anyWay } = drawsOf(chance);
  return {
    bend: anyWay(ranges.goodOffset_mm),
    washers: oneOf<readonly Washer[]>(["flat", "flat", "spring"], ["flat", "spring"], ["flat", "spring", "spring"]),
    body: "by-all",
    ring: { offset: anyWay(ranges.goodOffset_mm), isTight: true },
    gap_mm: between(ranges.goodGap_mm),
    out_mm: between(ranges.goodOut_mm),
    keyway: 0,
    isKeyDriven: true,
    torque_Nm: between(ranges.firm_Nm),
    locker: ["key-screw"],
    strike: { above_mm: between(ranges.goodStrike_mm), screws: "by-all" },
    hasCover: true,
    wiring: WIRED,
  };
}

type Ranges = ReturnType<typeof rangesOf>;
type Spoil = (plan: FitPlan, draws: Draws, ranges: Ranges, lock: LockToFit) => Partial<FitPlan>;

/** What each fault changes of a plan. */
const SPOIL: Readonly<Record<FitFault, Spoil>> = {
  "ring-off-center": ({ ring }, { anyWay }, { badOffset_mm }) => ({ ring: { ...ring, offset: anyWay(badOffset_mm) } }),
  "ring-loose": ({ ring }) => ({ ring: { ...ring, isTight: false } }),
  rubs: (_, { between }, { noGap_mm }) => ({ gap_mm: between(noGap_mm) }),
  "gap-wide": (_, { between }, { wideGap_mm }) => ({ gap_mm: between(wideGap_mm) }),
  "wrong-keyway": (_, { oneOf }) => ({ keyway: oneOf(1, 2, 3) }),
  "key-not-seated": () => ({ isKeyDriven: false }),
  "key-screw-loose": (_, { between }, { loose_Nm }) => ({ torque_Nm: between(loose_Nm) }),
  "key-screw-stripped": (_, { between }, { strips_Nm }) => ({ torque_Nm: between(strips_Nm) }),
  "key-screw-unsecured": ({ locker }) => ({ locker: locker.filter((at) => at !== "key-screw") }),
  // Play that is more than the gap would let the dial rub too.
  "end-play": (plan) => ({ washers: ["spring"], gap_mm: Math.max(plan.gap_mm, 0.7) }),
  "dial-heavy": () => ({ washers: SCRAPING }),
  "spindle-short": (_, { between }, { short_mm }) => ({ out_mm: between(short_mm) }),
  // The cover does not go over it.
  "spindle-long": (_, { between }, { long_mm }) => ({ out_mm: between(long_mm), hasCover: false }),
  "spindle-bent": (_, { anyWay }, { badOffset_mm }) => ({ bend: anyWay(badOffset_mm) }),
  "locker-astray": ({ locker }, { oneOf }, _, { isElectronic }) => ({
    locker: [...locker, isElectronic ? "spindle-thread" : oneOf("wheels", "spindle-thread")],
  }),
  "body-by-one-screw": () => ({ body: "by-one" }),
  "strike-missing": () => ({ strike: null }),
  "strike-by-one-screw": ({ strike }) => ({ strike: strike && { ...strike, screws: "by-one" } }),
  "bolt-binds": ({ strike }, { between, oneOf }, { binds_mm }) => ({
    strike: strike && { ...strike, above_mm: between(binds_mm) * oneOf(1, -1) },
  }),
  "cover-off": () => ({ hasCover: false }),
  // One of these hides another, so each is wired anew.
  "battery-missing": () => ({ wiring: [STRAP_ON, CABLE] }),
  "battery-reversed": () => ({ wiring: [STRAP_ON, CABLE, REVERSED] }),
  "fuse-blown": () => ({
    wiring: [STRAP_ON, CABLE, REVERSED, { type: "battery.disconnected", luck: 0 }, BATTERY],
  }),
  "cable-out": () => ({ wiring: [STRAP_ON, BATTERY] }),
  "encoder-not-found": () => ({ wiring: [STRAP_ON, BATTERY, CABLE] }),
  // Least luck kills the board, a little more leaves it unsteady.
  "board-harmed": (_, { oneOf }, _ranges, { sizes: { staticHarms } }) => ({
    wiring: [{ ...CABLE, luck: oneOf(0, staticHarms / 2) }, STRAP_ON, BATTERY],
  }),
};

/** A plan with one more thing wrong. */
export const spoiled = (plan: FitPlan, fault: FitFault, lock: LockToFit, chance: Chance): FitPlan => ({
  ...plan,
  ...SPOIL[fault](plan, drawsOf(chance), rangesOf(lock), lock),
});

/** The faults that a lock can have, in the order of `FIT_FAULTS`. */
export const faultsOn = ({ isElectronic }: Pick<LockToFit, "isElectronic">): readonly FitFault[] =>
  isElectronic ? FIT_FAULTS : FIT_FAULTS.filter((fault) => !BOARD_FAULTS.some((one) => one === fault));
