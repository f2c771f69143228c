import type { GrayImage } from "../../../src/realdial/image/grayImage";
import type { Sighting } from "../../../src/realdial/motion/sighting";
import { PrintedDial } from "../../../src/realdial/printed/printedDial";
import { filmed } from "./film";
import { printedFilm } from "./printedFilm";

type Chance = () => number;

const FRAME_MS = 33;
/** Frames of one dial, after those by which it is found. */
const ROUND = 20;
/** Farther from where it is, graduations, a reading is false. */
const FALSE = 0.5;

interface Still {
  readonly picture: GrayImage;
  /** Graduations at which the dial stands. */
  readonly position: number;
}

let made: readonly Still[] | undefined;

/** Pictures of a dial at rest, made once. */
function stills(): readonly Still[] {
  made ??= [3, 21.4, 48, 66.7, 90.2].flatMap((start, k) => {
    const camera = { width: 256, height: 192, tilt: 6 * k, tiltFrom: 70 * k, roll: 80 * k };
    const film = printedFilm({ restMs: 40, legs: [], start, camera, ...(k > 2 && { handFrom: 60 * k }) }, k + 1);
    return [...filmed(film)].map(({ picture, truth }) => ({ picture, position: truth.position }));
  });
  return made;
}

/** What came of frames: how many readings were given, and what was wrong about the first that was; null where none was. */
interface Tried {
  readonly readings: number;
  readonly wrong: string | null;
}

/** Feeds printed dials with frames of any content, and with pictures of a dial that stands still of which parts are spoiled. */
export function tryAnyFrames(chance: Chance, frames: number): Tried {
  let readings = 0;
  for (let done = 0; done < frames; done += ROUND) {
    const tried = tryOneDial(chance);
    readings += tried.readings;
    if (tried.wrong !== null) return { readings, wrong: `after frame ${done}: ${tried.wrong}` };
  }
  return { readings, wrong: null };
}

function tryOneDial(chance: Chance): Tried {
  const still = oneOf(stills(), chance);
  const dial = new PrintedDial(100);
  const first = dial.follow(still.picture, 0).position;
  let readings = 0;
  for (let k = 1; k <= ROUND; k++) {
    const isAny = chance() < 0.75;
    const image = isAny ? anyImage(chance) : spoiled(still.picture, chance);
    const sighting = dial.follow(image, k * FRAME_MS);
    if (sighting.position === null) continue;
    readings++;
    if (isAny || isFalse(sighting, still.position, first)) {
      return { readings, wrong: `${sighting.position} of a dial at ${still.position}, found at ${first}` };
    }
  }
  return { readings, wrong: null };
}

/** Whether a reading is another number than the dial shows, or another turn than it was found in. */
function isFalse({ position, turnsInDoubt }: Sighting, truth: number, first: number | null): boolean {
  if (position === null) return false;
  const off = position - truth;
  const isOtherNumber = Math.abs(off - 100 * Math.round(off / 100)) > FALSE;
  return isOtherNumber || (!turnsInDoubt && first !== null && Math.abs(position - first) > FALSE);
}

const oneOf = <One>(all: readonly One[], chance: Chance): One => all[Math.floor(chance() * all.length)] as One;

/** A picture without a dial, of any size, and sometimes not of the size it says. */
function anyImage(chance: Chance): GrayImage {
  const [width, height] = [Math.floor(chance() * 64), Math.floor(chance() * 64)];
  const data = new Uint8Array(width * height);
  oneOf(PAINTS, chance)({ width, height, data }, chance);
  if (chance() < 0.05) return { width: width + 3, height: 2 * height, data };
  return { width, height, data };
}

type Paint = (image: GrayImage & { readonly data: Uint8Array }, chance: Chance) => void;

const noise: Paint = ({ data }, chance) => {
  for (let i = 0; i < data.length; i++) data[i] = 256 * chance();
};
const flat: Paint = ({ data }, chance) => void data.fill(256 * chance());
const stripes: Paint = ({ width, data }, chance) => {
  const [along, across, phase] = [chance() * 2, chance() * 2, chance() * 6];
  for (let i = 0; i < data.length; i++) {
    data[i] = Math.sin(along * (i % width) + across * Math.floor(i / width) + phase) > 0 ? 230 : 20;
  }
};
const shapes: Paint = (image, chance) => {
  flat(image, chance);
  for (let k = 0; k < 12; k++) shape(image, chance, 0.3);
};
/** A piece of a real picture, near or far, any way round. */
const piece: Paint = ({ width, height, data }, chance) => {
  const { picture } = oneOf(stills(), chance);
  const [left, top, scale] = [chance() * picture.width, chance() * picture.height, 0.3 + 2 * chance()];
  const isMirrored = chance() < 0.5;
  for (let i = 0; i < data.length; i++) {
    const [x, y] = [i % width, Math.floor(i / width)];
    const column = Math.floor(left + scale * ((isMirrored ? -x : x) - width / 2));
    const row = Math.floor(top + scale * (y - height / 2));
    data[i] = picture.data[row * picture.width + column] ?? 128;
  }
};
const PAINTS: readonly Paint[] = [noise, flat, stripes, shapes, piece];

/** A box or a round spot of one gray, of at most so much of the picture's sides. */
function shape({ width, height, data }: Parameters<Paint>[0], chance: Chance, most: number): void {
  const [x, y] = [chance() * width, chance() * height];
  const [reachX, reachY] = [(chance() * most * width) / 2, (chance() * most * height) / 2];
  const [gray, isRound] = [256 * chance(), chance() < 0.5];
  for (let row = Math.max(0, Math.ceil(y - reachY)); row < Math.min(height, y + reachY); row++) {
    for (let column = Math.max(0, Math.ceil(x - reachX)); column < Math.min(width, x + reachX); column++) {
      const far = ((column - x) / reachX) ** 2 + ((row - y) / reachY) ** 2;
      if (!isRound || far <= 1) data[row * width + column] = gray;
    }
  }
}

/** A picture of which some is covered, scratched, noisy or dim. */
function spoiled({ width, height, data: grays }: GrayImage, chance: Chance): GrayImage {
  const image = { width, height, data: Uint8Array.from(grays) };
  const [dim, noisy] = [0.3 + 0.7 * chance(), chance() < 0.4 ? 60 * chance() : 0];
  for (let i = 0; i < image.data.length; i++) {
    const level = dim * (image.data[i] as number) + (noisy > 0 ? noisy * (chance() - 0.5) : 0);
    image.data[i] = Math.min(255, Math.max(0, level));
  }
  for (let k = Math.floor(12 * chance()); k > 0; k--) shape(image, chance, chance() < 0.2 ? 1.2 : 0.4);
  return image;
}
