import { drawLength } from "../../dialing/fault";
import { keptPosition } from "../../dialing/hand/keptPosition";
import { stopAfter } from "../../dialing/idealMotion";
import type { Combination } from "../../lock/combination";
import { type Graduations, type Milliseconds, signOf } from "../../lock/dial";
import type { Profile } from "../../lock/profile";
import type { Chance } from "../../statistics/chance";

/** How an imagined hand dials one attempt. */
export interface HandPlan {
  /** How far each stop runs past (positive) or falls short, graduations. */
  readonly stopErrors: readonly Graduations[];
  /** Turns made too many (positive) or too few at each number; none where left out. */
  readonly extraTurns?: readonly number[] | undefined;
  /** Mean speed, graduations a second, > 0. */
  readonly speed: number;
}

/** Way that one twist of the wrist turns a dial, graduations of a hundred: a third of a turn. */
const TWIST = 1 / 3;
/** Moment without motion while the hand takes hold again. */
const REGRIP: Milliseconds = 120;
/** Rest on each number. */
const REST: Milliseconds = 450;
/** Moves that a screen reports. */
const FRAME: Milliseconds = 1000 / 60;

/** Minimum-jerk course of a movement from 0 to 1. Source: Flash & Hogan (1985), J. Neurosci. 5:1688-1703. */
const course = (t: number) => t * t * t * (10 + t * (6 * t - 15));

function targets(profile: Profile, combination: Combination, from: Graduations, plan: HandPlan): Graduations[] {
  const stops: Graduations[] = [];
  let at = from;
  profile.procedure.forEach((step, k) => {
    const turns = (plan.extraTurns?.[k] ?? 0) * profile.graduations;
    at = stopAfter(profile, combination, at, k) + signOf(step.turn) * (turns + (plan.stopErrors[k] ?? 0));
    stops.push(at);
  });
  // A hand that meets the positive stop pushes a little on.
  const draw = drawLength(profile, at) + 1;
  return [...stops, at + signOf(profile.draw.turn) * draw];
}

/** Records positions at the frames of a screen. */
class Frames {
  readonly positions: Graduations[] = [];
  readonly times_ms: Milliseconds[] = [];
  private now = 0;

  rest(at: Graduations, span: Milliseconds): void {
    this.now += span;
    this.take(at);
  }

  twist(from: Graduations, to: Graduations, span: Milliseconds): void {
    const frames = Math.max(1, Math.round(span / FRAME));
    for (let i = 1; i <= frames; i++) {
      this.now += FRAME;
      this.take(from + (to - from) * course(i / frames));
    }
  }

  private take(position: Graduations): void {
    this.positions.push(keptPosition(position));
    this.times_ms.push(Math.round(this.now));
  }
}

/**
 * The motion of an imagined hand that dials a combination: twist by twist, as a screen of 60 frames a second sees it.
 *
 * @param from - where the dial stands, unwrapped graduations
 * @param chance - varies the pace of the twists by a fifth
 * @returns positions in steps of 1/64 graduation, times in whole milliseconds
 */
export function handMotion(
  profile: Profile,
  combination: Combination,
  from: Graduations,
  plan: HandPlan,
  chance: Chance,
): { readonly positions: Graduations[]; readonly times_ms: Milliseconds[] } {
  const frames = new Frames();
  let at = from;
  frames.rest(at, 0);
  for (const target of targets(profile, combination, from, plan)) {
    const twists = Math.max(1, Math.ceil(Math.abs(target - at) / (TWIST * profile.graduations)));
    for (let i = 0; i < twists; i++) {
      const next = i === twists - 1 ? target : at + (target - at) / (twists - i);
      const pace = plan.speed * (0.8 + 0.4 * chance());
      frames.twist(at, next, (1000 * Math.abs(next - at)) / pace);
      at = next;
      frames.rest(at, i === twists - 1 ? REST : REGRIP);
    }
  }
  return frames;
}
