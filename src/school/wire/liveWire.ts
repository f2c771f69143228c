import * as z from "zod/mini";
import { flag, shortList, shortText, strict, text, whole } from "../../lock/fieldSchemas";
import { sourcesSchema } from "../../realdial/sources/sourceSchema";
import { foreign, graduations, id, moment } from "../../records/fields";

/** Version of what benches and boards are told; another one is refused. */
const version = z.literal(1);

/** Bytes of one message of a bench, letters of a motion in it, messages a second that it may send for long, and at once. */
export const TELLING_LIMITS = { bytes: 64 * 1024, motion: 48_000, perSecond: 20, atOnce: 60 } as const;

/** From one sign of life of a server to its next, ms. */
export const SIGN_MS = 15_000;

/** Silence of a server after which its other end makes the connection anew, ms. */
export const SILENCE_MS = 40_000;

/** How long a bench that has gone stays on a board, ms: a long sitting. */
export const GONE_MS = 3 * 3_600_000;

/** Least time from one change of a bench to its next on a board, ms: at most five a second. */
export const BOARD_PAUSE_MS = 200;

const benchState = strict({
  /** Who sits there; somebody who joined at that bench. */
  personId: id,
  /** The lock under the hand; left out where no dial is turned. */
  profileId: z.optional(text(80)),
  /** The page that is worked on. */
  exercise: text(60),
  /** Title of the sheet that is sat; left out where none is. */
  sheet: z.optional(text(200)),
  /** Which leg of how many is being dialed, the draw being the last; left out where none is. */
  leg: z.optional(strict({ at: whole(1, 20), of: whole(1, 20) })),
  /** What the last attempt or job came to. */
  last: z.optional(strict({ isRight: flag, endedAt: moment })),
  /** Nobody is at work: the bench shows a result, or a page that is no exercise. */
  isWaiting: flag,
  /** Records that wait to be sent. */
  unsent: whole(0, 1e6),
});

const growing = strict({
  id,
  startedAt: moment,
  profileId: text(80),
  /** The whole profile, where it is none of the shipped ones. */
  ownProfile: z.optional(foreign),
  combination: shortList(graduations, 6),
  /** What turned the dial; left out where the hands on the screen alone did. */
  sources: sourcesSchema,
  /** The motion so far, packed, base64. */
  motion: shortText(TELLING_LIMITS.motion),
});

/** An attempt that is under way, or has just ended. */
export type GrowingAttempt = Readonly<z.infer<typeof growing>>;

/** Schema of an attempt that is under way, or has just ended. */
export const growingAttempt = growing;

/** Answer to a board that asks for the attempt of a bench: null where there is none, or its motion must not be kept. */
export const attemptAnswer = strict({ attempt: z.nullable(growing) });

/**
 * What a bench tells, one message each: what goes on, the motion of its attempt (null takes back what was told of it: from now
 * on it must not be kept), a hand raised or lowered.
 */
export const benchTelling = z.discriminatedUnion("kind", [
  strict({ v: version, kind: z.literal("state"), state: benchState }),
  strict({ v: version, kind: z.literal("attempt"), attempt: z.nullable(growing) }),
  strict({ v: version, kind: z.literal("hand"), personId: id, isRaised: flag }),
]);

/** A message of a bench. */
export type BenchTelling = Readonly<z.infer<typeof benchTelling>>;

const problem = z.object({
  code: z.string(),
  path: z.array(z.union([z.string(), z.number()])),
  values: z.record(z.string(), z.unknown()),
});

/** What a bench is told: whether its hand counts as raised, why a message of it was not taken, and now and then that the server is there. */
export const benchHears = z.discriminatedUnion("kind", [
  strict({ v: version, kind: z.literal("hand"), isRaised: flag }),
  strict({ v: version, kind: z.literal("refused"), problem }),
  strict({ v: version, kind: z.literal("here") }),
]);

/** A message to a bench. */
export type BenchHears = Readonly<z.infer<typeof benchHears>>;

const liveBench = strict({
  deviceId: id,
  /** Whether it is connected; one that is not keeps what it told last. */
  isHere: flag,
  /** When it last told something, by the server's clock. */
  seenAt: moment,
  state: z.nullable(benchState),
  hand: z.nullable(strict({ personId: id, raisedAt: moment })),
  /** The attempt that grows or has just ended there, and how many letters its packed motion has; it is asked for by itself. */
  attempt: z.nullable(strict({ id, letters: whole(0, TELLING_LIMITS.motion), hasEnded: flag })),
});

/** A bench as a board shows it. */
export type LiveBench = Readonly<z.infer<typeof liveBench>>;

/** Schema of a bench as servers of one database tell it each other. */
export const liveBenches = z.array(liveBench);

/** What a board hears: every bench at first, then those that changed. */
export const boardEvent = strict({ v: version, isAll: flag, now: moment, benches: liveBenches });

/** A message to a board. */
export type BoardEvent = Readonly<z.infer<typeof boardEvent>>;
