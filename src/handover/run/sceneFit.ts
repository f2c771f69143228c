import type { Profile } from "../../lock/profile";
import { all, type Condition, holds } from "./condition";
import { IS_LATCHED } from "./conditions";
import { carries, type Given, type HandoverEvent } from "./handoverEvent";
import type { HandoverRun } from "./handoverRun";
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
  /** The rest of a sentence that begins with the step: what is wrong, and how to mend it. */
  readonly words: string;
}

const noKey =
  "does not fit the lock, a dial encoder, which has neither change key nor wheels: take it out, or name a wheel pack as the profile";
const mendRelease = "correct the step, or isReleaseBlocked in the scene";

/** Every misfit that hangs on no number. */
export const MISFITS: readonly Misfit[] = [
  {
    on: "zero.set",
    kind: "wheel-pack",
    words:
      "does not fit the lock, a wheel pack, whose ring is its only zero: take it out, or name a dial encoder as the profile",
  },
  { on: "combination.changed", given: { outcome: "spoiled" }, kind: "dial-encoder", words: noKey },
  { on: "pack.rebuilt", kind: "dial-encoder", words: noKey },
  {
    on: "bolt.drawnAgain",
    kind: "dial-encoder",
    words: "does not fit the lock, a dial encoder, which has no wheels that stay in line: take it out",
  },
  {
    on: "combination.dialed",
    given: { opened: true },
    when: "holdback.on",
    words:
      "says that the lock opened, but the holdback holds its bolt and the dial does not turn: set opened to false, or release the holdback before it",
  },
  {
    on: "wayOut.checked",
    given: { isFree: true },
    isBlocked: true,
    words: `says that the release is free, but the scene has it blocked and nobody has cleared it: ${mendRelease}`,
  },
  {
    on: "wayOut.checked",
    given: { isFree: false },
    isBlocked: false,
    words: `says that the release does not move, but nothing is in its way: ${mendRelease}`,
  },
  {
    on: "release.failed",
    isBlocked: false,
    words: `says that the release did not move, but nothing is in its way: ${mendRelease}`,
  },
  {
    on: "door.opened",
    given: { by: "inside" },
    when: all(IS_LATCHED, "inside.able", "wayOut.unchecked"),
    isBlocked: true,
    words: `says that the door was opened from inside, but its release is blocked: use release.failed, or ${mendRelease}`,
  },
];

/**
 * What keeps an event from happening in a scene and on its lock, whatever went before it; undefined where nothing does.
 * What went before it, the run knows itself (`HandoverRun.hindrance`).
 *
 * @param run - as it stands before the event
 * @returns the rest of a sentence that begins with the step
 */
export function sceneMisfit(event: HandoverEvent, scene: HandoverScene, run: HandoverRun): string | undefined {
  if (event.type === "mounting.measured" && event.height_in !== scene.height_in)
    return `says ${event.height_in} inches, but the scene's height_in is ${scene.height_in}: make the two the same`;
  const isBlockedNow = isReleaseBlocked(scene, run);
  return MISFITS.find(
    ({ on, given, kind = run.profile.kind, when, isBlocked = isBlockedNow }) =>
      on === event.type &&
      carries(event, given) &&
      kind === run.profile.kind &&
      isBlocked === isBlockedNow &&
      (when === undefined || holds(when, run.situation)),
  )?.words;
}
