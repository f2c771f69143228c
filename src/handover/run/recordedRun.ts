import * as z from "zod/mini";
import { checkSetSchema } from "../../fitting/checkSetSchema";
import type { DoorToFit } from "../../fitting/doorToFit";
import { fitCheckSchema, fittingActSchema, offsetSchema } from "../../fitting/fittingActSchema";
import type { Milliseconds } from "../../lock/dial";
import { fieldProblem } from "../../lock/fieldProblem";
import { above, atLeast, flag, must, oneOf, shortList, text, turn, whole, within } from "../../lock/fieldSchemas";
import type { Profile } from "../../lock/profile";
import { parseProfile } from "../../lock/profileSchema";
import { shippedProfile } from "../../lock/shippedProfiles";
import { type DialDoubt, doubtsSchema } from "../../realdial/sources/dialDoubt";
import type { SourceDescription } from "../../realdial/sources/sourceDescription";
import { sourcesSchema } from "../../realdial/sources/sourceSchema";
import type { Problem } from "../../wording/problem";
import type { HandoverEvent } from "./rules/handoverEvent";
import { RunError } from "./rules/runError";
import { runProblem } from "./rules/runWords";
import type { HandoverScene } from "./scene";

/** One thing that happened, and when: milliseconds since the run began. */
export type TimedEvent = HandoverEvent & {
  readonly at_ms: Milliseconds;
  /** Whether the combination as written opens the lock after it; left out where nobody tried the lock. */
  readonly opensAsWritten?: boolean | undefined;
};

/** In the debrief, the run was taken back to where it stood after its first `steps` steps that still counted. */
export interface WentBack {
  readonly type: "run.wentBack";
  readonly steps: number;
  readonly at_ms: Milliseconds;
}

/** A run as it was recorded. It holds no combination. */
export interface RecordedRun {
  readonly format: "gatefall-handover";
  readonly version: 1;
  readonly profile: Profile;
  readonly scene: HandoverScene;
  /** Seed of scene, combinations and the simulated hand. */
  readonly seed: number;
  /**
   * The rule by which scene, tray and new parts follow from the seed, which they are then held against. Left out in runs
   * written by hand or before there was this promise.
   */
  readonly drawnBy?: 1 | undefined;
  /** Whether a simulated hand did the dialing. */
  readonly isHandsOff: boolean;
  /** What lies at the door of a run that begins with fitting its lock; left out where the lock is on the door. */
  readonly fitting?: (DoorToFit & { readonly version: 1 }) | undefined;
  /** What turned the dial; left out where the hands on the screen alone did, or a simulated hand. */
  readonly sources?: readonly SourceDescription[] | undefined;
  /** Why its turns may be miscounted; left out where nothing speaks for that, and in runs of earlier versions. */
  readonly doubts?: readonly DialDoubt[] | undefined;
  readonly events: readonly (TimedEvent | WentBack)[];
}

const name = text(120);
const height = above(0, "inches");
const at = { at_ms: atLeast(0, "milliseconds"), opensAsWritten: z.optional(flag) };
const bare = <const Type extends HandoverEvent["type"]>(type: Type) => z.object({ type: z.literal(type), ...at });

/** The most acts and checks of one fitting. */
const MOST_ACTS = 5000;
const MOST_CHECKS = 100;
/** Of any dial. */
const slotAt = within(0, 1000, "graduations");

const eventSchema = z.discriminatedUnion(
  "type",
  [
    z.object({
      type: z.literal("lock.fitted"),
      acts: shortList(fittingActSchema, MOST_ACTS),
      checks: shortList(fitCheckSchema, MOST_CHECKS),
      checkSet: checkSetSchema,
      isChecked: flag,
      isFaultless: flag,
      ...at,
    }),
    bare("lock.takenApart"),
    z.object({
      type: z.literal("parts.replaced"),
      slotAt,
      acts: z.optional(shortList(fittingActSchema, MOST_ACTS)),
      ...at,
    }),
    z.object({ type: z.literal("mounting.measured"), height_in: height, ...at }),
    bare("authorization.asked"),
    bare("ring.aligned"),
    bare("ring.loosened"),
    z.object({ type: z.literal("zero.set"), side: turn, ...at }),
    z.object({ type: z.literal("combination.dialed"), by: oneOf(["trainee", "second"]), opened: flag, ...at }),
    z.object({
      type: z.literal("combination.changed"),
      outcome: oneOf(["true", "off", "spoiled"]),
      isAllowed: flag,
      ...at,
    }),
    bare("pack.rebuilt"),
    bare("bolt.thrown"),
    bare("bolt.drawnAgain"),
    bare("lock.spunOff"),
    bare("holdback.set"),
    bare("holdback.released"),
    z.object({ type: z.literal("observer.entered"), canOpen: flag, ...at }),
    bare("observer.left"),
    z.object({ type: z.literal("wayOut.checked"), isFree: flag, ...at }),
    bare("wayOut.cleared"),
    bare("release.failed"),
    bare("door.shut"),
    z.object({ type: z.literal("door.opened"), by: oneOf(["outside", "inside", "emergency"]), ...at }),
    bare("record.written"),
    bare("record.refused"),
    bare("duty.signed"),
    z.object({
      type: z.literal("run.wentBack"),
      steps: whole(0, 100_000),
      ...at,
    }),
  ],
  must("such-as", { example: { type: "door.shut", at_ms: 1000 } }),
);

const MOST_EVENTS = 10_000;

const runSchema = z.object(
  {
    format: z.literal("gatefall-handover", must("one-of", { choices: ["gatefall-handover"] })),
    version: z.literal(1, must("only-version", { version: 1 })),
    profile: z.unknown(),
    scene: z.object(
      { door: name, lock: name, height_in: height, isReleaseBlocked: flag, second: name, observer: name },
      must("object"),
    ),
    seed: z.number(must("any-whole")).check(z.int(must("any-whole"))),
    drawnBy: z.optional(z.literal(1, must("only-version", { version: 1 }))),
    isHandsOff: z._default(flag, false),
    fitting: z.optional(
      z.object({ version: z.literal(1, must("only-version", { version: 1 })), slotAt, bend: offsetSchema }),
    ),
    sources: sourcesSchema,
    doubts: doubtsSchema,
    events: shortList(eventSchema, MOST_EVENTS),
  },
  must("object"),
);

/** What is wrong with an event, in its place. Steps are counted from 1, as in the debrief; going back is none. */
export function wrongAt(events: RecordedRun["events"], index: number, misfit: Problem): Problem {
  const type = events[index]?.type;
  if (type === "run.wentBack") return runProblem("back-misfit", [], { index, misfit });
  const step = events.slice(0, index + 1).filter((event) => event.type !== "run.wentBack").length;
  return runProblem("event-misfit", [], { step, index, type, misfit });
}

const checkTimes = (events: RecordedRun["events"]) => {
  const index = events.findIndex(({ at_ms }, k) => at_ms < (events[k - 1]?.at_ms ?? 0));
  if (index < 0) return;
  const [before, at] = [events[index - 1]?.at_ms, events[index]?.at_ms];
  throw new RunError(wrongAt(events, index, runProblem("time-falls", [], { at, before })));
};

/**
 * Reads a recorded run from outside. That its events can follow each other, `replayRun` checks.
 *
 * @param value - parsed JSON
 * @throws {RunError} naming the field that is wrong
 * @throws {LockError} for a bad profile
 */
export function parseRun(value: unknown): RecordedRun {
  const parsed = runSchema.safeParse(value);
  if (!parsed.success) throw new RunError(fieldProblem(parsed.error.issues, value), "handover");
  const { profile, ...rest } = parsed.data;
  checkTimes(rest.events);
  return { ...rest, profile: typeof profile === "string" ? shippedProfile(profile) : parseProfile(profile) };
}

/**
 * Writes a run as JSON.
 *
 * @param profile - an id where the profile is a shipped one, else the whole profile
 */
export function writeRun(run: RecordedRun, profile: string | Profile): string {
  return `${JSON.stringify({ ...run, profile }, null, 1)}\n`;
}
