import type { AttemptRecord } from "./attemptRecord";
import { checkedSitting } from "./checkedSitting";
import type { JobRecord } from "./jobRecord";
import type { LogbookContents } from "./logbookContents";
import type { DeclarationRecord, SittingRecord, ZeroingRecord } from "./records";

/** Where our own names live: an example domain, for there is no server behind them. */
const HOME = "https://gatefall.example";
const XAPI = `${HOME}/xapi`;
const ADL = "http://adlnet.gov/expapi";

const verb = (id: string, word: string) => ({ id, display: { "en-US": word } });

/** Verbs of ADL where one fits; zeroing and showing a skill have verbs of our own. */
const VERBS = {
  attempted: verb(`${ADL}/verbs/attempted`, "attempted"),
  completed: verb(`${ADL}/verbs/completed`, "completed"),
  passed: verb(`${ADL}/verbs/passed`, "passed"),
  failed: verb(`${ADL}/verbs/failed`, "failed"),
  terminated: verb(`${ADL}/verbs/terminated`, "terminated"),
  mastered: verb(`${ADL}/verbs/mastered`, "mastered"),
  zeroed: verb(`${XAPI}/verbs/zeroed`, "set the zero of"),
} as const;

/** One statement, as IEEE 9274.1.1 (xAPI 2.0) has it; only the parts that are written here. */
export interface XapiStatement {
  readonly id?: string;
  readonly actor: object;
  readonly verb: { readonly id: string; readonly display: Readonly<Record<string, string>> };
  readonly object: object;
  readonly result?: object;
  readonly context: object;
  readonly timestamp: string;
}

const UUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[1-8][0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/i;

/** A duration of ISO 8601, to a hundredth of a second as IEEE 9274.1.1 compares them. */
const duration = (span_ms: number) => `PT${Number((span_ms / 1000).toFixed(2))}S`;

const activity = (path: string, type: string, name: string) => ({
  objectType: "Activity",
  id: `${XAPI}/activities/${path}`,
  definition: { type, name: { "en-US": name } },
});

const SIMULATION = `${ADL}/activities/simulation`;
const ASSESSMENT = `${ADL}/activities/assessment`;
const OBJECTIVE = `${ADL}/activities/objective`;

const extension = (name: string) => `${XAPI}/extensions/${name}`;

interface Common {
  readonly id: string;
  readonly personId: string;
}

/** Puts what every statement has round what is its own. */
type Frame = (record: Common, at: number, own: Pick<XapiStatement, "verb" | "object" | "result">) => XapiStatement;

function frameFor({ records }: LogbookContents): Frame {
  const names = new Map(records.people.map(({ id, name }) => [id, name]));
  return ({ id, personId }, at, own) => ({
    // A statement's id is a uuid; where the record has none, the server that takes it gives one.
    ...(UUID.test(id) && { id: id.toLowerCase() }),
    actor: {
      objectType: "Agent",
      name: names.get(personId) ?? personId,
      account: { homePage: `${HOME}/local`, name: personId },
    },
    ...own,
    context: { platform: "Gatefall", language: "en-US" },
    timestamp: new Date(at).toISOString(),
  });
}

function attemptParts(attempt: AttemptRecord): Pick<XapiStatement, "verb" | "object" | "result"> {
  const path = `${encodeURIComponent(attempt.profileId)}/${encodeURIComponent(attempt.exercise)}`;
  return {
    verb: VERBS.attempted,
    object: activity(path, SIMULATION, `${attempt.exercise}, ${attempt.profileId}`),
    result: {
      ...(attempt.isUnfinished !== true && { success: attempt.opened }),
      completion: attempt.isUnfinished !== true,
      duration: duration(attempt.duration_ms),
      extensions: {
        [extension("stop-errors")]: attempt.stops.map(({ error }) => error),
        [extension("faults")]: attempt.faults.map(({ code }) => code),
        [extension("help")]: attempt.help,
        [extension("conditions")]: attempt.conditions,
      },
    },
  };
}

function zeroingParts({
  profileId,
  outcome,
  readings,
}: ZeroingRecord): Pick<XapiStatement, "verb" | "object" | "result"> {
  const isBrokenOff = outcome === "broken-off";
  return {
    verb: isBrokenOff ? VERBS.terminated : VERBS.zeroed,
    object: activity(`${encodeURIComponent(profileId)}/zeroing`, SIMULATION, `zeroing, ${profileId}`),
    result: {
      ...(!isBrokenOff && { success: outcome === "zero-set" }),
      completion: !isBrokenOff,
      extensions: {
        [extension("accepted-readings")]: readings.filter(({ refusal }) => refusal === undefined).length,
        [extension("refused-readings")]: readings.filter(({ refusal }) => refusal !== undefined).length,
      },
    },
  };
}

function jobParts({ profileId, kind, isRight, duration_ms, missed, help }: JobRecord) {
  const path = `${encodeURIComponent(profileId)}/${kind}`;
  return {
    verb: VERBS.attempted,
    object: activity(path, SIMULATION, `${kind}, ${profileId}`),
    result: {
      success: isRight,
      completion: true,
      duration: duration(duration_ms),
      extensions: { [extension("missed")]: missed, [extension("help")]: help },
    },
  };
}

const SITTING_VERBS = {
  passed: VERBS.passed,
  failed: VERBS.failed,
  "not shown yet": VERBS.completed,
  "broken-off": VERBS.terminated,
} as const;

/**
 * A sitting as its checked record tells it. Nothing is stated of one that is under way, nor of a record that cannot be read
 * or does not check.
 */
function sittingParts(sitting: SittingRecord, appVersion: string) {
  const checked = checkedSitting(sitting, { appVersion });
  if (checked.kind !== "ended" || checked.shown.outcome === null) return null;
  const { outcome, title } = checked.shown;
  const isDecided = outcome === "passed" || outcome === "failed";
  return {
    verb: SITTING_VERBS[outcome],
    object: activity(`sittings/${encodeURIComponent(sitting.sheetId ?? "free")}`, ASSESSMENT, title || "Sitting"),
    result: { ...(isDecided && { success: outcome === "passed" }), completion: outcome !== "broken-off" },
  };
}

function declarationParts({ profileId, exercise, attempts }: DeclarationRecord) {
  const path = `${encodeURIComponent(profileId)}/${encodeURIComponent(exercise)}/mastery`;
  return {
    verb: VERBS.mastered,
    object: activity(path, OBJECTIVE, `${exercise}, ${profileId}`),
    result: { success: true, completion: true, extensions: { [extension("attempts")]: attempts } },
  };
}

/**
 * A logbook as statements of xAPI (IEEE 9274.1.1-2023), oldest first.
 *
 * ADL's verbs: attempted (an attempt or a job; opened or right is its success), passed, failed, completed (a finished sitting, completed
 * where its verdict is not shown yet), terminated (broken off), mastered (a skill shown). Our own: zeroed. People are
 * accounts on this machine, by id; no address is written.
 *
 * @param appVersion - the version that checks the records of sittings
 */
export function xapiStatements(contents: LogbookContents, appVersion: string): XapiStatement[] {
  const frame = frameFor(contents);
  const { attempts, zeroings, jobs, sittings, declarations } = contents.records;
  const statements = [
    ...attempts.map((one) => frame(one, one.startedAt + one.duration_ms, attemptParts(one))),
    ...zeroings.map((one) => frame(one, one.startedAt, zeroingParts(one))),
    ...jobs.map((one) => frame(one, one.startedAt + one.duration_ms, jobParts(one))),
    ...sittings.flatMap((one) => {
      const parts = sittingParts(one, appVersion);
      return parts === null ? [] : [frame(one, one.updatedAt, parts)];
    }),
    ...declarations.map((one) => frame(one, one.declaredAt, declarationParts(one))),
  ];
  return statements.sort((a, b) => a.timestamp.localeCompare(b.timestamp));
}
