import type { WheelPackProfile } from "../../src/lock/profile";
import { shippedProfile } from "../../src/lock/shippedProfiles";
import type { Chance } from "../../src/statistics/chance";
import { type StepwiseLock, StepwisePack } from "../lock/stepwisePack";
import { spawnedCli, unseemly } from "./spawnedCli";
import { pick } from "./tamper";
import type { Trial } from "./trial";

/*
 * Draws in hundredths and rounds of the encoder lock, replayed by the command line as people start it. What opens is
 * reckoned here: the wheel packs in whole hundredths, one at a time (tests/lock/stepwisePack), and the encoder lock by
 * its one rule, that the last runs before the draw spell the combination, however many arrivals.
 */

interface Case {
  readonly line: string;
  readonly opens: boolean;
}

const PER = 100;
const inSteps = (graduations: number) => Math.round(graduations * PER);
const between = (chance: Chance, low: number, high: number) => low + Math.floor(chance() * (high - low + 1));

/** Where a number is met for the n-th time, turning one way. Whatever lies within a fifth of a turn is not a meeting. */
function meeting(number: number, way: 1 | -1, from: number, turn: number, times: number): number {
  let at = number;
  while (way * (at - from) > 0) at -= way * turn;
  while (way * (at - from) <= turn / 50) at += way * turn;
  return at + way * (times - 1) * turn;
}

function stepwiseLock(profile: WheelPackProfile, combination: readonly number[]): StepwiseLock {
  return {
    turn: inSteps(profile.graduations),
    freePlay: profile.wheelPack.freePlay.map(inSteps),
    gateTolerance: profile.wheelPack.gateTolerance.map(inSteps),
    ways: profile.procedure.map(({ turn }) => (turn === "left" ? 1 : -1)),
    combination: combination.map(inSteps),
    engageAt: inSteps(profile.draw.engageAt),
    travel: inSteps(profile.draw.travel),
    drawWay: profile.draw.turn === "left" ? 1 : -1,
  };
}

/** A wheel pack dialed with stops and a draw that are right, just right or just wrong. */
function decimalDraw(chance: Chance): Case {
  const profile = shippedProfile(pick(chance, ["two-wheel", "three-wheel"])) as WheelPackProfile;
  const combination = profile.procedure.map(() => between(chance, 21, 84) + pick(chance, [0, 0.5, 0.25]));
  const lock = stepwiseLock(profile, combination);
  const start = between(chance, 0, lock.turn - 1);
  const hand = [start];
  let at = start;
  profile.procedure.forEach(({ arrivals }, k) => {
    const way = lock.ways[k] ?? 1;
    const tolerance = lock.gateTolerance[k] ?? 0;
    const off = pick(chance, [0, 0, between(chance, -tolerance, tolerance), tolerance, -tolerance, tolerance + 1]);
    at = meeting(lock.combination[k] ?? 0, way, at, lock.turn, arrivals + pick(chance, [0, 0, 0, 0, 0, 1, -1])) + off;
    hand.push(at);
  });
  const engages = meeting(lock.engageAt, lock.drawWay, at, lock.turn, 1);
  hand.push(engages + lock.drawWay * (lock.travel + pick(chance, [0, 0, 0, -1, 1, 100])));
  const pack = new StepwisePack(lock, start);
  for (const [k, to] of hand.slice(1).entries()) pack.turnBy(to - (hand[k] ?? 0));
  const positions = hand.map((step) => step / PER);
  return { line: JSON.stringify({ profile: profile.id, combination, positions }), opens: pack.opened };
}

/** Stops that count and some that do not, hundredths. */
const STOPS = [0, 0, 0, 50, -50, 100, -100, 101, -101, 250];

/** Entries on the encoder lock, the spoiled ones gone over by a new first number. */
function encoderRounds(chance: Chance): Case {
  const { procedure, stopTolerance, draw, graduations } = shippedProfile("dial-encoder");
  const turn = inSteps(graduations);
  const combination = [between(chance, 30, 48), between(chance, 10, 20), between(chance, 58, 80)];
  const hand = [0];
  const spells = [true, true, true];
  const run = (k: number) => {
    const asked = procedure[k]?.arrivals ?? 1;
    const arrivals = asked + pick(chance, [0, 0, 0, 1, 2, 3, -1]);
    const off = pick(chance, STOPS);
    const at = meeting(inSteps(combination[k] ?? 0), k === 1 ? -1 : 1, hand.at(-1) ?? 0, turn, Math.max(2, arrivals));
    hand.push(at + off);
    spells[k] = Math.max(2, arrivals) >= asked && Math.abs(off) <= inSteps(stopTolerance);
  };
  for (let entry = between(chance, 1, 4); entry > 0; entry--) [0, 1].forEach(run);
  run(2);
  const drawn = inSteps(draw.travel) + pick(chance, [0, 0, 100, -1, -200]);
  hand.push((hand.at(-1) ?? 0) - drawn);
  return {
    line: JSON.stringify({ profile: "dial-encoder", combination, positions: hand.map((step) => step / PER) }),
    opens: spells.every(Boolean) && drawn >= inSteps(draw.travel),
  };
}

const CASES = 400;

/** @returns what the command line reckons otherwise, or null */
async function replayAll(chance: Chance, count: { opened: number }): Promise<string | null> {
  const cases = Array.from({ length: CASES }, () => pick(chance, [decimalDraw, encoderRounds])(chance));
  count.opened += cases.filter(({ opens }) => opens).length;
  const outcome = await spawnedCli(
    ["replay", "-"],
    cases.map(({ line }) => `${line}\n`),
  );
  const bad = unseemly(outcome);
  if (bad !== null) return bad;
  const results = outcome.out
    .trimEnd()
    .split("\n")
    .map((line) => JSON.parse(line) as { readonly opened?: boolean });
  if (results.length !== cases.length) return `${cases.length} lines went in, and ${results.length} came out`;
  const wrong = cases.findIndex(({ opens }, k) => results[k]?.opened !== opens);
  if (wrong < 0) return null;
  const { line, opens } = cases[wrong] ?? {};
  return `${line} ${opens ? "opens" : "does not open"} as reckoned here; it says ${JSON.stringify(results[wrong])}`;
}

export const trial: Trial = {
  name: "decimal draws and encoder rounds on the command line",
  run: async ({ chance, hasTime, pass, fail }) => {
    for (let round = 1; round === 1 || hasTime(); round++) {
      const count = { opened: 0 };
      const misfit = await replayAll(chance, count);
      // Both answers must come up, or nothing was tried.
      const isTried = count.opened > CASES / 20 && count.opened < (CASES * 19) / 20;
      if (misfit === null && isTried) pass();
      else fail(`round ${round}: ${misfit ?? `only ${count.opened} of ${CASES} open: nothing is tried`}`);
    }
  },
};
