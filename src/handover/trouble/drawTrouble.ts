import { drawCombination } from "../../drill/combinations/drawCombination";
import type { CombinationRules, Profile, Range } from "../../lock/profile";
import { type Chance, seededChance } from "../../statistics/chance";
import { runProblem } from "../run/rules/runWords";
import { CONDITIONS } from "./conditions";
import { type LockCard, TROUBLE_KINDS, type TroubleKind, type TroubleTask } from "./trouble";
import { TroubleError } from "./troubleError";

/** Room between numbers beyond what the rules ask, so that one may be dialed a few graduations off: graduations. */
const ROOM = 6;
/** Most that the card of an encoder lock states as play between dial and cam, and least, graduations. */
const PLAY: Range = [0.2, 1.4];

/** The conditions that a lock can have. */
export function kindsFor(profile: Profile): TroubleKind[] {
  return TROUBLE_KINDS.filter((kind) => CONDITIONS[kind].fits(profile));
}

/** Everything that the zone of a last number leaves out, as ranges of whole numbers. */
function outside(zone: readonly Range[], perTurn: number): Range[] {
  return Array.from({ length: perTurn }, (_, n) => n)
    .filter((n) => zone.every(([low, high]) => n < low || n > high))
    .map((n): Range => [n, n]);
}

function rulesFor(profile: Profile, kind: TroubleKind): CombinationRules {
  const { combinationRules: rules, graduations } = profile;
  const roomy = { ...rules, minSeparation: (rules.minSeparation ?? 0) + ROOM, circular: true };
  return kind === "last-excluded" ? { ...roomy, excludedLast: outside(rules.excludedLast ?? [], graduations) } : roomy;
}

function drawCard(profile: Profile, kind: TroubleKind, chance: Chance): LockCard {
  const [low, high] = PLAY;
  const least = Math.max(low, CONDITIONS[kind].leastPlay);
  // To a tenth, as a card states it. The dial of a wheel pack in order sits on its spindle without play.
  const lostMotion = profile.kind === "wheel-pack" ? 0 : Math.round((least + chance() * (high - least)) * 10) / 10;
  return { profile, combination: drawCombination(profile, chance, rulesFor(profile, kind)), lostMotion };
}

/**
 * One exercise, the same for the same seed.
 *
 * @param pool - conditions to draw from; those that the lock cannot have are left out
 * @throws {TroubleError} when none of the pool fits the lock
 * @throws {DrillError} `no-combination` when the rules of the lock leave no number
 */
export function drawTrouble(profile: Profile, pool: readonly TroubleKind[], seed: number): TroubleTask {
  const chance = seededChance(seed);
  const fitting = kindsFor(profile).filter((kind) => pool.includes(kind));
  const kind = fitting[Math.floor(chance() * fitting.length)];
  if (kind === undefined) {
    throw new TroubleError(runProblem("no-defect-fits", [], { lock: profile.id }));
  }
  const card = drawCard(profile, kind, chance);
  return { card, trouble: { kind, ...CONDITIONS[kind].draw(card, chance) } };
}
