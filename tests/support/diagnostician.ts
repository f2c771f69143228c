import type { TryObservation } from "../../src/handover/trouble/observation";
import type { LockCard, Trouble, TroubleKind } from "../../src/handover/trouble/trouble";
import { MOST_OFF, type TroubleBench } from "../../src/handover/trouble/troubleBench";
import type { Turn } from "../../src/lock/dial";
import type { Profile, WheelPackProfile } from "../../src/lock/profile";

/** All that a diagnostician may touch: what the trainee has on the screen. */
export type Instruments = Pick<
  TroubleBench,
  "dial" | "readCam" | "pull" | "holdAgainstRules" | "readMarks" | "pushPull" | "turnRound"
>;

const READINGS = 6;
const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
const readings = (read: () => number) => mean(Array.from({ length: READINGS }, read));
const opens = ({ opened }: TryObservation) => opened;

/** The place on [inside, outside] at which a lock that opens inside stops opening, by halving. */
function edge(isOpenAt: (at: number) => boolean, inside: number, outside: number, within: number): number {
  if (isOpenAt(outside)) return outside;
  let [low, high] = [inside, outside];
  while (Math.abs(high - low) > within) {
    const middle = (low + high) / 2;
    if (isOpenAt(middle)) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

const trouble = (kind: TroubleKind, size: number, part: string | null = null): Trouble => ({ kind, part, size });

/** Steps by which an opening is looked for, smaller than any window of a lock that can need it. */
const SEARCH = [-3.5, -2, -1, 1, 2, 3.5];

/** Around which offset each number opens, and how far to either side. */
interface Window {
  readonly middle: number;
  readonly half: number;
}

/**
 * Names the condition of a lock from its card and instruments alone, as a patient tradesman would. It never sees the
 * mechanics.
 */
export function diagnose(card: LockCard, bench: Instruments): Trouble {
  return bySight(card, bench) ?? byGauge(card, bench) ?? byDialing(card, bench);
}

/** What reading the card and pulling at the dial shows. */
function bySight(card: LockCard, bench: Instruments): Trouble | null {
  const { broken } = bench.holdAgainstRules();
  if (broken.some(({ rule }) => rule === "excludedLast")) return trouble("last-excluded", insideZone(card));
  return byFeel(bench) ?? byMarks(card, bench);
}

/** What push, pull and a turn of the dial show. */
function byFeel(bench: Instruments): Trouble | null {
  const moves = readings(() => bench.pushPull().moves_mm);
  if (moves > 0.25) return trouble("end-play", moves);
  const rounds = Array.from({ length: READINGS }, () => bench.turnRound());
  const [least, most] = [mean(rounds.map((one) => one.least)), mean(rounds.map((one) => one.most))];
  if (rounds.some(({ scrapes }) => scrapes)) return trouble("dial-rubs", (least + most) / 2);
  if (most - least > 0.6) return trouble("key-not-seated", most - least);
  const pulled = readings(() => mean((["left", "right"] as const).map((turn) => bench.pull(turn).value)));
  return pulled > 0.5 ? trouble("dial-heavy", pulled) : null;
}

const SIDES = ["top", "right", "bottom", "left"] as const;

/** What the marks of the ring show: opposite ones off by opposite amounts, or all alike. */
function byMarks({ profile }: LockCard, bench: Instruments): Trouble | null {
  const seen = Array.from({ length: READINGS }, () => bench.readMarks().values);
  const [top = 0, right = 0, bottom = 0, left = 0] = SIDES.map((_, k) => mean(seen.map((values) => values[k] ?? 0)));
  const perMillimeter = profile.graduations / (2 * Math.PI * 40);
  const [toRight, toTop] = [(top - bottom) / 2 / perMillimeter, (left - right) / 2 / perMillimeter];
  const size = Math.hypot(toRight, toTop);
  if (size < 0.3) return null;
  const isAcross = Math.abs(toRight) > Math.abs(toTop);
  const side = isAcross ? (toRight > 0 ? "right" : "left") : toTop > 0 ? "top" : "bottom";
  return trouble("ring-off-center", size, side);
}

/** What the cam shows, read from both sides. */
function byGauge({ lostMotion, profile }: LockCard, bench: Instruments): Trouble | null {
  const cam = (turn: Turn) => readings(() => bench.readCam(turn).value);
  const [left, right] = [cam("left"), cam("right")];
  if (Math.abs(left) > profile.graduations / 8) return trouble("wrong-keyway", left);
  if (Math.abs(left) > 0.4) return trouble("index-slipped", left);
  return right - left > lostMotion + 0.4 ? trouble("lost-motion", right - left) : null;
}

/** What is left: where each number opens, and how wide. */
function byDialing(card: LockCard, bench: Instruments): Trouble {
  const start = opening(card, (off) => opens(bench.dial(off)));
  const windows = card.combination.map((_, k): Window => {
    const isOpenAt = (at: number) => opens(bench.dial(start.map((off, j) => (j === k ? at : off))));
    const at = start[k] ?? 0;
    const [low, high] = [edge(isOpenAt, at, -MOST_OFF, 0.05), edge(isOpenAt, at, MOST_OFF, 0.05)];
    return { middle: (low + high) / 2, half: (high - low) / 2 };
  });
  const { profile } = card;
  return profile.kind === "wheel-pack" ? ofPack(profile, windows) : ofEncoder(profile, windows, bench);
}

function ofPack({ wheelPack }: WheelPackProfile, windows: readonly Window[]): Trouble {
  const k = windows.findIndex(({ middle }) => Math.abs(middle) > 0.4);
  if (k >= 0) return trouble("wheel-off", windows[k]?.middle ?? 0, String(k + 1));
  const half = mean(windows.map((window) => window.half));
  return trouble(half < mean(wheelPack.gateTolerance) ? "gates-tight" : "gates-wide", half);
}

function ofEncoder({ procedure }: Profile, windows: readonly Window[], bench: Instruments): Trouble {
  const side = (turn: Turn) => mean(windows.filter((_, k) => procedure[k]?.turn === turn).map(({ middle }) => middle));
  const [left, right] = [side("left"), side("right")];
  const [isLeftTrue, isRightTrue] = [Math.abs(left) < 0.3, Math.abs(right) < 0.3];
  if (isLeftTrue && isRightTrue) {
    return trouble(
      "pause-short",
      edge((rest) => opens(bench.dial([], rest)), 0, 30, 0.5),
    );
  }
  if (isLeftTrue) return trouble("zero-one-side", Math.abs(right), "left");
  return isRightTrue ? trouble("zero-one-side", Math.abs(left), "right") : trouble("zero-never-set", left);
}

/** How far the last number lies inside its zone, counted on the card one number at a time. */
function insideZone({ profile, combination }: LockCard): number {
  const zone = profile.combinationRules.excludedLast ?? [];
  const perTurn = profile.graduations;
  const isIn = (n: number) => zone.some(([low, high]) => n >= low && n <= high);
  const last = combination.at(-1) ?? 0;
  let steps = 0;
  while (isIn((last + steps) % perTurn) && isIn((last - steps + perTurn) % perTurn)) steps++;
  return steps;
}

/** Offsets at which the lock opens: as written, with one number off, or with all of one direction off. */
function opening({ profile, combination }: LockCard, isOpenAt: (off: readonly number[]) => boolean): number[] {
  const none = combination.map(() => 0);
  if (isOpenAt(none)) return none;
  const grid = [0, ...SEARCH];
  const byTurn = (left: number, right: number) => profile.procedure.map(({ turn }) => (turn === "left" ? left : right));
  const wanted =
    profile.kind === "wheel-pack"
      ? none.flatMap((_, k) => SEARCH.map((at) => none.map((off, j) => (j === k ? at : off))))
      : grid.flatMap((left) => grid.map((right) => byTurn(left, right)));
  const found = wanted.find((off) => isOpenAt(off));
  if (found === undefined) throw new Error(`nothing opens this ${profile.id} lock`);
  return [...found];
}
