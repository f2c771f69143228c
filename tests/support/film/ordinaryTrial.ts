import { OrdinaryFollower } from "../../../src/realdial/ordinary/follower";
import type { OrdinaryReading } from "../../../src/realdial/ordinary/reading";
import type { DialReference, SetupProblem } from "../../../src/realdial/ordinary/reference";
import { dialFound } from "../../../src/realdial/ordinary/setup";
import { seenAt } from "./camera";
import { type FilmFrame, filmed, type Shooting } from "./film";
import { type OrdinaryFilm, ordinaryFilm, slowTurn } from "./ordinaryFilm";

/** How far the taps miss, millimeters to the right and up: of the knob's middle, and of the index's tip. */
export interface Misses {
  readonly middle: readonly [number, number];
  readonly index: readonly [number, number];
}

const HELD_FROM = 450;

/** The film of a set-up: the hand comes once the dial was found. @param seconds - that the turn takes */
export function setUpFilm(film: Omit<OrdinaryFilm, "motion">, seconds = 8): Shooting {
  const graduations = film.look?.graduations ?? 100;
  return ordinaryFilm({ ...film, motion: slowTurn(graduations, seconds), handFrom: HELD_FROM });
}

/** What setting a filmed dial up gives. */
export const setUpByFilm = (
  film: Omit<OrdinaryFilm, "motion">,
  misses?: Misses,
  seconds = 8,
): DialReference | SetupProblem => {
  const shooting = setUpFilm(film, seconds);
  return setUpBy(shooting, filmed(shooting), misses);
};

/** What the frames of such a film give. */
export function setUpBy(
  { scene: { camera, knob, disc }, graduations }: Shooting,
  frames: Iterator<FilmFrame> & Iterable<FilmFrame>,
  misses: Misses = { middle: [1, 2], index: [1, 0] },
): DialReference | SetupProblem {
  const tap = (x: number, y: number, z: number) => {
    const seen = seenAt(camera, [x, y, z]);
    return { x: seen.x - 0.5, y: seen.y - 0.5 };
  };
  const first = frames.next().value as FilmFrame;
  const taps = {
    middle: tap(misses.middle[0], misses.middle[1], knob?.height ?? 0),
    index: tap(misses.index[0], disc.radius + 0.6 + misses.index[1], 0),
  };
  const turn = dialFound(first.picture, taps, graduations);
  if ("code" in turn) return turn;
  for (const { picture } of frames) {
    turn.take(picture);
    if (turn.part >= 1) break;
  }
  return turn.learned();
}

/** What following a film came to. Errors in graduations, of sure readings. */
export interface Followed {
  readonly frames: number;
  readonly sure: number;
  readonly atRest: readonly number[];
  readonly moving: readonly number[];
  /** Sure readings without a doubt about turns that are wrong by more than half a graduation. */
  readonly wrong: number;
  /** Frames from which on the turns were in doubt, and that were wrong by whole turns or not. */
  readonly inDoubt: number;
  /** Sure readings with a doubt about turns that are wrong by more than half a graduation whatever the turn. */
  readonly strayed: number;
  readonly msPerFrame: number;
  readonly readings: readonly OrdinaryReading[];
}

/** Follows a film. @param clock - ms, for what a frame takes */
export const followedFilm = (reference: DialReference, shooting: Shooting, clock?: () => number): Followed =>
  followed(reference, filmed(shooting), clock);

/** Follows frames. @param clock - ms, for what a frame takes */
export function followed(
  reference: DialReference,
  frames: Iterable<FilmFrame>,
  clock: () => number = () => 0,
): Followed {
  const follower = new OrdinaryFollower(reference);
  const seen: { readonly reading: OrdinaryReading; readonly truth: FilmFrame["truth"] }[] = [];
  let ms = 0;
  for (const { picture, at, truth } of frames) {
    const before = clock();
    const reading = follower.follow(picture, at);
    ms += clock() - before;
    seen.push({ reading, truth });
  }
  const sure = seen.filter(({ reading }) => reading.sight === "sure");
  const offs = sure.map(({ reading: { position, turnsInDoubt }, truth }) => {
    return { off: (position ?? 0) - truth.position, speed: Math.abs(truth.speed), turnsInDoubt };
  });
  // On which of its turns it is seen first is any.
  const { graduations } = reference;
  const first = graduations * Math.round((offs[0]?.off ?? 0) / graduations);
  const counted = offs
    .filter(({ turnsInDoubt }) => !turnsInDoubt)
    .map(({ off, speed }) => ({ off: off - first, speed }));
  const strayed = offs.filter(({ off, turnsInDoubt }) => {
    return turnsInDoubt && Math.abs(off - graduations * Math.round(off / graduations)) > 0.5;
  });
  return {
    frames: seen.length,
    sure: sure.length,
    atRest: counted.filter(({ speed }) => speed < 2).map(({ off }) => off),
    moving: counted.filter(({ speed }) => speed >= 2).map(({ off }) => off),
    wrong: counted.filter(({ off }) => Math.abs(off) > 0.5).length,
    inDoubt: sure.length - counted.length,
    strayed: strayed.length,
    msPerFrame: ms / seen.length,
    readings: seen.map(({ reading }) => reading),
  };
}
