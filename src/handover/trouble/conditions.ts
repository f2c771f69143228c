import { TRAINING_SIZES } from "../../fitting/fittingSizes";
import { ridingArc } from "../../fitting/keySeat";
import { faceOf, readingError } from "../../fitting/offCenter";
import { FITTING } from "../../fitting/trainingValues";
import { type Graduations, reading, wrap } from "../../lock/dial";
import type { Profile } from "../../lock/profile";
import type { Chance } from "../../statistics/chance";
import type { Mechanics } from "./mechanics";
import type { LockCard, Trouble, TroubleKind } from "./trouble";
import { TROUBLE } from "./troubleValues";

/** One condition: which locks can have it, how large it gets, and what of the mechanics it changes. */
export interface Condition {
  /** Whether a lock can have it at all. */
  readonly fits: (profile: Profile) => boolean;
  /** Play between dial and cam that the card must state for it to show, graduations; 0 where any will do. */
  readonly leastPlay: Graduations;
  /** Draws place and size. */
  readonly draw: (card: LockCard, chance: Chance) => Omit<Trouble, "kind">;
  /** Builds it into a lock in order. */
  readonly apply: (sound: Mechanics, trouble: Omit<Trouble, "kind">) => Mechanics;
}

const between = (low: number, high: number, chance: Chance) => low + chance() * (high - low);
/** Either way, and large enough to be told from a lock in order. */
const eitherWay = (low: number, high: number, chance: Chance) => (chance() < 0.5 ? -1 : 1) * between(low, high, chance);

const isPack = ({ kind }: Profile) => kind === "wheel-pack";
const isEncoder = ({ kind }: Profile) => kind === "dial-encoder";
const always = () => true;

const sized = (draw: (chance: Chance, card: LockCard) => number): Condition["draw"] => {
  return (card, chance) => ({ part: null, size: draw(chance, card) });
};

/** Gates that all take the same window. @param window - graduations either way */
const withGates = (sound: Mechanics, window: Graduations): Mechanics => {
  const { profile } = sound;
  if (profile.kind !== "wheel-pack") return sound;
  const gateTolerance = profile.wheelPack.gateTolerance.map(() => window);
  return { ...sound, profile: { ...profile, wheelPack: { ...profile.wheelPack, gateTolerance } } };
};

/** A zero that is off for turns both ways. */
function drawStrayZero(chance: Chance, card: LockCard): Graduations {
  const stray = eitherWay(...TROUBLE.strayZero, chance);
  return Math.abs(stray - card.lostMotion) >= TROUBLE.clearlyOff ? stray : drawStrayZero(chance, card);
}

const isExcludedLast = (profile: Profile, number: number) =>
  (profile.combinationRules.excludedLast ?? []).some(([low, high]) => number >= low && number <= high);

/**
 * How far the last number lies inside the zone where it may not be: graduations to the nearest number outside, the
 * shorter way round.
 *
 * @returns 0 where it lies outside
 */
export function depthInZone(profile: Profile, last: Graduations): Graduations {
  const { graduations } = profile;
  const allowed = Array.from({ length: graduations }, (_, n) => n).filter((n) => !isExcludedLast(profile, n));
  if (!isExcludedLast(profile, last)) return 0;
  return Math.min(...allowed.map((n) => Math.abs(wrap(n - last, graduations))));
}

/** Directions in which a ring may be off: clockwise from the top, by the number that its condition names. */
const TO_SIDES = ["top", "right", "bottom", "left"] as const;

/** A ring off to one side, and what that makes the opening index read. */
function withRingOff(sound: Mechanics, size_mm: number, part: string | null): Mechanics {
  const angle = (Math.max(0, TO_SIDES.indexOf(part as (typeof TO_SIDES)[number])) * Math.PI) / 2;
  const ringOff = { x_mm: size_mm * Math.sin(angle), y_mm: size_mm * Math.cos(angle) };
  const face = faceOf(sound.profile.graduations, TRAINING_SIZES.markRadius_mm, ringOff);
  return { ...sound, ringOff, indexOffset: -readingError(face, 0, 0) };
}

/** The conditions. Sizes are training values and data, each with its reason: common practice, no source. */
export const CONDITIONS: Readonly<Record<TroubleKind, Condition>> = {
  "index-slipped": {
    fits: always,
    leastPlay: 0,
    draw: sized((chance) => eitherWay(...TROUBLE.slipped, chance)),
    apply: (sound, { size }) => ({ ...sound, indexOffset: size, ringTurned: size }),
  },
  "lost-motion": {
    fits: always,
    leastPlay: 0,
    draw: sized((chance, { lostMotion }) => lostMotion + between(...TROUBLE.playAdded, chance)),
    apply: (sound, { size }) => ({ ...sound, lostMotion: size }),
  },
  "wheel-off": {
    fits: isPack,
    leastPlay: 0,
    draw: ({ combination }, chance) => ({
      part: String(1 + Math.floor(chance() * combination.length)),
      size: eitherWay(...TROUBLE.wheelOff, chance),
    }),
    apply: (sound, { part, size }) => ({
      ...sound,
      combination: sound.combination.map((number, k) =>
        String(k + 1) === part ? reading(number + size, sound.profile.graduations) : number,
      ),
    }),
  },
  "dial-heavy": {
    fits: always,
    leastPlay: 0,
    draw: sized((chance) => between(...TROUBLE.heavy, chance)),
    apply: (sound, { size }) => ({ ...sound, drag: size }),
  },
  "gates-tight": {
    fits: isPack,
    leastPlay: 0,
    draw: sized((chance) => between(...TROUBLE.gatesTight, chance)),
    apply: (sound, { size }) => withGates(sound, size),
  },
  "gates-wide": {
    fits: isPack,
    leastPlay: 0,
    draw: sized((chance) => between(...TROUBLE.gatesWide, chance)),
    apply: (sound, { size }) => withGates(sound, size),
  },
  "last-excluded": {
    fits: ({ combinationRules }) => (combinationRules.excludedLast ?? []).length > 0,
    leastPlay: 0,
    // The number is on the card for everyone to see: nothing of the mechanics is changed.
    draw: sized((_, { profile, combination }) => depthInZone(profile, combination.at(-1) ?? 0)),
    apply: (sound) => sound,
  },
  "zero-never-set": {
    fits: isEncoder,
    leastPlay: 0,
    draw: sized(drawStrayZero),
    apply: (sound, { size }) => ({ ...sound, zero: { left: size, right: size } }),
  },
  "zero-one-side": {
    fits: isEncoder,
    leastPlay: TROUBLE.playThatShows,
    draw: ({ lostMotion }, chance) => ({ part: chance() < 0.5 ? "left" : "right", size: lostMotion }),
    apply: (sound, { part }) => {
      const only = part === "left" ? sound.zero.left : sound.zero.right;
      return { ...sound, zero: { left: only, right: only } };
    },
  },
  "pause-short": {
    fits: (profile) => profile.kind === "dial-encoder" && (profile.pauseLimit_s ?? 0) >= TROUBLE.usualPause_s,
    leastPlay: 0,
    draw: sized((chance) => between(...TROUBLE.shortPause_s, chance)),
    apply: (sound, { size }) => {
      const { profile } = sound;
      return profile.kind === "dial-encoder" ? { ...sound, profile: { ...profile, pauseLimit_s: size } } : sound;
    },
  },
  "ring-off-center": {
    fits: always,
    leastPlay: 0,
    draw: (_, chance) => ({
      part: TO_SIDES[Math.floor(chance() * TO_SIDES.length)] ?? "top",
      size: between(...FITTING.troubleRingOff_mm, chance),
    }),
    apply: (sound, { part, size }) => withRingOff(sound, size, part),
  },
  "wrong-keyway": {
    fits: always,
    leastPlay: 0,
    // One keyway on, either way: of half a turn nobody could say which way it is.
    draw: sized((chance, { profile }) => (chance() < 0.5 ? -1 : 1) * (profile.graduations / TRAINING_SIZES.keyways)),
    apply: (sound, { size }) => ({ ...sound, indexOffset: size }),
  },
  "key-not-seated": {
    fits: always,
    leastPlay: 0,
    draw: sized((chance) => between(...FITTING.troubleKeyRides, chance)),
    apply: (sound, { size }) => {
      const { graduations } = sound.profile;
      return { ...sound, catching: { at: graduations / 2, arc: ridingArc(TRAINING_SIZES, graduations), drag: size } };
    },
  },
  "end-play": {
    fits: always,
    leastPlay: 0,
    draw: sized((chance) => between(...FITTING.troubleEndPlay_mm, chance)),
    apply: (sound, { size }) => ({ ...sound, endPlay_mm: size }),
  },
  "dial-rubs": {
    fits: always,
    leastPlay: 0,
    draw: sized((chance) => between(...FITTING.troubleRubs, chance)),
    apply: (sound, { size }) => ({ ...sound, drag: size, scrapes: true }),
  },
};
