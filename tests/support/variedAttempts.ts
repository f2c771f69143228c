import { idealMotion } from "../../src/dialing/idealMotion";
import type { Profile } from "../../src/lock/profile";
import { SHIPPED_PROFILES } from "../../src/lock/shippedProfiles";
import { writeAttemptLine } from "../../src/trace/recordedAttempt";
import { seeded } from "./seeded";

type Chance = () => number;

/** Every so many attempts come with the whole profile instead of its id. */
const WHOLE_PROFILE_EVERY = 10;
const BROKEN_EVERY = 200;
/** A move of the hand between two recorded positions, graduations at most. */
const LONGEST_MOVE = 20;

const pick = <Item>(items: readonly Item[], chance: Chance): Item => items[Math.floor(chance() * items.length)] as Item;
/** Off by up to `most` either way, in 64ths as recordings have it. */
const off = (most: number, chance: Chance) => Math.round(64 * most * (2 * chance() - 1)) / 64;

/** Mostly good hands; some miss a stop, turn back on the way, or go the wrong way round. */
function pathOf(profile: Profile, combination: readonly number[], chance: Chance): number[] {
  const most = pick([0.5, 1, 3], chance);
  const path = idealMotion(
    profile,
    combination,
    off(50, chance),
    combination.map(() => off(most, chance)),
    5 * chance(),
  );
  if (chance() < 0.1) path.splice(2, 0, (path[1] ?? 0) + off(10, chance));
  if (chance() < 0.05) return path.slice(0, -1);
  return chance() < 0.03 ? path.map((position) => -position) : path;
}

/** A path in moves that a recording has: short ones, at a steady pace, with a rest at every stop. */
function recordedOn(path: readonly number[], chance: Chance) {
  let now = 0;
  const positions = [path[0] ?? 0];
  const times_ms = [now];
  path.slice(1).forEach((to, k) => {
    const from = path[k] ?? to;
    const moves = Math.ceil(Math.abs(to - from) / LONGEST_MOVE);
    for (let i = 1; i <= moves; i++) {
      now += 200 + 300 * chance();
      positions.push(i === moves ? to : Math.round(64 * (from + ((to - from) * i) / moves)) / 64);
      times_ms.push(Math.round(now));
    }
    now += chance() < 0.02 ? 45_000 : 400;
  });
  return { positions, times_ms };
}

function attemptLine(index: number, chance: Chance): string {
  const profile = pick(SHIPPED_PROFILES, chance);
  const combination = profile.procedure.map(() => Math.floor(profile.graduations * chance()));
  const { positions, times_ms } = recordedOn(pathOf(profile, combination, chance), chance);
  const start = chance() < 0.3 ? { dial: positions[0] ?? 0 } : undefined;
  const times = chance() < 0.6 ? { times_ms } : {};
  const name = index % WHOLE_PROFILE_EVERY === 0 ? profile : profile.id;
  return writeAttemptLine({ profile, combination, start, positions, ...times }, name);
}

/** What is wrong with a line that cannot be replayed. */
const BREAKS: readonly ((line: string) => string)[] = [
  (line) => line.slice(0, line.length / 2),
  (line) => line.replace('"positions":[', '"positions":["here",'),
  (line) => line.replace('"combination":[', '"combination":[1,'),
  (line) => line.replace(/"profile":"[^"]*"/, '"profile":"no-such-lock"'),
];

/**
 * Lines of recorded attempts as a school might have them: every shipped lock, good and bad hands, some with times, some
 * with the whole profile, and a few lines that are broken. The same lines for the same seed.
 */
export function* variedAttempts(count: number, seed: number): Generator<string> {
  const chance = seeded(seed);
  for (let index = 0; index < count; index++) {
    const line = attemptLine(index, chance);
    yield index % BROKEN_EVERY === 7 ? pick(BREAKS, chance)(line) : line;
  }
}
