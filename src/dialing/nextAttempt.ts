import type { Combination } from "../lock/combination";
import { type Graduations, type Milliseconds, signOf } from "../lock/dial";
import { exact } from "../lock/exact";
import { Attempt } from "./attempt";
import type { AttemptStart } from "./attemptStart";
import { restLimit } from "./restWatch";
import { type Run, runLength } from "./runs";

/** How the attempt begins that follows another without a break: a lock remembers what it was left with. */
export interface NextStart {
  readonly start: AttemptStart;
  /** Moves that belong to it and have been made already, graduations. */
  readonly turned: readonly Graduations[];
}

/**
 * Where the attempt after this one begins, and what of it has been turned already.
 *
 * A hand that turns on to its first number does not stop where the lock is thrown or secured: the number counts from where
 * that turn began. So the next attempt starts there, and the turn is made again as far as it has come.
 *
 * @param rested - how long the dial has stood since, milliseconds: a lock that has forgotten counts from where it stands
 */
export function nextStart(ended: Attempt, rested: Milliseconds = 0): NextStart {
  const { dial, memory, pack } = ended;
  const run = rested > restLimit(ended.profile) ? null : firstRunUnderWay(ended);
  const turned = run === null ? [] : [run.to - run.from, dial - run.to].map(exact).filter((by) => by !== 0);
  const from = run?.from ?? dial;
  if (pack === null) return { start: { dial: from, memory }, turned };
  return { start: { dial: from, slack: run === null ? pack.slack() : slackBefore(ended, run, pack.slack()) }, turned };
}

/**
 * The attempt that follows another without a break.
 *
 * @param changed - what is otherwise than in the one before
 */
export function nextAttempt(
  ended: Attempt,
  meant: Combination,
  changed: Omit<AttemptStart, "dial" | "slack">,
  now_ms?: Milliseconds,
): Attempt {
  const { start, turned } = nextStart(ended);
  const attempt = new Attempt(ended.profile, meant, { ...start, ...changed });
  attempt.begunWith = turned.flatMap((by) => [...attempt.turnBy(by, now_ms)]);
  return attempt;
}

/** The run under way, where it may be the turn to a first number. */
function firstRunUnderWay({ profile, reader, isSecured }: Attempt): Run | null {
  const run = reader.runs.at(-1);
  if (run === undefined || run.turn !== profile.procedure[0]?.turn) return null;
  // Made again in the way of the draw, it could bring the bolt back, unless it carries all the wheels from its beginning.
  const isHarmless = profile.kind === "dial-encoder" || run.turn !== profile.draw.turn || isSecured;
  return isHarmless ? run : null;
}

/** How far each wheel of a pack may have led its driver when a run began that has left it with this slack. */
function slackBefore({ profile, isSecured }: Attempt, run: Run, slack: readonly Graduations[]): Graduations[] {
  // A lock that has been spun off carries every wheel.
  if (profile.kind !== "wheel-pack" || isSecured) return [...slack];
  const sign = signOf(run.turn);
  const before = [...slack];
  let length = runLength(run);
  for (let k = before.length - 1; k >= 0; k--) {
    const now = before[k] ?? 0;
    const back = Math.min(length, sign > 0 ? (profile.wheelPack.freePlay[k] ?? 0) - now : now);
    before[k] = exact(now + sign * back);
    length = exact(length - back);
  }
  return before;
}
