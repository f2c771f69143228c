import * as z from "zod/mini";
import type { AttemptStart } from "../dialing/attemptStart";
import type { Motion } from "../dialing/motion";
import { type Combination, parseCombination } from "../lock/combination";
import type { Graduations, Milliseconds } from "../lock/dial";
import { exact } from "../lock/exact";
import { fieldProblem } from "../lock/fieldProblem";
import { atLeast, must, rulesOf } from "../lock/fieldSchemas";
import { isNestedDeeply } from "../lock/jsonDepth";
import type { Profile } from "../lock/profile";
import { parseProfile } from "../lock/profileSchema";
import { shippedProfile } from "../lock/shippedProfiles";
import { FARTHEST } from "../lock/wheelPackState";
import type { SourceDescription } from "../realdial/sources/sourceDescription";
import { sourcesSchema } from "../realdial/sources/sourceSchema";
import { TraceError } from "./traceError";
import { TRACE_WORDS, traceProblem } from "./traceWords";

/** One attempt as it was recorded: everything that is needed to replay it. */
export interface RecordedAttempt extends Motion {
  readonly profile: Profile;
  readonly combination: Combination;
  /** What turned the dial; left out where the hands on the screen alone did. */
  readonly sources?: readonly SourceDescription[] | undefined;
}

const traceRule = rulesOf(TRACE_WORDS);

/** A list of numbers. Its entries are looked at in one loop and not each by a schema: they are nearly all of a line. */
const numbers = z.custom<number[]>(Array.isArray, must("any-list")).check((list) => {
  const at = Array.isArray(list.value) ? list.value.findIndex((one) => !Number.isFinite(one)) : -1;
  if (at < 0) return;
  list.issues.push({ code: "custom", message: must("number").error, input: list.value, path: [at] });
});

const lineSchema = z.object(
  {
    profile: z.optional(z.unknown()),
    combination: z.optional(z.unknown()),
    start: z.optional(
      z.object(
        {
          dial: z.number(must("number-of", { unit: "graduations" })),
          slack: z.optional(numbers),
          wrongTries: z.optional(atLeast(0, "tries")),
          waits_ms: z.optional(z.number(must("number-of", { unit: "milliseconds" }))),
        },
        must("such-as", { example: { dial: 12.5, slack: [0, 0, 0] } }),
      ),
    ),
    positions: numbers.check(z.minLength(1, traceRule("no-position"))),
    times_ms: z.optional(numbers),
    sources: sourcesSchema,
  },
  traceRule("no-attempt"),
);

type Line = z.infer<typeof lineSchema>;

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

function isNumbers(value: unknown): value is number[] {
  if (!Array.isArray(value)) return false;
  for (const one of value) if (!Number.isFinite(one)) return false;
  return true;
}

/** Whether the fields that nearly every line has are as the schema wants them, and nothing else is there to look at. */
const isPlain = (value: unknown): value is Line =>
  isObject(value) &&
  isNumbers(value.positions) &&
  value.positions.length > 0 &&
  (value.times_ms === undefined || isNumbers(value.times_ms)) &&
  value.sources === undefined &&
  (value.start === undefined || isPlainStart(value.start));

const isPlainStart = (start: unknown): boolean =>
  isObject(start) &&
  Number.isFinite(start.dial) &&
  start.wrongTries === undefined &&
  start.waits_ms === undefined &&
  (start.slack === undefined || isNumbers(start.slack));

/** A line as the schema reads it. Plain ones, which most are, are not sent through it: that takes as long as their JSON. */
function checkedLine(value: unknown): Line {
  if (isPlain(value)) return value;
  const parsed = lineSchema.safeParse(value);
  if (!parsed.success) throw new TraceError(fieldProblem(parsed.error.issues, value));
  return parsed.data;
}

const checkPositions = (positions: readonly number[]) => {
  const index = positions.findIndex((position) => !(Math.abs(position) <= FARTHEST));
  if (index >= 0) {
    throw new TraceError(traceProblem("position-too-far", ["positions", index], { found: positions[index] }));
  }
};

const checkTimes = (times: readonly number[] | undefined, wanted: number) => {
  if (times === undefined) return;
  if (times.length !== wanted) {
    throw new TraceError(traceProblem("time-count", ["times_ms"], { count: times.length, wanted }));
  }
  const index = times.findIndex((time, i) => i > 0 && time < (times[i - 1] ?? time));
  if (index >= 0) throw new TraceError(traceProblem("time-falls", ["times_ms", index], { time: times[index] }));
};

const profileOf = (value: unknown): Profile => {
  if (typeof value === "string") return shippedProfile(value);
  if (typeof value === "object" && value !== null) return ownProfile(value);
  throw new TraceError(traceProblem("no-profile", ["profile"], { found: value }));
};

/** Whole profiles that were read last, by their text: the lines of a file mostly repeat one. */
const profilesRead = new Map<string, Profile>();
const MOST_READ = 32;
/** Longer ones are read anew each time, so that little is remembered. */
const LONGEST_READ = 10_000;

function ownProfile(value: unknown): Profile {
  const text = JSON.stringify(value);
  const known = profilesRead.get(text);
  if (known !== undefined) return known;
  const profile = parseProfile(value);
  if (profilesRead.size >= MOST_READ) profilesRead.clear();
  if (text.length <= LONGEST_READ) profilesRead.set(text, profile);
  return profile;
}

const checkSlack = (profile: Profile, slack: readonly number[] | undefined) => {
  if (slack !== undefined && profile.kind !== "wheel-pack") {
    throw new TraceError(traceProblem("slack-without-wheels", ["start", "slack"], { lock: profile.id }));
  }
};

/**
 * Reads one recorded attempt from outside.
 *
 * @param value - parsed JSON of one line
 * @throws {TraceError} naming the field that is wrong
 * @throws {LockError} for a bad profile or combination
 */
export function parseAttempt(value: unknown): RecordedAttempt {
  const line = checkedLine(value);
  const { positions, times_ms, start, sources } = line;
  const profile = profileOf(line.profile);
  const combination = parseCombination(profile, line.combination);
  checkPositions(positions);
  checkTimes(times_ms, positions.length);
  checkSlack(profile, start?.slack);
  return { profile, combination, start: start && startFrom(start), positions, times_ms, ...(sources && { sources }) };
}

/**
 * Reads one line of JSON.
 *
 * @throws {TraceError} for text that is no JSON, and as `parseAttempt`
 */
export function parseAttemptLine(line: string): RecordedAttempt {
  return parseAttempt(parseJson(line));
}

function parseJson(line: string): unknown {
  if (isNestedDeeply(line)) throw new TraceError(traceProblem("too-deep", []));
  try {
    return JSON.parse(line);
  } catch {
    const beginning = line.length > 40 ? `${line.slice(0, 40)}…` : line;
    throw new TraceError(traceProblem("not-json", [], { beginning }));
  }
}

/** What a line may say of a lock before the first move. `wrongTries` and `waits_ms` are for encoder locks. */
interface WrittenStart {
  readonly dial: Graduations;
  readonly slack?: readonly Graduations[] | undefined;
  readonly wrongTries?: number | undefined;
  /** Until when it refuses every draw, in the times of the line. */
  readonly waits_ms?: Milliseconds | undefined;
}

const startFrom = ({ dial, slack, wrongTries, waits_ms }: WrittenStart): AttemptStart => ({
  dial,
  ...(slack && { slack }),
  ...((wrongTries ?? waits_ms) !== undefined && {
    memory: { wrongTries: wrongTries ?? 0, waitsUntil_ms: waits_ms ?? null },
  }),
});

const startToWrite = ({ dial, slack, memory }: AttemptStart): WrittenStart => ({
  dial,
  ...(slack && { slack }),
  ...(memory && memory.wrongTries > 0 && { wrongTries: memory.wrongTries }),
  ...(memory?.waitsUntil_ms != null && { waits_ms: Math.round(memory.waitsUntil_ms) }),
});

/**
 * Writes an attempt as one line of the replay format.
 *
 * @param profile - an id where the profile is a shipped one, else the whole profile
 */
export function writeAttemptLine(recorded: RecordedAttempt, profile: string | Profile): string {
  const { combination, start, positions, times_ms, sources } = recorded;
  return JSON.stringify({
    profile,
    combination,
    ...(start && { start: startToWrite(start) }),
    // To the step of the mechanics, so that a replay of the line comes to the same.
    positions: positions.map(exact),
    ...(times_ms && { times_ms: times_ms.map(Math.round) }),
    ...(sources && { sources }),
  });
}
