import { LockError } from "../../../../../lock/lockError";
import type { RunSetup } from "../session/doorWork";
import { HandoverSession } from "../session/handoverSession";
import { type KeptRun, setAside } from "../session/keptRun";
import { noted } from "../session/told";

/** A session, or null where what was kept does not fit its lock. */
function sessionOf(setup: RunSetup, kept: KeptRun, keep?: (run: KeptRun) => void): HandoverSession | null {
  try {
    return new HandoverSession(setup, kept, keep);
  } catch (error) {
    if (error instanceof LockError) return null;
    throw error;
  }
}

/**
 * A kept run as it was left. What of it does not fit its lock is set aside, and told: what was under way, or the whole run.
 *
 * @param fresh - what a fresh run is set up for, where the kept one cannot go on
 */
export function resumedRun(kept: KeptRun, fresh: RunSetup, keep?: (run: KeptRun) => void): HandoverSession {
  const { profile, seed, isHandsOff, fitting } = kept.run;
  const setup = { profile, seed, isHandsOff, isToFit: fitting !== undefined, weight: fresh.weight, help: fresh.help };
  const whole = sessionOf(setup, kept, keep);
  if (whole !== null) return whole;
  const fromLastStep = kept.underWay === null ? null : sessionOf(setup, { ...kept, underWay: null }, keep);
  const session = fromLastStep ?? new HandoverSession(fresh, null, keep);
  session.tell(noted(setAside(fromLastStep === null ? "run" : "work")));
  return session;
}
