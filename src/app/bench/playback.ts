import { Attempt } from "../../dialing/attempt";
import type { Combination } from "../../lock/combination";
import type { Milliseconds } from "../../lock/dial";
import type { Profile } from "../../lock/profile";
import type { Recording } from "./attemptRecorder";

/**
 * A recording played on its own lock, to any moment of it.
 *
 * Forward it plays on from where it is; backward it begins again. Either way the lock at a moment is the lock that
 * was recorded, not a picture of it.
 */
export class Playback {
  attempt: Attempt;
  readonly recording: Recording;
  readonly duration_ms: Milliseconds;
  private readonly profile: Profile;
  private readonly combination: Combination;
  private played = 0;

  /** @throws {LockError} when the recording does not fit the lock */
  constructor(profile: Profile, combination: Combination, recording: Recording) {
    this.profile = profile;
    this.combination = combination;
    this.recording = recording;
    this.duration_ms = recording.times_ms.at(-1) ?? 0;
    this.attempt = new Attempt(profile, combination, recording.start);
  }

  /** Plays to a moment: every move that was made up to it. */
  goTo(time_ms: Milliseconds): void {
    const { positions, times_ms, start } = this.recording;
    if (this.played > 0 && (times_ms[this.played - 1] ?? 0) > time_ms) {
      this.attempt = new Attempt(this.profile, this.combination, start);
      this.played = 0;
    }
    for (; this.played < positions.length && (times_ms[this.played] ?? 0) <= time_ms; this.played++) {
      const before = this.played === 0 ? start.dial : (positions[this.played - 1] ?? 0);
      this.attempt.turnBy((positions[this.played] ?? before) - before, times_ms[this.played]);
    }
  }
}
