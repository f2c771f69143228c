import { type Graduations, wrap } from "../lock/dial";
import { exact } from "../lock/exact";
import { readsTooMuch } from "../lock/train/runout";
import type { Chance } from "../statistics/chance";
import { drawNormal } from "../statistics/drawNormal";
import type { Assembly, LockerPlace } from "./assembly";
import { type Leads, NEW_BOARD, type SelfCheck, selfCheckOf } from "./board";
import type { Fit } from "./fit";
import { gapAround, type LockToFit } from "./fittedLock";
import type { Hindrance } from "./fittingAct";
import { parallaxError } from "./geometry/parallax";
import type { KeyScrew } from "./keySeat";
import { faceOf, readingError, turnedRight } from "./offCenter";
import type { RingReading } from "./offsetEstimate";
import { FITTING } from "./trainingValues";

/** A check that a technician makes, and what it showed: an instrument's figure or what a hand feels, never a judgment. */
export type FitObservation =
  /** Turned all round: how far the hand gets ahead, graduations in tenths, and whether it catches once in the turn. */
  | { readonly kind: "turn-round"; readonly ahead: Graduations; readonly catches: boolean; readonly scrapes: boolean }
  /** Pushed and pulled: the dial gauge, millimeters in hundredths, and whether it scrapes when pushed. */
  | { readonly kind: "push-pull"; readonly moves_mm: number; readonly scrapes: boolean }
  /** The thickest leaf that goes between dial and ring, at each of four places, millimeters. */
  | { readonly kind: "feelers"; readonly leaves_mm: readonly number[] }
  /**
   * What the dial reads too much at four marks round the ring: each read twice, the dial half a turn apart, and the middle
   * of both taken, so that what goes round with the dial is not in it.
   */
  | { readonly kind: "marks"; readonly readings: readonly RingReading[] }
  /** The slit between the rim of the dial and the ring at its top, the dial turned to four places, millimeters. */
  | { readonly kind: "rim"; readonly slits_mm: readonly number[] }
  /** The dial's reading with the gate under the nose, graduations off zero, in tenths. */
  | { readonly kind: "zero"; readonly reads: Graduations }
  /** The gate turned away from the lever: whether nothing on the cam touches the lever, so that its nose hangs clear. */
  | { readonly kind: "nose"; readonly isClear: boolean }
  /** The opening index read from the farthest eye on either side: what it reads too much beside straight on, graduations. */
  | { readonly kind: "side"; readonly eyes: readonly { readonly angle_deg: number; readonly error: Graduations }[] }
  /** The depth gauge on the cam's face, millimeters in tenths; negative where the spindle ends inside. */
  | { readonly kind: "depth"; readonly out_mm: number }
  /** A look at the key from the side, and a hand on its screw. */
  | {
      readonly kind: "key";
      readonly standsProud: boolean;
      readonly screw: KeyScrew;
      readonly lockerAt: readonly LockerPlace[];
    }
  /** The wheels turned one by one. */
  | { readonly kind: "wheels"; readonly turn: boolean }
  /** A screwdriver on every screw of ring, body and strike. */
  | { readonly kind: "screws"; readonly give: readonly ("ring" | "body" | "strike")[] }
  /**
   * The bolt worked into its strike: whether it drags, null where there is no strike; and how much farther the hand gets ahead
   * before it comes, graduations in tenths.
   */
  | { readonly kind: "bolt"; readonly drags: boolean | null; readonly ahead: Graduations }
  | { readonly kind: "cover"; readonly isOn: boolean }
  /** A look at the wires of an electronic lock, and at its fuse. */
  | {
      readonly kind: "wires";
      readonly leads: Leads | null;
      readonly hasCable: boolean;
      readonly isFuseBlown: boolean;
    }
  /** What an electronic lock shows of itself. */
  | { readonly kind: "self-check"; readonly shows: SelfCheck };

/** Names a check. */
export type FitCheck = FitObservation["kind"];

const { leafStep_mm, leafMost_mm } = FITTING;

/** The leaves of a feeler gauge, thinnest first, millimeters. */
export const LEAVES_mm: readonly number[] = Array.from({ length: Math.round(leafMost_mm / leafStep_mm) }, (_, k) =>
  exact((k + 1) * leafStep_mm),
);

/** The thickest leaf that goes into a gap, millimeters; 0 where none does. */
export const thickestLeaf = (gap_mm: number): number => LEAVES_mm.findLast((leaf_mm) => leaf_mm <= gap_mm) ?? 0;

/** Where round the dial a leaf is tried, as parts of a turn to the right of the top. */
export const LEAF_PLACES = (["top", "right", "bottom", "left"] as const).map((name, k, { length }) => ({
  name,
  part: k / length,
}));

const rounded = (value: number, step: number) => Math.round(value / step) * step + 0;

/** What the opening index reads with the gate under the nose, at most half a turn from zero. */
const zeroReads = ({ openingReads, numbersOff, runout }: Fit, perTurn: number): Graduations =>
  wrap(openingReads - numbersOff + readsTooMuch(runout, -numbersOff, perTurn), perTurn);

type Of<Kind extends FitCheck> = Extract<FitObservation, { readonly kind: Kind }>;
type Look<Kind extends FitCheck> = (seen: Seen) => Of<Kind>;

interface Seen {
  readonly fit: Fit;
  readonly assembly: Assembly;
  readonly lock: LockToFit;
  readonly chance: Chance;
}

const four = (perTurn: number) => [0, 0.25, 0.5, 0.75].map((part) => part * perTurn);

const LOOKS: { readonly [Kind in FitCheck]: Look<Kind> } = {
  "turn-round": ({ fit, chance }) => ({
    kind: "turn-round",
    ahead: Math.max(0, rounded(drawNormal(chance, fit.drag, FITTING.aheadSpread), FITTING.aheadStep)),
    catches: fit.onceATurn.arc > 0,
    scrapes: fit.rub === "all-round" || fit.rub === "at-one-side",
  }),
  "push-pull": ({ fit, chance }) => ({
    kind: "push-pull",
    moves_mm: Math.max(
      0,
      rounded(drawNormal(chance, fit.endPlay_mm, FITTING.dialGaugeSpread_mm), FITTING.gaugeStep_mm),
    ),
    scrapes: fit.rub === "when-pushed",
  }),
  feelers: ({ assembly, lock }) => ({
    kind: "feelers",
    leaves_mm: LEAF_PLACES.map(({ part }) => thickestLeaf(gapAround(assembly, lock, part))),
  }),
  rim: ({ assembly: { ring, spindle }, lock: { perTurn, sizes }, chance }) => ({
    kind: "rim",
    slits_mm: four(perTurn).map((place) => {
      const { y_mm } = turnedRight(spindle.bend, (-2 * Math.PI * place) / perTurn);
      const slit_mm = sizes.rimRoom_mm + (ring?.offset.y_mm ?? 0) - y_mm;
      return Math.max(0, rounded(drawNormal(chance, slit_mm, FITTING.slitSpread_mm), FITTING.gaugeStep_mm));
    }),
  }),
  marks: ({ assembly: { ring, spindle }, lock: { perTurn, sizes }, chance }) => ({
    kind: "marks",
    readings: four(perTurn).map((place) => {
      const face = faceOf(perTurn, sizes.markRadius_mm, ring?.offset ?? null, spindle.bend);
      const seen = (dial: Graduations) => drawNormal(chance, readingError(face, place, dial), FITTING.eyeSpread);
      return { place, error: (seen(0) + seen(perTurn / 2)) / 2 - (ring?.turned ?? 0) };
    }),
  }),
  zero: ({ fit, lock, chance }) => ({
    kind: "zero",
    reads: rounded(drawNormal(chance, zeroReads(fit, lock.perTurn), FITTING.eyeSpread), FITTING.zeroStep),
  }),
  nose: ({ fit }) => ({ kind: "nose", isClear: fit.onceATurn.arc === 0 }),
  side: ({ fit, lock: { perTurn, sizes } }) => ({
    kind: "side",
    eyes: [Math.min(...FITTING.eyesAt_deg), Math.max(...FITTING.eyesAt_deg)].map((angle_deg) => ({
      angle_deg,
      error: rounded(parallaxError(fit.gap_mm, angle_deg, sizes.markRadius_mm, perTurn), FITTING.sideReadsTo),
    })),
  }),
  depth: ({ fit, chance }) => ({
    kind: "depth",
    out_mm: rounded(drawNormal(chance, fit.standsOut_mm, FITTING.depthSpread_mm), FITTING.depthStep_mm),
  }),
  key: ({ assembly: { key, locker } }) => ({
    kind: "key",
    standsProud: key?.isSeated === false,
    screw: key?.screw ?? "out",
    lockerAt: locker.filter((at) => at !== "wheels"),
  }),
  wheels: ({ assembly: { locker } }) => ({ kind: "wheels", turn: !locker.includes("wheels") }),
  screws: ({ assembly: { ring, body, strike } }) => ({
    kind: "screws",
    give: [
      ...(ring?.isTight === false ? (["ring"] as const) : []),
      ...(body === "by-one" ? (["body"] as const) : []),
      ...(strike?.screws === "by-one" ? (["strike"] as const) : []),
    ],
  }),
  bolt: ({ fit, assembly: { strike } }) => ({
    kind: "bolt",
    drags: strike === null ? null : fit.bolt_mm > 0,
    ahead: rounded(fit.binding, FITTING.aheadStep),
  }),
  cover: ({ assembly: { hasCover } }) => ({ kind: "cover", isOn: hasCover }),
  wires: ({ assembly: { board } }) => {
    const { leads, hasCable, isFuseBlown } = board ?? NEW_BOARD;
    return { kind: "wires", leads, hasCable, isFuseBlown };
  },
  "self-check": ({ assembly: { board } }) => ({ kind: "self-check", shows: selfCheckOf(board ?? NEW_BOARD) }),
};

/** Checks of what lies under the cover. */
const UNDER_COVER: readonly FitCheck[] = ["depth", "key", "nose", "wheels", "screws", "wires"];

/** What stands in the way of a check, or null. */
export const hindranceTo = (check: FitCheck, { hasCover }: Assembly): Hindrance | null =>
  hasCover && UNDER_COVER.includes(check) ? "cover-in-the-way" : null;

/**
 * Makes a check.
 *
 * @param chance - source of the spread of hand and instrument
 */
export const checkFit = (kind: FitCheck, seen: Seen): FitObservation => LOOKS[kind](seen);
