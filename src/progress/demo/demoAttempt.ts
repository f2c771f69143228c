import { drawCombination } from "../../drill/combinations/drawCombination";
import type { Combination } from "../../lock/combination";
import type { Graduations } from "../../lock/dial";
import type { Profile } from "../../lock/profile";
import { attemptOutcome } from "../../records/attemptOutcome";
import type { AttemptRecord, HelpLevel } from "../../records/attemptRecord";
import { encodeTrace } from "../../records/motion/traceCodec";
import type { Chance } from "../../statistics/chance";
import { drawNormal } from "../../statistics/drawNormal";
import { replay } from "../../trace/replay";
import type { DemoPerson } from "./demoPeople";
import { type HandPlan, handMotion } from "./handMotion";

/** Ids in the form of uuids of version 8, drawn by seed: the same demo loaded twice is there once. */
export function drawId(chance: Chance): string {
  const digits = Array.from({ length: 32 }, () => Math.floor(chance() * 16).toString(16));
  digits[12] = "8";
  digits[16] = (8 + Math.floor(chance() * 4)).toString(16);
  return [0, 8, 12, 16, 20].map((from, i, all) => digits.slice(from, all[i + 1]).join("")).join("-");
}

/** How somebody's hand stops and counts. */
export type DemoHand = NonNullable<DemoPerson["hand"]>;

/** Somebody about to dial. */
interface DemoTry {
  readonly personId: string;
  readonly profile: Profile;
  readonly hand: DemoHand;
  readonly startedAt: number;
  readonly help: HelpLevel;
}

/** What a hand does at one combination: how far each of its stops is off, and whether it counts a turn too many. */
export const drawPlan = (combination: Combination, hand: DemoHand, chance: Chance): HandPlan => ({
  stopErrors: combination.map((): Graduations => drawNormal(chance, hand.bias, hand.spread)),
  extraTurns: chance() < hand.miscounts ? [0, 1] : [],
  speed: hand.speed,
});

/** One attempt through the real engine: drawn stops, a hand that makes them, and what the lock made of it. */
export function demoAttempt({ personId, profile, hand, startedAt, help }: DemoTry, chance: Chance) {
  const combination = drawCombination(profile, chance);
  const plan = drawPlan(combination, hand, chance);
  const start = { dial: Math.floor(chance() * profile.graduations) };
  const motion = { start, ...handMotion(profile, combination, start.dial, plan, chance) };
  const attempt = replay({ profile, combination, ...motion });
  const duration_ms = motion.times_ms.at(-1) ?? 0;
  const record: AttemptRecord = {
    id: drawId(chance),
    createdAt: startedAt + duration_ms,
    updatedAt: startedAt + duration_ms,
    personId,
    startedAt,
    duration_ms,
    profileId: profile.id,
    exercise: "open",
    combination: [...combination],
    help,
    conditions: [],
    tags: ["demo"],
    ...attemptOutcome(attempt),
  };
  return { record, trace: encodeTrace(motion) };
}
