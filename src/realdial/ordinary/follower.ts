import type { GrayImage } from "../image/grayImage";
import type { SeenMotion } from "./camera/cameraMotion";
import { type Similarity, UNMOVED } from "./camera/similarity";
import { bestOf, betterBy, clearnessOf, nearest } from "./match/choose";
import { Exposure } from "./match/exposure";
import { Judge, type Judged, type Place } from "./match/judge";
import { type Prediction, predicted, type Seen } from "./match/prediction";
import { Print } from "./match/print";
import { canBeAnotherTurn, isNarrow, isWide, isWithin, offCourse } from "./match/reach";
import { Seeker } from "./match/seek";
import { slantOf } from "./match/turnAndShift";
import { AROUND } from "./pose/ring";
import type { OrdinaryReading, SightReason } from "./reading";
import type { DialReference } from "./reference";
import { printOf } from "./strip/lightMap";
import { CELLS, StripReader } from "./strip/strip";

/** A place is clear when it is better than every other by so much (SDs of votes by chance): without a past, in two pictures that agree, */
const CLEAR = 2.5;
/** or in one alone, where the dial would go on to; */
const CLEAR_ALONE = 4;
/** or, where it is expected, than every other within its reach, */
const CLEAR_NEAR = 1.3;
/** off where it would go on to (numerals are a twelfth of a turn apart, or more), */
const CLEAR_OFF = 3;
const OFF_COURSE = AROUND / 24;
/** and a little better than any on the ring: where one far off fits as well, the picture says nothing, and only a narrow reach does. */
const CLEAR_ANYWHERE = 0.5;
/** A place beyond its reach that is better by so much is taken for it. */
const BEATEN = 2;
/** A place is confirmed within so many columns of where it was. */
const CONFIRMED = AROUND / 4;
/** Part of the ring that must fit. */
const LEAST_IN_SIGHT = 0.1;
/** The largest standard error of a reading that is sure, graduations: of a dial that rests, and of one that turns. */
const ERROR_AT_REST = 0.025;
const ERROR_IN_MOTION = 0.045;
/** The largest with which a place is gone on from all the same. */
const ERROR_FOLLOWED = 0.3;
/** Moved by no more than this since it was seen last, graduations, it may be at rest. */
const MAY_REST = 0.3;
/** So many times the blur that the mean speed since it was seen last would give, and half a graduation, is not too much. */
const BLUR_MORE = 1.2;
/** Blur at which marks no longer tell anything, graduations. */
const TOO_BLURRED = 9;
/** At rest, the readings of three pictures lie within so many graduations. */
const AT_REST = 0.06;
/** Blurs that are tried without a past, graduations. */
const BLURS = [0, 0.5, 1, 2, 4, 7];

/** Follows an ordinary dial, picture by picture. */
export class OrdinaryFollower {
  private readonly reference: DialReference;
  private readonly graduation: number;
  private readonly reader: StripReader;
  private readonly judge: Judge;
  private readonly seeker: Seeker;
  private readonly exposure = new Exposure();
  private readonly strip = new Float32Array(CELLS);
  private readonly shown = new Float32Array(CELLS);
  private motion: Similarity = UNMOVED;
  /** Where it was for sure. */
  private seen: Seen | null = null;
  /** Where it may have come to without a past: the next picture must show it within reach of there. */
  private tried: Seen | null = null;
  private turnsInDoubt = false;
  private lastSure: number[] = [];

  constructor(reference: DialReference) {
    this.reference = reference;
    this.graduation = AROUND / reference.graduations;
    this.reader = new StripReader(reference.pose, reference.bent);
    const print = new Print(reference.print);
    const { gain } = reference.light;
    this.judge = new Judge(print, gain, slantOf(reference.pose));
    this.seeker = new Seeker(print, gain);
  }

  /** The person says where the dial rests: the turns are no longer in doubt, and its position is so many graduations. */
  setPosition(position: number): void {
    this.turnsInDoubt = false;
    const atPosition = (one: Seen | null) => {
      return one && { ...one, turned: nearest(one.turned, position * this.graduation) };
    };
    this.seen = atPosition(this.seen);
    this.tried = atPosition(this.tried);
  }

  /** Takes the next picture, captured at a time in ms. */
  follow(image: GrayImage, at: number): OrdinaryReading {
    const camera = this.reference.camera.follow(image);
    if (camera !== null) this.motion = camera.motion;
    this.reader.read(image, this.motion, this.strip);
    printOf(this.strip, this.reference.light, this.shown);
    this.judge.look(this.shown);
    const prediction = this.predicted(at);
    const judged = this.judgedPlaces(prediction);
    const choice = this.chosen(judged, prediction);
    if (choice === null || choice.best.inSight < LEAST_IN_SIGHT) return this.reading({ at, reason: "dial-covered" });
    if (camera === null) return this.reading({ at, reason: "surroundings-lost" });
    return this.weighed(at, choice, prediction, camera);
  }

  private predicted(at: number): Prediction | null {
    const tried = this.tried && predicted(this.tried, at, this.graduation);
    // Near enough that no hand can have taken it there by another way around.
    if (tried !== null && tried.most - tried.turned < AROUND - CONFIRMED) {
      const reach = Math.min(tried.most - tried.turned, CONFIRMED);
      return { ...tried, least: tried.turned - reach, most: tried.turned + reach };
    }
    this.tried = null;
    return this.seen && predicted(this.seen, at, this.graduation);
  }

  /** The best place within reach of where the dial is expected; the best of all where nothing is expected, or not for sure. */
  private chosen(judged: readonly Judged[], prediction: Prediction | null): Choice | null {
    const all = bestOf(judged);
    if (all === null) return null;
    const isFar = isWide(prediction) || this.tried !== null;
    const near = isFar ? judged : judged.filter(({ turned }) => isWithin(turned, prediction));
    const expected = bestOf(near) ?? all;
    const best = betterBy(all, expected) > BEATEN ? all : expected;
    return {
      best,
      isExpected: isWithin(best.turned, prediction),
      ...this.clearness(best, { judged, near, prediction }),
    };
  }

  /** How clear a place is beside those within its reach and all others. */
  private clearness(best: Judged, { judged, near, prediction }: Beside): Pick<Choice, "isClear" | "isNew" | "isPlain"> {
    const clearness = clearnessOf(best, near, this.graduation);
    const isOnCourse = offCourse(best.turned, prediction) <= OFF_COURSE;
    const isNew = isWide(prediction) && this.tried === null && !(isOnCourse && clearness > CLEAR_ALONE);
    const least = near === judged ? CLEAR : isOnCourse ? CLEAR_NEAR : CLEAR_OFF;
    const isPlain = clearnessOf(best, judged, this.graduation) > CLEAR_ANYWHERE;
    const isClear = clearness > least && (isPlain || isNarrow(prediction));
    return { isClear, isNew, isPlain: isPlain && !isNew };
  }

  private judgedPlaces(prediction: Prediction | null): Judged[] {
    const known = isWide(prediction) ? null : prediction;
    const blurs = known
      ? this.exposure.blursFor(known.speeds).slice(0, 8)
      : BLURS.map((blur) => blur * this.graduation);
    const places = this.seeker.offer(this.shown, blurs, (turned) => known !== null && isWithin(turned, known));
    return places.map((place) => this.judge.judge(place));
  }

  private weighed(at: number, choice: Choice, prediction: Prediction | null, camera: SeenMotion): OrdinaryReading {
    const fine = this.judge.refine(choice.best);
    const turned = nearest(fine.turned, prediction?.turned ?? fine.turned);
    const error = Math.max(fine.error, (camera.error * AROUND) / (2 * Math.PI)) / this.graduation;
    const rough = this.roughness(error, { turned, blur: fine.blur }, at);
    const doubt = doubtOf(fine.blur / this.graduation, choice) ?? (error <= ERROR_FOLLOWED ? null : rough);
    const isCounted = !canBeAnotherTurn(turned, prediction);
    if (!isCounted) this.turnsInDoubt = true;
    if (doubt === null && !choice.isNew) this.learn(at, turned, fine.blur, isCounted);
    this.tried = doubt === null && choice.isNew ? { turned, speed: 0, over: 0, at } : null;
    return this.reading({
      at,
      turned,
      reason: doubt ?? rough ?? (choice.isPlain ? null : "ambiguous"),
    });
  }

  /** Why a place is not exact enough to be sure. More blur than comes of its way is a sign that marks are taken for the gaps between them. */
  private roughness(error: number, { turned, blur }: Place, at: number): SightReason | null {
    const seen = this.seen ?? { turned, at };
    const way = Math.abs(turned - seen.turned);
    const explained = (BLUR_MORE * this.exposure.ms * way) / Math.max(1, at - seen.at) + this.graduation / 2;
    const largest = way < MAY_REST * this.graduation ? ERROR_AT_REST : ERROR_IN_MOTION;
    if (error <= largest && blur <= explained) return null;
    return blur > this.graduation ? "too-fast" : "ambiguous";
  }

  private learn(at: number, turned: number, blur: number, isCounted: boolean): void {
    const before = this.tried ?? this.seen;
    const time = before === null ? 0 : at - before.at;
    const isMeasured = before !== null && time > 0 && isCounted;
    const speed = isMeasured ? (turned - before.turned) / time : 0;
    const steady = before !== null && Math.abs(speed - before.speed) < 0.3 * Math.abs(speed);
    if (steady && Math.abs(speed) * this.exposure.ms > 0.8 * this.graduation) this.exposure.learn(speed, blur);
    this.seen = { turned, speed, over: isMeasured ? time : 0, at };
  }

  private reading({ at, turned, reason }: Found): OrdinaryReading {
    const position = turned === undefined ? null : turned / this.graduation;
    const sight = position === null ? "no-sight" : reason === null ? "sure" : "not-sure";
    this.lastSure = sight === "sure" && position !== null ? [...this.lastSure.slice(-2), position] : [];
    const isStopped = this.lastSure.length === 3 && Math.max(...this.lastSure) - Math.min(...this.lastSure) <= AT_REST;
    const { turnsInDoubt, motion } = this;
    return { at, position, sight, reason, turnsInDoubt, isStopped, motion };
  }
}

/** Why it is in doubt which place is right. @param blur - graduations */
function doubtOf(blur: number, { isClear, isExpected }: Choice): SightReason | null {
  if (blur > TOO_BLURRED) return "too-fast";
  if (!isExpected) return "jumped";
  return isClear ? null : "ambiguous";
}

interface Choice {
  readonly best: Judged;
  /** Whether no other place fits nearly as well. */
  readonly isClear: boolean;
  readonly isExpected: boolean;
  /** Whether nothing was known of where it is. */
  readonly isNew: boolean;
  /** Whether it was known, and no place on all of the ring fits as well. */
  readonly isPlain: boolean;
}

/** Places beside which one is judged: all that were, and those of them within its reach. */
interface Beside {
  readonly judged: readonly Judged[];
  readonly near: readonly Judged[];
  readonly prediction: Prediction | null;
}

interface Found {
  readonly at: number;
  readonly turned?: number;
  readonly reason: SightReason | null;
}
