import { type ActorRefFrom, createActor } from "xstate";
import { Attempt } from "../../dialing/attempt";
import type { DialingFact } from "../../dialing/dialingFact";
import { type DialingState, dialingMachine } from "../../dialing/dialingMachine";
import { HandSession } from "../../dialing/hand/handSession";
import type { TimedMotion } from "../../dialing/motion";
import type { Combination } from "../../lock/combination";
import type { Milliseconds } from "../../lock/dial";
import type { Profile } from "../../lock/profile";
import type { RecordedAttempt } from "../../trace/recordedAttempt";
import { startOf } from "../../trace/replay";
import { type Outcome, outcomeOf } from "./outcome";

/**
 * A recording played on its own lock, to any moment of it.
 *
 * Forward it plays on from where it is; backward it begins again. Either way the lock at a moment is the lock that
 * was recorded, not a picture of it.
 */
export class Playback {
  attempt: Attempt;
  /** The attempt as it ended. */
  readonly whole: Attempt;
  /** What it came to. */
  readonly outcome: Outcome;
  readonly recording: TimedMotion;
  readonly duration_ms: Milliseconds;
  private readonly profile: Profile;
  private readonly combination: Combination;
  private readonly chart: ActorRefFrom<ReturnType<typeof dialingMachine>>;
  private hand: HandSession<DialingFact>;
  private played = 0;

  /** @throws {LockError} when the recording does not fit the lock */
  constructor(profile: Profile, combination: Combination, recording: TimedMotion) {
    this.profile = profile;
    this.combination = combination;
    this.recording = recording;
    this.duration_ms = recording.times_ms.at(-1) ?? 0;
    this.chart = createActor(dialingMachine(profile)).start();
    this.attempt = this.newAttempt();
    this.hand = this.takeHold();
    this.goTo(Infinity);
    this.whole = this.attempt;
    this.outcome = outcomeOf(this.whole, this.duration_ms);
    this.rewind();
  }

  /** What the operator was doing at the moment shown. */
  get state(): DialingState {
    return this.chart.getSnapshot().value;
  }

  /** Plays to a moment: every move that was made up to it. */
  goTo(time_ms: Milliseconds): void {
    const { times_ms } = this.recording;
    if (this.played > 0 && (times_ms[this.played - 1] ?? 0) > time_ms) this.rewind();
    while (this.played < times_ms.length && (times_ms[this.played] ?? 0) <= time_ms) this.playOne();
  }

  private rewind(): void {
    this.attempt = this.newAttempt();
    this.hand = this.takeHold();
    this.chart.send({ type: "attempt.restarted" });
    this.played = 0;
  }

  private playOne(): void {
    const { positions, times_ms, start } = this.recording;
    const before = positions[this.played - 1] ?? start.dial;
    this.hand.play((positions[this.played] ?? before) - before, times_ms[this.played] ?? 0);
    this.played += 1;
  }

  private newAttempt(): Attempt {
    return new Attempt(this.profile, this.combination, this.recording.start);
  }

  private takeHold(): HandSession<DialingFact> {
    return new HandSession<DialingFact>(this.attempt, { chart: this.chart });
  }
}

/** Sets up the playback of a recording. One without times is played at a steady pace, so that one can follow it. */
export function playbackOf(recorded: RecordedAttempt): Playback {
  const times_ms = recorded.times_ms ?? recorded.positions.map((_, index) => index * 400);
  const recording = { start: startOf(recorded), positions: [...recorded.positions], times_ms: [...times_ms] };
  return new Playback(recorded.profile, recorded.combination, recording);
}
