import { tellFaultsSoFar, type WordedFault } from "../../../dialing/faultWords";
import { judgedFaults } from "../../../drill/marking/coarseStep";
import { parseProfile } from "../../../lock/profileSchema";
import { shippedProfile } from "../../../lock/shippedProfiles";
import { motionOfText } from "../../../records/motion/traceCodec";
import type { GrowingAttempt } from "../../../school/wire/liveWire";
import { type Outcome, outcomeOf } from "../../replay/outcome";
import { type Playback, playbackOf } from "../../replay/playback";

/** An attempt of a bench, played as far as it has come. */
export interface ShownAttempt {
  readonly playback: Playback;
  readonly faults: readonly WordedFault[];
  /** What it came to; null while it is under way. */
  readonly outcome: Outcome | null;
}

/**
 * Plays an attempt that a bench told.
 *
 * @param hasEnded - whether that is all of it
 * @throws {LockError | MotionError} for what is no attempt: a bench may tell anything
 */
export function shownAttempt(told: GrowingAttempt, hasEnded: boolean): ShownAttempt {
  const { profileId, ownProfile, combination, motion, sources } = told;
  const profile = ownProfile === undefined ? shippedProfile(profileId) : parseProfile(ownProfile);
  const playback = playbackOf({ profile, combination, ...motionOfText(motion) });
  const { whole, duration_ms } = playback;
  const outcome = hasEnded ? outcomeOf(whole, duration_ms, { sources }) : null;
  return { playback, outcome, faults: outcome?.faults ?? judgedFaults(tellFaultsSoFar(whole), sources) };
}
