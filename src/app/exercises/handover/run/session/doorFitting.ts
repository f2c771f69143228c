import { drawDoor } from "../../../../../fitting/doorToFit";
import { doorJoints } from "../../../../../fitting/fit";
import type { HandoverRun } from "../../../../../handover/run/handoverRun";
import type { HandoverEvent } from "../../../../../handover/run/rules/handoverEvent";
import { fitOfRun, wordOf } from "../../../../../handover/run/runFitting";
import type { Milliseconds } from "../../../../../lock/dial";
import type { Chance } from "../../../../../statistics/chance";
import { memoryOf } from "../../../../parts/page/ofChart";
import { FittingSession } from "../../../fitting/fittingSession";
import { STAGE_WORDS } from "../../../fitting/fittingWords";
import type { FittedJoints } from "./doorZeroing";
import type { HandoverSession } from "./handoverSession";
import type { KeptFitting } from "./keptRun";

/** What is told as a run begins that fits its lock. */
export const IN_TRAY = "The parts of the lock are in the tray. The door is open and held. Fit the lock first.";

/** What is told of a run that goes on after a reload. */
export const BACK = "You are back in your handover, where you left it.";

/** After these the parts are others, or may be moved again, or no more. */
export const FIT_EVENTS: readonly HandoverEvent["type"][] = ["lock.fitted", "lock.takenApart", "parts.replaced"];

/** Whether the combination as written opens the lock as an event leaves it; undefined for a lock in parts. */
export function opensAfter({ type }: HandoverEvent, { run, door }: HandoverSession): boolean | undefined {
  const isInParts = run.situation.fit === "apart" && type !== "lock.fitted";
  return isInParts || type === "lock.takenApart" ? undefined : door.opensAsWritten;
}

/** The joints of the lock that was fitted in a run; null where it came on its door, or is in parts. */
export function jointsOfRun({ fitting, profile }: HandoverRun): FittedJoints {
  const fit = fitting && fitOfRun(fitting);
  return fit && doorJoints(fit, profile.graduations);
}

/** The joints of the lock in a tray; null where it is not together. */
export const jointsOfTray = (tray: FittingSession | null): FittedJoints =>
  tray === null || tray.fit === null ? null : doorJoints(tray.fit, tray.lock.perTurn);

/**
 * The tray of a run, as its lock was left: together where it was said to be fitted, else with what was done since.
 *
 * @param kept - what was done since the lock came, or was taken apart last, or null
 * @returns null where the lock came on its door
 */
export function trayOfRun(run: HandoverRun, kept: KeptFitting | null, chance: Chance): FittingSession | null {
  const { fitting, profile, situation } = run;
  if (fitting === null) return null;
  const { lock, assembly, checks } = fitting;
  const session = FittingSession.resumed(profile, chance, { lock, assembly });
  const isApart = situation.fit === "apart";
  for (const act of isApart ? (kept?.acts ?? []) : []) session.act(act);
  session.recall(isApart ? (kept?.checks ?? []) : checks);
  if (!isApart) session.declare();
  return session;
}

/** What has been done to the parts since the lock came, or was taken apart last. */
export const keptTray = ({ acts, chart }: FittingSession): KeptFitting => ({
  acts,
  checks: memoryOf(chart.getSnapshot()).checks,
});

/** The trainee says that the lock is fitted. */
export function sayFitted(session: HandoverSession, now: Milliseconds): void {
  const { tray, run } = session;
  if (tray === null) return;
  const state = tray.chart.getSnapshot().value;
  if (run.situation.fit === "apart" && (state === "apart" || state === "spent")) {
    session.refuse(STAGE_WORDS[state]);
    return;
  }
  const { acts, checks } = keptTray(tray);
  const { assembly, lock } = tray;
  session.act({ type: "lock.fitted", acts, checks, ...wordOf({ assembly, lock, checks }) }, now);
}

/** Takes the fitted lock apart again. */
export function takeApart(session: HandoverSession, now: Milliseconds): void {
  session.act({ type: "lock.takenApart" }, now);
}

/** Sends for new parts, where nothing good comes of those in the tray any more. */
export function replaceParts(session: HandoverSession, now: Milliseconds): void {
  const { tray, chance, setup } = session;
  if (tray !== null && session.run.situation.fit === "apart" && tray.chart.getSnapshot().value !== "spent") {
    session.refuse("These parts can still become a good lock.");
    return;
  }
  const { slotAt } = drawDoor(setup.profile, chance);
  session.act({ type: "parts.replaced", slotAt }, now);
}
