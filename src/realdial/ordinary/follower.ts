import type { GrayImage } from "../image/grayImage";
import type { SeenMotion } from "./camera/cameraMotion";
import { type Similarity, UNMOVED } from "./camera/similarity";
import { bestOf, betterBy, clearnessOf, nearest } from "./match/choose";
import { Exposure } from "./match/exposure";
import { Judge, type Judged, type Refined } from "./match/judge";
import { type Prediction, predicted, type Seen } from "./match/prediction";
import { goodCells, Print } from "./match/print";
import { Seeker } from "./match/seek";
import { AROUND } from "./pose/ring";
import type { DialReference } from "./reference";
import { printOf } from "./strip/lightMap";
import { CELLS, StripReader } from "./strip/strip";

/** Why a reading is not sure, or there is none. */
export type SightReason =
  /** Nothing around the dial is recognized: it is dark, covered, or the camera was turned away. */
  | "surroundings-lost"
  /** Too much of the ring is covered, or too dark. */
  | "covered"
  /** The dial turns too fast for the camera's exposure. */
  | "too-fast"
  /** Two places fit what is seen about as well. */
  | "ambiguous"
  /** The dial is not where it can have come in the time. */
  | "jumped";

/** What one picture of an ordinary dial says. */
export interface OrdinaryReading {
  /** Capture time, ms. */
  readonly at: number;
  /** Graduations from where set-up began, unwrapped, left positive; null without sight. */
  readonly position: number | null;
  readonly sight: "sure" | "not-sure" | "no-sight";
  readonly reason: SightReason | null;
  /** Whether the dial may have made a whole turn more or less than the position says: ask for a known number. */
  readonly turnsInDoubt: boolean;
  /** Whether it has rested, for sure, for three pictures. */
  readonly isStopped: boolean;
  /** How the camera has moved since set-up. */
  readonly motion: Similarity;
}

/** A place is clear when it is better than every other by so much (SDs of votes by chance): without a past, in two pictures that agree, */
const CLEAR = 2;
/** or, where the dial is expected, than every other within its reach, */
const CLEAR_NEAR = 1.3;
/** and no place beyond is better than it by so much. */
const BEATEN = 2;
/** A place so far off where it would go on to (columns) must be half as clear again: numerals are a twelfth of a turn apart, or more. */
const OFF_COURSE = AROUND / 24;
/** A reach that says little, parts of a turn: then a place must be clear of all, and be confirmed. */
const WIDE = 0.2;
/** A place is confirmed within so many columns of where it was. */
const CONFIRMED = AROUND / 4;
/** Part of the ring that must fit. */
const LEAST_IN_SIGHT = 0.1;
const BLIND_BELOW = 0.06;
/** A reading whose standard error is more than this many graduations is not sure: some may be off by half a graduation. */
const LARGEST_ERROR = 0.05;
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
    const good = goodCells(reference.light.gain);
    this.judge = new Judge(print, good);
    this.seeker = new Seeker(print, good);
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
    if (choice === null || choice.best.inSight < BLIND_BELOW) return this.reading({ at, reason: "covered" });
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
    const within = ({ turned }: Judged) => isWithin(turned, prediction);
    const isVague = isWide(prediction);
    const isFar = isVague || this.tried !== null;
    const near = isFar ? judged : judged.filter(within);
    const expected = bestOf(near) ?? all;
    const best = betterBy(all, expected) > BEATEN ? all : expected;
    const isOnCourse = offCourse(best, prediction?.turned) <= OFF_COURSE;
    const clearness = clearnessOf(best, near, this.graduation);
    const isClear = clearness > (isFar ? CLEAR : leastClear(isOnCourse));
    // A numeral may look like another where the reach says little: on course it must be twice as clear to need no other picture.
    const isNew = isVague && this.tried === null && !(isOnCourse && clearness > 2 * CLEAR);
    return { best, isClear, isExpected: within(best), isNew };
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
    const turned = prediction === null ? fine.turned : nearest(fine.turned, prediction.turned);
    const isHeld = camera.error * AROUND < 2 * Math.PI * LARGEST_ERROR * this.graduation;
    const reason = isHeld ? this.doubtOf(fine, choice) : "surroundings-lost";
    const isCounted = prediction === null || !canBeAnotherTurn(turned, prediction);
    if (!isCounted) this.turnsInDoubt = true;
    const isSure = reason === null && !choice.isNew;
    if (isSure) this.learn(at, turned, fine.blur, isCounted);
    this.tried = reason === null && choice.isNew ? { turned, speed: 0, over: 0, at } : null;
    return this.reading({ at, turned, reason: isSure ? null : (reason ?? "ambiguous") });
  }

  private doubtOf(best: Refined, { isClear, isExpected }: Choice): SightReason | null {
    if (best.inSight < LEAST_IN_SIGHT) return "covered";
    if (best.error > LARGEST_ERROR * this.graduation) return best.blur > this.graduation ? "too-fast" : "covered";
    if (best.blur > TOO_BLURRED * this.graduation) return "too-fast";
    if (!isExpected) return "jumped";
    return isClear ? null : "ambiguous";
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

/** Whether a place (columns, of any turn) is one to which the dial can have come. */
const isWithin = (turned: number, to: Prediction | null): boolean =>
  to === null ||
  Math.abs(nearest(turned, (to.least + to.most) / 2) - (to.least + to.most) / 2) <= (to.most - to.least) / 2 + 1;

const isWide = (to: Prediction | null): boolean => to === null || to.most - to.least > 2 * WIDE * AROUND;

/** How far from where it would go on to a place lies, columns. */
const offCourse = ({ turned }: Judged, to = Number.NaN): number => Math.abs(nearest(turned, to) - to);

/** How clear a place within a narrow reach must be. */
const leastClear = (isOnCourse: boolean): number => (isOnCourse ? CLEAR_NEAR : 1.5 * CLEAR);

const canBeAnotherTurn = (turned: number, { least, most }: Prediction): boolean =>
  turned - AROUND >= least || turned + AROUND <= most;

interface Choice {
  readonly best: Judged;
  /** Whether no other place fits nearly as well. */
  readonly isClear: boolean;
  readonly isExpected: boolean;
  /** Whether nothing was known of where it is. */
  readonly isNew: boolean;
}

interface Found {
  readonly at: number;
  readonly turned?: number;
  readonly reason: SightReason | null;
}
