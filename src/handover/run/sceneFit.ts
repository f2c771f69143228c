import type { Profile } from "../../lock/profile";
import type { Problem } from "../../wording/problem";
import type { HandoverRun } from "./handoverRun";
import { all, type Condition, holds } from "./rules/condition";
import { IS_LATCHED } from "./rules/conditions";
import { carries, type Given, type HandoverEvent } from "./rules/handoverEvent";
import { type MisfitCode, runProblem } from "./rules/runWords";
import type { HandoverScene } from "./scene";

/**
 * Whether something is in the way of the inside release, as a run stands: cleared, it stays free until the debrief takes
 * that back.
 */
export function isReleaseBlocked(scene: HandoverScene, run: HandoverRun): boolean {
  const isCleared = run.steps.some(({ event, isUndone }) => event.type === "wayOut.cleared" && !isUndone);
  return scene.isReleaseBlocked && !isCleared;
}

/** What a scene or its lock does not let happen, whatever went before it. */
interface Misfit {
  readonly on: HandoverEvent["type"];
  readonly given?: Given;
  /** Left out for a lock of either kind. */
  readonly kind?: Profile["kind"];
  /** Left out where it hangs on nothing that can be done. */
  readonly when?: Condition;
  /** How the inside release has to be for it; left out where that does not matter. */
  readonly isBlocked?: boolean;
  readonly code: MisfitCode;
}

/** Every misfit that hangs on no number. */
export const MISFITS: readonly Misfit[] = [
  {
    on: "zero.set",
    kind: "wheel-pack",
    code: "zero-of-wheel-pack",
  },
  { on: "combination.changed", given: { outcome: "spoiled" }, kind: "dial-encoder", code: "no-key" },
  { on: "pack.rebuilt", kind: "dial-encoder", code: "no-key" },
  {
    on: "bolt.drawnAgain",
    kind: "dial-encoder",
    code: "no-wheels-in-line",
  },
  {
    on: "combination.dialed",
    given: { opened: true },
    when: "holdback.on",
    code: "opened-against-holdback",
  },
  {
    on: "wayOut.checked",
    given: { isFree: true },
    isBlocked: true,
    code: "release-said-free",
  },
  {
    on: "wayOut.checked",
    given: { isFree: false },
    isBlocked: false,
    code: "release-said-blocked",
  },
  {
    on: "release.failed",
    isBlocked: false,
    code: "release-said-failed",
  },
  {
    on: "door.opened",
    given: { by: "inside" },
    when: all(IS_LATCHED, "inside.able", "wayOut.unchecked"),
    isBlocked: true,
    code: "opened-by-blocked-release",
  },
];

/**
 * What keeps an event from happening in a scene and on its lock, whatever went before it; undefined where nothing does.
 * What went before it, the run knows itself (`HandoverRun.hindrance`).
 *
 * @param run - as it stands before the event
 */
export function sceneMisfit(event: HandoverEvent, scene: HandoverScene, run: HandoverRun): Problem | undefined {
  if (event.type === "mounting.measured" && event.height_in !== scene.height_in)
    return runProblem("height-differs", [], { said: event.height_in, height: scene.height_in });
  const isBlockedNow = isReleaseBlocked(scene, run);
  const found = MISFITS.find(
    ({ on, given, kind = run.profile.kind, when, isBlocked = isBlockedNow }) =>
      on === event.type &&
      carries(event, given) &&
      kind === run.profile.kind &&
      isBlocked === isBlockedNow &&
      (when === undefined || holds(when, run.situation)),
  );
  return found && runProblem(found.code, []);
}
