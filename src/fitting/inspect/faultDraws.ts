import type { Range } from "../../lock/profile";
import type { Chance } from "../../statistics/chance";
import { anyWay } from "../doorToFit";
import { BOARD_FAULTS, FIT_FAULTS, type FitFault } from "../fitFaultCode";
import type { LockToFit } from "../fittedLock";
import type { BoardAct } from "../fittingAct";
import { leadOf } from "../geometry/spindleThread";
import type { Offset } from "../offCenter";
import { FITTING } from "../trainingValues";
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

/** A limit overstepped. @param by - least and most beyond it */
const beyond = (by: Range, limit: number): Range => [limit + by[0], limit + by[1]];

/**
 * What is drawn. A good size keeps clear of the limits of a good fit, and a bad one lies beyond them, by more than what hand
 * and instrument are off, so that a check tells the two apart.
 */
function rangesOf({ sizes }: LockToFit) {
  const { gapLeast_mm, gapMost_mm, outLeast_mm, outMost_mm, rimRoom_mm, screwHolds_Nm, screwStrips_Nm } = sizes;
  const of = (parts: Range, size: number): Range => [parts[0] * size, parts[1] * size];
  const between = ([least, most]: Range, [from, to]: Range): Range => [
    from + least * (to - from),
    from + most * (to - from),
  ];
  const lead_mm = leadOf(sizes.threadsPerInch);
  const strikePlay_mm = (sizes.hole_mm - sizes.bolt_mm) / 2;
  const rising = (least: number, most: number): Range => [least, Math.max(least, most)];
  const { goodOutBy_mm, shortBy_mm, goodStrikePart } = FITTING;
  return {
    goodOffset_mm: FITTING.goodOffset_mm,
    // Farther off than its room at the rim, a dial rubs too.
    badOffset_mm: rising(
      FITTING.badOffset_mm[0],
      Math.min(FITTING.badOffset_mm[1], rimRoom_mm - FITTING.clearOfRim_mm),
    ),
    goodGap_mm: between(FITTING.goodGapPart, [gapLeast_mm, gapMost_mm]),
    noGap_mm: of(FITTING.noGapPart, gapLeast_mm),
    wideGap_mm: beyond(FITTING.wideGapBy_mm, gapMost_mm),
    goodOut_mm: rising(outLeast_mm + goodOutBy_mm[0], outMost_mm - goodOutBy_mm[1] - lead_mm),
    short_mm: rising(outLeast_mm - shortBy_mm[1], outLeast_mm - shortBy_mm[0] - lead_mm),
    long_mm: beyond(FITTING.longBy_mm, outMost_mm),
    firm_Nm: between(FITTING.firmPart, [screwHolds_Nm, screwStrips_Nm]),
    loose_Nm: of(FITTING.loosePart, screwHolds_Nm),
    strips_Nm: of(FITTING.stripsPart, screwStrips_Nm),
    goodStrike_mm: [-goodStrikePart * strikePlay_mm, goodStrikePart * strikePlay_mm],
    binds_mm: beyond(FITTING.bindsBy_mm, strikePlay_mm),
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
  "end-play": (plan) => ({ washers: ["spring"], gap_mm: Math.max(plan.gap_mm, FITTING.endPlayGap_mm) }),
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
