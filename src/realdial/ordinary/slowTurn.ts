import type { GrayImage } from "../image/grayImage";
import type { CameraMotion } from "./camera/cameraMotion";
import { UNMOVED } from "./camera/similarity";
import { bestOf, betterBy, nearest } from "./match/choose";
import { Judge, type Judged, type Place } from "./match/judge";
import { Print } from "./match/print";
import { Seeker } from "./match/seek";
import { type Slant, slantOf } from "./match/turnAndShift";
import type { DialPose } from "./pose/dialPose";
import { AROUND } from "./pose/ring";
import type { DialReference, SetupProblem } from "./reference";
import { asAngles, bentThrough, unbent } from "./strip/bend";
import { type Learned, type LightMap, learnedFrom, printOf, type TurnedStrip } from "./strip/lightMap";
import { PIECES } from "./strip/pieces";
import { differsFromItself } from "./strip/repeats";
import { CELLS, ROWS, StripReader } from "./strip/strip";

/** Pictures of the turn are learned from when the dial has gone on by so much since the last one, graduations. */
const KEPT_EVERY = 0.7;
/** Beyond a whole turn, the first pictures come again: no more are needed. */
const WHOLE = 1.005;
/** A picture counts when the dial is within so many graduations of where it is expected, and so many more for each picture that did not count. */
const NEAR = 1.6;
const SLOW = 0.3;
/** Unless another place is better by so much (SDs of votes by chance). */
const BEATEN = 2.5;
/** A hand turns steadily: its speed is taken to change by this part of what the dial was off from where it was expected, */
const SETTLING = 0.3;
/** and a place costs so much more for each graduation off, squared. */
const STEADY = 0.1;
/** A print must differ so much from itself turned by any number of graduations, so that no two look alike: noise alone gives some 0.04. */
const NUMERALS = 0.08;
/** A piece of the ring that lies farther off than this was mistaken, columns. */
const FARTHEST_BENT = 9;
/** A place is taken, and made exact, when so much of the ring fits. */
const ENOUGH = 0.1;
/** A piece that fits in less than this part of the turn's pictures is faint. */
const FAINT = 0.1;
/** Pictures of the turn that may be lost. */
const LOST = 0.3;
/** So much of a turn shows whether there are numerals. */
const LEARNED = 0.2;

/** Watches the slow turn that teaches what the dial looks like. */
export class SlowTurn {
  readonly pose: DialPose;
  /** Pictures in a row, up to the last one, in which the dial was not recognized. */
  missedInARow = 0;
  private readonly graduations: number;
  private readonly camera: CameraMotion;
  private readonly reader: StripReader;
  private readonly light: LightMap;
  private readonly first: Float32Array;
  private readonly judge: Judge;
  private readonly seeker: Seeker;
  private readonly shown = new Float32Array(CELLS);
  private readonly kept: TurnedStrip[] = [];
  private turned = 0;
  /** Where the next picture shows the dial if it goes on as before, columns, and columns a picture. */
  private expected = 0;
  private speed = 0;
  private least = 0;
  private most = 0;
  private seen = 0;
  private lost = 0;

  constructor(image: GrayImage, pose: DialPose, camera: CameraMotion, graduations: number) {
    this.pose = pose;
    this.camera = camera;
    this.graduations = graduations;
    this.reader = new StripReader(pose);
    const strip = new Float32Array(CELLS);
    this.reader.read(image, UNMOVED, strip);
    this.light = { gain: evenLight(strip), haze: new Float32Array(CELLS) };
    printOf(strip, this.light, this.shown);
    this.first = this.shown.slice();
    const print = new Print(this.first);
    const { gain } = this.light;
    this.judge = new Judge(print, gain, slantOf(pose));
    this.seeker = new Seeker(print, gain);
    this.kept.push({ strip, turned: 0, fits: new Uint8Array(PIECES).fill(1) });
  }

  /** How far the dial has turned from where it rested, graduations, left positive. */
  get turnedBy(): number {
    return (this.turned * this.graduations) / AROUND;
  }

  /** Part of a whole turn that has been seen, 0 to 1. */
  get part(): number {
    return Math.min(1, (this.most - this.least) / AROUND / WHOLE);
  }

  /** Takes the next picture. */
  take(image: GrayImage): void {
    if (this.part >= 1) return;
    const seen = this.camera.follow(image);
    const strip = new Float32Array(CELLS);
    this.reader.read(image, seen?.motion ?? UNMOVED, strip);
    printOf(strip, this.light, this.shown);
    this.judge.look(this.shown);
    this.seen++;
    const best = this.chosen();
    if (best) {
      this.turned = nearest(this.judge.refine(best).turned, this.expected);
      this.missedInARow = 0;
      this.speed += SETTLING * (this.turned - this.expected);
      this.expected = this.turned;
      this.keep(strip);
    } else {
      this.lost++;
      this.missedInARow++;
    }
    this.expected += this.speed;
  }

  /** The best place near to where the dial is expected, unless another is clearly better: it would teach a part of the print for another. */
  private chosen(): Judged | null {
    const graduation = AROUND / this.graduations;
    const off = ({ turned }: Place) => Math.abs(nearest(turned, this.expected) - this.expected) / graduation;
    const judged = this.seeker
      .offer(this.shown, [0, graduation / 2, graduation])
      .map((place) => this.judge.judge(place));
    const near = judged.filter((one) => off(one) < NEAR + this.missedInARow * SLOW);
    const best = bestOf(near.map((one) => ({ ...one, cost: one.cost + STEADY * off(one) ** 2 })));
    return best && best.inSight > ENOUGH && betterBy(bestOf(judged) ?? best, best) < BEATEN ? best : null;
  }

  private keep(strip: Float32Array): void {
    const every = (KEPT_EVERY * AROUND) / this.graduations;
    if (this.turned <= this.most + every && this.turned >= this.least - every) return;
    this.most = Math.max(this.most, this.turned);
    this.least = Math.min(this.least, this.turned);
    this.kept.push({ strip, turned: this.turned, fits: this.judge.fits() });
  }

  /** What the turn taught; or what is wrong: on a dial without numerals the turn is often lost for that reason alone. */
  learned(): DialReference | SetupProblem {
    const lost = this.lost / this.seen;
    const problem: SetupProblem | null =
      lost > LOST
        ? { code: "turn-not-followed", lost }
        : this.part < 1
          ? { code: "turn-not-seen", part: this.part }
          : null;
    if (problem && this.part < LEARNED) return problem;
    const slant = slantOf(this.pose);
    const rough = settled(withFaint(this.kept), slant, { light: this.light, print: this.first });
    const bent = bentThrough(rough.pieces);
    const flat = rough.strips.map((one) => ({ ...one, strip: unbent(one.strip, bent) }));
    const { strips, learned } = settled(flat, slant, rough.learned);
    // The first picture is where the dial rested on 0.
    const zero = strips[0]?.turned ?? 0;
    const { light, print } = learnedFrom(
      strips.map((one) => ({ ...one, turned: one.turned - zero })),
      learned,
    );
    const { graduations, pose, camera } = this;
    if (differsFromItself(print, graduations) < NUMERALS) return { code: "no-numerals" };
    if (problem) return problem;
    return { graduations, pose, bent: asAngles(bent), light, print, camera };
  }
}

/**
 * Strips in which pieces that fitted in none to speak of count as if they had in all: what is printed there is too faint for
 * the noise of one picture against another, and comes out in the mean of many.
 */
function withFaint(strips: readonly TurnedStrip[]): TurnedStrip[] {
  const seen = new Uint16Array(PIECES);
  for (const { fits } of strips)
    fits.forEach((one, i) => {
      seen[i] = (seen[i] as number) + one;
    });
  return strips.map((one) => ({
    ...one,
    fits: one.fits.map((fit, i) => ((seen[i] as number) < FAINT * strips.length ? 1 : fit)),
  }));
}

/** Learns from strips, and then finds anew where each of them was, and how the pieces of the ring disagree in all of them. */
function settled(strips: readonly TurnedStrip[], slant: Slant, before: Learned): Settled {
  const learned = learnedFrom(strips, before);
  const { light, print } = learned;
  const judge = new Judge(new Print(print), light.gain, slant);
  const shown = new Float32Array(CELLS);
  const offsets = { at: new Float64Array(PIECES), weight: new Float64Array(PIECES) };
  const sums = new Float64Array(PIECES);
  const weights = new Float64Array(PIECES).fill(1e-9);
  const found = strips.map(({ strip, turned }): TurnedStrip => {
    printOf(strip, light, shown);
    judge.look(shown);
    const fine = judge.refine({ turned, blur: 0 }, offsets);
    for (let i = 0; i < PIECES; i++) {
      const weight = Math.abs(offsets.at[i] as number) < FARTHEST_BENT ? (offsets.weight[i] as number) : 0;
      sums[i] = (sums[i] as number) + weight * (offsets.at[i] as number);
      weights[i] = (weights[i] as number) + weight;
    }
    const isFound = fine.inSight > ENOUGH && Math.abs(fine.turned - turned) < 4;
    return { strip, turned: isFound ? fine.turned : turned, fits: judge.fits() };
  });
  return { strips: found, learned, pieces: sums.map((sum, i) => sum / (weights[i] as number)) };
}

interface Settled {
  readonly strips: TurnedStrip[];
  readonly learned: Learned;
  /** By how many columns each piece lies farther left than the others say. */
  readonly pieces: Float64Array;
}

/** What the face's light would be if all of it were printed evenly: the mean of all rows over a tenth of the way around. */
function evenLight(strip: Float32Array): Float32Array {
  const columns = new Float64Array(AROUND);
  for (let cell = 0; cell < CELLS; cell++) {
    columns[cell % AROUND] = (columns[cell % AROUND] as number) + (strip[cell] as number) / ROWS;
  }
  const half = Math.floor(AROUND / 20);
  const around = columns.map((_, i) => {
    let sum = 0;
    for (let off = -half; off <= half; off++) sum += columns[(i + off + AROUND) % AROUND] as number;
    return sum / (2 * half + 1);
  });
  return Float32Array.from({ length: CELLS }, (_, cell) => around[cell % AROUND] as number);
}
