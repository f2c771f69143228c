import { type Assembly, inTheTray } from "../../src/fitting/assembly";
import { NEW_BOARD } from "../../src/fitting/board";
import { type Fit, fitOf } from "../../src/fitting/fit";
import { checkFit, type FitCheck, type FitObservation } from "../../src/fitting/fitCheck";
import { checksOf } from "../../src/fitting/fitChecks";
import type { FitFault } from "../../src/fitting/fitFaultCode";
import { gapAtFirstHold, goodPlaces, type LockToFit } from "../../src/fitting/fittedLock";
import type { FittingAct } from "../../src/fitting/fittingAct";
import { TRAINING_SIZES } from "../../src/fitting/fittingSizes";
import { spindleLength } from "../../src/fitting/geometry/spindleLength";
import { CENTERED } from "../../src/fitting/offCenter";
import { offsetEstimate } from "../../src/fitting/offsetEstimate";
import { putTogether } from "../../src/fitting/putTogether";
import type { Chance } from "../../src/statistics/chance";

/** A training lock with 100 graduations. @param slotAt - graduations in [0, 100) */
export const trainingLock = (slotAt: number): LockToFit => ({
  sizes: TRAINING_SIZES,
  perTurn: 100,
  changingIndex: 10,
  slotAt,
  isElectronic: false,
});

/** The lock after acts, each of which must go. */
export function after(start: Assembly, acts: readonly FittingAct[], lock: LockToFit): Assembly {
  return acts.reduce((now, act) => {
    const { assembly, hindrance } = putTogether(now, act, lock);
    if (hindrance !== null) throw new Error(`${act.type}: ${hindrance}`);
    return assembly;
  }, start);
}

/** The acts that fit a lock well, in order. @param has_mm - length of the spindle there is: one that is right is not cut */
export function goodActs(lock: LockToFit, has_mm = lock.sizes.spindle_mm): readonly FittingAct[] {
  const { gapLeast_mm, gapMost_mm, screwHolds_Nm, hole_mm, bolt_mm } = lock.sizes;
  const middle_mm = (gapLeast_mm + gapMost_mm) / 2;
  const length_mm = Math.min(spindleLength(lock.sizes, middle_mm), has_mm);
  const off_mm = ({ gap_mm }: { readonly gap_mm: number }) => Math.abs(gap_mm - middle_mm);
  const [place] = [...goodPlaces(lock, length_mm)].sort((one, other) => off_mm(one) - off_mm(other));
  if (place === undefined) throw new Error("no good place");
  return [
    { type: "washers.put", washers: ["flat", "flat", "spring"] },
    { type: "body.hung" },
    { type: "body.tightened" },
    { type: "ring.put", offset: { x_mm: 0.02, y_mm: -0.01 }, turned: 0 },
    { type: "ring.tightened" },
    ...(length_mm < has_mm ? ([{ type: "spindle.cut", length_mm }, { type: "spindle.dressed" }] as const) : []),
    { type: "dial.screwed", by: place.turnedIn },
    { type: "key.put" },
    { type: "key.driven" },
    { type: "key.screwed", torque_Nm: 1.5 * screwHolds_Nm },
    { type: "locker.dropped", at: "key-screw" },
    { type: "strike.hung", above_mm: Math.min(0.2, (hole_mm - bolt_mm) / 4) },
    { type: "strike.tightened" },
    { type: "cover.put" },
  ];
}

/** The acts that connect an electronic lock well, the strap on first. */
export const ELECTRONIC_ACTS: readonly FittingAct[] = [
  { type: "strap.put" },
  { type: "cable.plugged", luck: 0 },
  { type: "battery.connected", leads: "right", luck: 0 },
];

/** An electronic lock, fitted well. */
export const wellConnected = (lock: LockToFit): Assembly =>
  after(inTheTray(lock.sizes.spindle_mm, CENTERED, NEW_BOARD), [...ELECTRONIC_ACTS, ...goodActs(lock)], lock);

export const wellFitted = (lock: LockToFit): Assembly => after(inTheTray(lock.sizes.spindle_mm), goodActs(lock), lock);

export function fitted(assembly: Assembly, lock: LockToFit): Fit {
  const fit = fitOf(assembly, lock);
  if (fit === null) throw new Error("not together");
  return fit;
}

/** How far to screw a dial in for a gap, graduations. */
export const dialInFor = (lock: LockToFit, length_mm: number, gap_mm: number): number =>
  ((gapAtFirstHold(lock, length_mm) - gap_mm) * lock.sizes.threadsPerInch * lock.perTurn) / 25.4;

type Of<Kind extends FitCheck> = Extract<FitObservation, { readonly kind: Kind }>;
type Conclusions = {
  readonly [Kind in FitCheck]: (seen: Of<Kind>, lock: LockToFit, all: readonly FitObservation[]) => readonly FitFault[];
};

const when = (fault: FitFault, isSo: boolean): readonly FitFault[] => (isSo ? [fault] : []);

/** What each check tells to someone who knows the limits and nothing of the lock. */
const CONCLUSIONS: Conclusions = {
  "turn-round": ({ ahead, scrapes }) => [
    ...when("rubs", scrapes),
    // What scrapes holds the dial too: the rest is the washers'.
    ...when("dial-heavy", ahead - (scrapes ? 1.5 : 0) > 1.05),
  ],
  "push-pull": ({ moves_mm, scrapes }, { sizes }) => [
    ...when("rubs", scrapes),
    ...when("end-play", moves_mm > sizes.endPlayMost_mm + 0.02),
  ],
  feelers: ({ leaves_mm }, { sizes }) => when("gap-wide", Math.min(...leaves_mm) >= sizes.gapMost_mm),
  marks: ({ readings }, { sizes, perTurn }) => {
    const { offset } = offsetEstimate(readings, sizes.markRadius_mm, perTurn);
    return when("ring-off-center", Math.hypot(offset.x_mm, offset.y_mm) > 0.25);
  },
  rim: ({ slits_mm }) => {
    const [top = 0, right = 0, bottom = 0, left = 0] = slits_mm;
    return when("spindle-bent", Math.hypot(top - bottom, right - left) / 2 > 0.2);
  },
  nose: ({ isClear }) => when("key-not-seated", !isClear),
  side: () => [],
  zero: ({ reads }, { perTurn, sizes }) => when("wrong-keyway", Math.abs(reads) > perTurn / sizes.keyways / 2),
  depth: ({ out_mm }, { sizes }) => [
    ...when("spindle-short", out_mm < sizes.outLeast_mm - 0.15),
    ...when("spindle-long", out_mm > sizes.outMost_mm + 0.15),
  ],
  key: ({ standsProud, screw, lockerAt }) => [
    ...when("key-not-seated", standsProud),
    ...when("key-screw-loose", screw === "loose" || screw === "out"),
    ...when("key-screw-stripped", screw === "stripped"),
    ...when("key-screw-unsecured", screw === "firm" && !lockerAt.includes("key-screw")),
    ...when("locker-astray", lockerAt.includes("spindle-thread")),
  ],
  wheels: ({ turn }) => when("locker-astray", !turn),
  screws: ({ give }) => [
    ...when("ring-loose", give.includes("ring")),
    ...when("body-by-one-screw", give.includes("body")),
    ...when("strike-by-one-screw", give.includes("strike")),
  ],
  bolt: ({ drags }) => [...when("bolt-binds", drags === true), ...when("strike-missing", drags === null)],
  cover: ({ isOn }) => when("cover-off", !isOn),
  wires: ({ leads, hasCable, isFuseBlown }) => [
    ...when("battery-missing", leads === null),
    ...when("battery-reversed", leads === "reversed"),
    ...when("fuse-blown", isFuseBlown),
    ...when("cable-out", !hasCable),
  ],
  "self-check": ({ shows }, _, all) => {
    const wires = all.find((one) => one.kind === "wires");
    // What the wires explain is no fault of the board.
    const isWired = wires?.hasCable === true && wires.leads === "right" && !wires.isFuseBlown;
    return [
      ...when("encoder-not-found", isWired && shows === "no-encoder"),
      ...when("board-harmed", shows === "unsteady" || (isWired && shows === "silent")),
    ];
  },
};

/** A technician who makes checks, every one where none are named, and says what is wrong. */
export function diagnosed(
  assembly: Assembly,
  lock: LockToFit,
  chance: Chance,
  checks = checksOf(assembly),
): ReadonlySet<FitFault> {
  const fit = fitted(assembly, lock);
  const seen = checks.map((kind) => checkFit(kind, { fit, assembly, lock, chance }));
  const concluded = (one: FitObservation) =>
    (CONCLUSIONS[one.kind] as (...all: readonly [FitObservation, LockToFit, typeof seen]) => readonly FitFault[])(
      one,
      lock,
      seen,
    );
  return new Set(seen.flatMap(concluded));
}
