import { explain } from "../../../../../drill/combinations/combinationRules";
import { brokenRuleText } from "../../../../../drill/combinationWords";
import { opensTo } from "../../../../../handover/change/opensTo";
import type { Combination } from "../../../../../lock/combination";
import type { Milliseconds } from "../../../../../lock/dial";
import type { Profile } from "../../../../../lock/profile";
import { DoorChange } from "./doorChange";
import type { HandoverSession } from "./handoverSession";
import { setBySimulation } from "./simulatedHand";

/** Begins a change by hand, or lets a simulated hand make it. */
export function changeTo(session: HandoverSession, wanted: Combination, now: Milliseconds): void {
  const { setup, run } = session;
  const event = { type: "combination.changed", outcome: "true", isAllowed: isAllowed(session, wanted) } as const;
  if (run.hindrance(event) !== undefined) session.act(event, now);
  else if (setup.isHandsOff) {
    finish(session, wanted, setBySimulation(wanted, setup.profile.graduations, session.chance), now);
  } else begin(session, wanted);
}

function begin(session: HandoverSession, wanted: Combination): void {
  const { lock, setup } = session;
  if (lock.retraction > 0 && setup.profile.kind === "wheel-pack") {
    session.refuse("The bolt is back, so the change key does not go in. Spin off first.");
  } else session.takeChange(new DoorChange(setup.profile, lock, wanted));
}

/** The change is done, or left: the lock is what it has become. */
export function leaveChange(session: HandoverSession, now: Milliseconds): void {
  const { change, lock } = session;
  if (change === null) return;
  if (!change.isDone) lock.set(lock.meant, change.setTo);
  session.takeChange(null);
  if (change.isDone) finish(session, change.wanted, change.setTo, now);
}

/** Rules of a lock that a combination breaks, in words; none where it is allowed. */
export const brokenRules = ({ combinationRules, graduations }: Profile, numbers: Combination): readonly string[] =>
  explain(numbers, combinationRules, graduations).map(brokenRuleText);

const isAllowed = ({ setup }: HandoverSession, wanted: Combination) => brokenRules(setup.profile, wanted).length === 0;

function finish(session: HandoverSession, wanted: Combination, setTo: Combination | null, now: Milliseconds): void {
  session.lock.set(wanted, setTo);
  const opens = opensTo(session.setup.profile, setTo, wanted);
  const outcome = setTo === null ? "spoiled" : opens ? "true" : "off";
  session.act({ type: "combination.changed", outcome, isAllowed: isAllowed(session, wanted) }, now);
}
