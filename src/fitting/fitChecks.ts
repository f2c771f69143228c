import type { Assembly } from "./assembly";
import type { FitCheck } from "./fitCheck";
import type { FittingAct } from "./fittingAct";

/** The checks, in the order in which one makes them. */
export const FIT_CHECKS = [
  "depth",
  "feelers",
  "turn-round",
  "push-pull",
  "rim",
  "key",
  "nose",
  "zero",
  "side",
  "marks",
  "wheels",
  "screws",
  "bolt",
  "cover",
  "wires",
  "self-check",
] as const satisfies readonly FitCheck[];

/** Acts on which few checks depend, with those; every check depends on any other act. */
const VOIDS: { readonly [Type in FittingAct["type"]]?: readonly FitCheck[] } = {
  "spindle.marked": [],
  "cover.put": ["cover"],
  "cover.taken": ["cover"],
  "strap.put": [],
  "strap.taken": [],
  "cable.plugged": ["wires", "self-check"],
  "cable.pulled": ["wires", "self-check"],
  "battery.connected": ["wires", "self-check"],
  "battery.disconnected": ["wires", "self-check"],
  "fuse.replaced": ["wires", "self-check"],
  "board.replaced": ["wires", "self-check"],
};

/** The checks that an act makes worthless: what they showed may be otherwise now. */
export const voidedBy = ({ type }: FittingAct): readonly FitCheck[] => VOIDS[type] ?? FIT_CHECKS;

const OF_WHEELS: readonly FitCheck[] = ["wheels"];
const OF_ELECTRONICS: readonly FitCheck[] = ["wires", "self-check"];

/** The checks that there are on a lock, in the order in which one makes them. */
export const checksOf = ({ board }: Pick<Assembly, "board">): readonly FitCheck[] =>
  FIT_CHECKS.filter((check) => !(board === null ? OF_ELECTRONICS : OF_WHEELS).includes(check));

/** Which checks there are now: the second set has the lever's nose and the look from the side. */
export const CHECK_SET = 2;
/** Which checks there were when something was recorded; undefined for the first set, before which there was no other. */
export type CheckSet = typeof CHECK_SET | undefined;

const OF_SECOND_SET: readonly FitCheck[] = ["nose", "side"];

/** Whether a check was among those that there were. */
export const isInSet = (check: FitCheck, set: CheckSet): boolean => set === CHECK_SET || !OF_SECOND_SET.includes(check);
