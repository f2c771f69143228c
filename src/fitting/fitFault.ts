import type { Graduations } from "../lock/dial";
import type { Assembly, RingOn, Spindle } from "./assembly";
import { type Board, selfCheckOf } from "./board";
import type { Fit } from "./fit";
import { FIT_FAULTS, type FitFault } from "./fitFaultCode";
import type { FittingSizes } from "./fittingSizes";
import { offsetOf } from "./offCenter";
import { FITTING } from "./trainingValues";

/** Whether a ring is too far off center. */
export const isOffCenter = ({ offset }: RingOn): boolean => offsetOf(offset) > FITTING.offCenterMost_mm;
/** Whether a spindle is bent too much. */
export const isBent = ({ bend }: Spindle): boolean => offsetOf(bend) > FITTING.bentMost_mm;
/** Whether washers make a dial heavy. @param washerDrag - how far they let the hand get ahead, graduations */
export const isHeavy = (washerDrag: Graduations): boolean => washerDrag > FITTING.aheadMost;

type Rule = (fit: Fit, assembly: Assembly, sizes: FittingSizes) => boolean;

const ofBoard =
  (isSo: (board: Board) => boolean): Rule =>
  (_, { board }) =>
    board !== null && isSo(board);

const RULES: Readonly<Record<FitFault, Rule>> = {
  "ring-off-center": (_, { ring }) => ring !== null && isOffCenter(ring),
  "ring-loose": (_, { ring }) => ring?.isTight === false,
  rubs: ({ rub }) => rub !== "nowhere",
  "gap-wide": ({ gap_mm }, _, { gapMost_mm }) => gap_mm > gapMost_mm,
  "wrong-keyway": ({ numbersOff }) => numbersOff !== 0,
  "key-not-seated": (_, { key }) => key?.isSeated === false,
  "key-screw-loose": (_, { key }) => key?.screw === "out" || key?.screw === "loose",
  "key-screw-stripped": (_, { key }) => key?.screw === "stripped",
  "key-screw-unsecured": (_, { key, locker }) => key?.screw === "firm" && !locker.includes("key-screw"),
  "end-play": ({ endPlay_mm }, _, { endPlayMost_mm }) => endPlay_mm > endPlayMost_mm,
  "dial-heavy": ({ washerDrag }) => isHeavy(washerDrag),
  "spindle-short": ({ standsOut_mm }, _, { outLeast_mm }) => standsOut_mm < outLeast_mm,
  "spindle-long": ({ standsOut_mm }, _, { outMost_mm }) => standsOut_mm > outMost_mm,
  "spindle-bent": (_, { spindle }) => isBent(spindle),
  "locker-astray": (_, { locker }) => locker.some((at) => at !== "key-screw"),
  "body-by-one-screw": (_, { body }) => body === "by-one",
  "strike-missing": (_, { strike }) => strike === null,
  "strike-by-one-screw": (_, { strike }) => strike?.screws === "by-one",
  "bolt-binds": ({ bolt_mm }) => bolt_mm > 0,
  "cover-off": (_, { hasCover }) => !hasCover,
  "battery-missing": ofBoard(({ leads }) => leads === null),
  "battery-reversed": ofBoard(({ leads }) => leads === "reversed"),
  "fuse-blown": ofBoard(({ isFuseBlown }) => isFuseBlown),
  "cable-out": ofBoard(({ hasCable }) => !hasCable),
  "encoder-not-found": ofBoard((board) => board.hasCable && selfCheckOf(board) === "no-encoder"),
  "board-harmed": ofBoard(({ harm }) => harm !== "none"),
};

/** All that is wrong with a fit, in the order of `FIT_FAULTS`; none where it is good. */
export const fitFaults = (fit: Fit, assembly: Assembly, sizes: FittingSizes): readonly FitFault[] =>
  FIT_FAULTS.filter((fault) => RULES[fault](fit, assembly, sizes));
