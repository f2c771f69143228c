import type { Combination } from "../../lock/combination";
import type { Graduations, Milliseconds } from "../../lock/dial";
import type { Profile } from "../../lock/profile";
import { Attempt } from "../attempt";
import type { AttemptStart } from "../attemptStart";
import type { DialingFact } from "../dialingFact";
import type { TimedMotion } from "../motion";
import type { UnderHand } from "./handSession";
import { MotionRecorder } from "./motionRecorder";

/** An attempt that takes down every move, as it takes it: a replay of what was taken down is the same attempt. Mutable. */
export class RecordedAttempt implements UnderHand<DialingFact> {
  readonly attempt: Attempt;
  private readonly recorder: MotionRecorder;

  /** @throws {LockError} as `Attempt` */
  constructor(profile: Profile, combination: Combination, start: AttemptStart) {
    this.attempt = new Attempt(profile, combination, start);
    this.recorder = new MotionRecorder(start);
  }

  get dial(): Graduations {
    return this.attempt.dial;
  }

  get recording(): TimedMotion {
    return this.recorder.recording;
  }

  /** When the last move was made, milliseconds from the first; 0 before any. */
  get time_ms(): Milliseconds {
    return this.recording.times_ms.at(-1) ?? 0;
  }

  /** Times are those of the steady clock: a lock may outlast an attempt. */
  turnBy(by: Graduations, at: Milliseconds): readonly DialingFact[] {
    return this.attempt.turnBy(this.recorder.take(by, at), at);
  }

  /** A rest is worth a line in the recording only where something came of it. */
  rest(at: Milliseconds): readonly DialingFact[] {
    const facts = this.attempt.turnBy(0, at);
    if (facts.length > 0) this.recorder.take(0, at);
    return facts;
  }
}
