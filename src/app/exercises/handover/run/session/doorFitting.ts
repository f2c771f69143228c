import type { Help } from "../../../../../dialing/advice";
import { CHECK_SET } from "../../../../../fitting/fitChecks";
import { drawNewParts } from "../../../../../handover/run/begunRun";
import { fitWorkOf } from "../../../../../handover/run/fitAgain";
import type { HandoverRun } from "../../../../../handover/run/handoverRun";
import type { HandoverEvent } from "../../../../../handover/run/rules/handoverEvent";
import { wordOf } from "../../../../../handover/run/runFitting";
import type { Milliseconds } from "../../../../../lock/dial";
import type { Chance } from "../../../../../statistics/chance";
import { memoryOf } from "../../../../parts/page/ofChart";
import { FittingSession } from "../../../fitting/fittingSession";
import { STAGE_WORDS } from "../../../fitting/fittingWords";
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

/**
 * The tray of a run, as its lock was left: together where it was said to be fitted, else with what was done since.
 *
 * @param kept - what was done since the lock came, or was taken apart last, or null
 * @param help - of its gauges
 * @returns null where the lock came on its door
 */
export function trayOfRun(
  run: HandoverRun,
  kept: KeptFitting | null,
  chance: Chance,
  help: Help | undefined,
): FittingSession | null {
  const { fitting, profile, situation } = run;
  if (fitting === null) return null;
  const { lock, assembly, checks } = fitting;
  const session = FittingSession.resumed(profile, chance, { lock, assembly }, help);
  const isApart = situation.fit === "apart";
  for (const act of isApart ? (kept?.acts ?? []) : []) session.act(act);
  session.recall(isApart ? (kept?.checks ?? []) : checks, kept?.seeds);
  if (!isApart) session.declare();
  return session;
}

/** What has been done to the parts since the lock came, or was taken apart last. */
export function keptTray({ acts, chart, checked }: FittingSession): KeptFitting {
  const { checks } = memoryOf(chart.getSnapshot());
  const seeds = checks.map((check) => checked.findLast((made) => made.check === check)?.seed ?? 0);
  return { acts, checks, seeds };
}

/** What had been done to the parts where a run goes back to: an undone word that they are fitted, or new parts that are undone, leave them as they were put. */
export function trayBefore({ run, tray }: HandoverSession, steps: number): KeptFitting | null {
  const live = run.steps.filter(({ isUndone }) => !isUndone).slice(steps);
  const undone = live.map(({ event }) => event).find(({ type }) => FIT_EVENTS.includes(type));
  if (undone === undefined) return tray && keptTray(tray);
  if (undone.type === "parts.replaced") return { acts: undone.acts ?? [], checks: [] };
  return undone.type === "lock.fitted" ? { acts: undone.acts, checks: undone.checks } : null;
}

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
  const made = { checks, checkSet: CHECK_SET } as const;
  session.act({ type: "lock.fitted", acts, ...made, ...wordOf({ assembly, lock, ...made }) }, now);
}

/** Takes the fitted lock apart again. */
export function takeApart(session: HandoverSession, now: Milliseconds): void {
  session.act({ type: "lock.takenApart" }, now);
}

/** Sends for new parts, where nothing good comes of those in the tray any more. */
export function replaceParts(session: HandoverSession, now: Milliseconds): void {
  const { tray, run, setup } = session;
  if (tray !== null && session.run.situation.fit === "apart" && tray.chart.getSnapshot().value !== "spent") {
    session.refuse("These parts can still become a good lock.");
    return;
  }
  const { slotAt } = drawNewParts(setup.profile, setup.seed, 1 + fitWorkOf(run).partsReplaced);
  session.act({ type: "parts.replaced", slotAt, acts: tray === null ? [] : keptTray(tray).acts }, now);
}
