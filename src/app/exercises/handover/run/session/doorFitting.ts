import { doorJoints } from "../../../../../fitting/doorJoints";
import { type DoorToFit, drawDoor } from "../../../../../fitting/doorToFit";
import type { HandoverRun } from "../../../../../handover/run/handoverRun";
import { fitOfRun, wordOf } from "../../../../../handover/run/runFitting";
import type { Milliseconds } from "../../../../../lock/dial";
import type { Profile } from "../../../../../lock/profile";
import { type Chance, seededChance } from "../../../../../statistics/chance";
import { memoryOf } from "../../../../parts/page/ofChart";
import { FittingSession } from "../../../fitting/fittingSession";
import type { FittedJoints } from "./doorZeroing";
import type { HandoverSession } from "./handoverSession";
import type { KeptFitting } from "./keptRun";

/** Beside the seed of a run, for what is hidden in its tray. */
const TRAY = 7_000_003;

/** What lies in the tray of a run's door; the same seed gives the same. */
export const trayOf = (profile: Profile, seed: number): DoorToFit & { readonly version: 1 } => ({
  version: 1,
  ...drawDoor(profile, seededChance(seed + TRAY)),
});

/** The joints of the lock that was fitted in a run; null where it came on its door, or is in parts. */
export function jointsOfRun({ fitting, profile }: HandoverRun): FittedJoints {
  const fit = fitting && fitOfRun(fitting);
  return fit && doorJoints(fit, profile.graduations);
}

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
  for (const check of isApart ? (kept?.checks ?? []) : checks) session.check(check);
  if (!isApart) session.declare();
  return session;
}

/** What has been done to the parts since the lock came, or was taken apart last. */
export const keptTray = ({ acts, chart }: FittingSession): KeptFitting => ({
  acts: [...acts],
  checks: [...memoryOf(chart.getSnapshot()).checks],
});

/** The trainee says that the lock is fitted. */
export function sayFitted(session: HandoverSession, now: Milliseconds): void {
  const { tray, run } = session;
  if (tray === null || run.fitting === null) return;
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
