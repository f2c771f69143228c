import { LockError } from "../../../lock/lockError";
import { HandoverSession, type RunSetup } from "./handoverSession";
import { type KeptRun, putBy } from "./keptRun";
import { noted } from "./told";

/** A session, or null where what was kept does not fit its lock. */
function sessionOf(setup: RunSetup, kept: KeptRun): HandoverSession | null {
  try {
    return new HandoverSession(setup, kept);
  } catch (error) {
    if (error instanceof LockError) return null;
    throw error;
  }
}

/**
 * A kept run as it was left. What of it does not fit its lock is put by, and told: what was under way, or the whole run.
 *
 * @param fresh - what a fresh run is set up for, where the kept one cannot go on
 */
export function resumedRun(kept: KeptRun, fresh: RunSetup): HandoverSession {
  const { profile, seed, isHandsOff } = kept.run;
  const setup = { profile, seed, isHandsOff };
  const whole = sessionOf(setup, kept);
  if (whole !== null) return whole;
  const fromLastStep = kept.underWay === null ? null : sessionOf(setup, { ...kept, underWay: null });
  const session = fromLastStep ?? new HandoverSession(fresh);
  session.tell(noted(putBy(fromLastStep === null ? "run" : "work")));
  return session;
}
