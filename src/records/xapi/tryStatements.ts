import type { DoubtedRecord } from "../../realdial/sources/dialDoubt";
import type { AttemptRecord } from "../attemptRecord";
import type { JobRecord } from "../jobRecord";
import type { DeclarationRecord, ZeroingRecord } from "../records";
import { type SourcedRecord, sourceTexts } from "../sourceTexts";
import { triedRight } from "../triedRight";
import { activity, duration, extension, pathPart, TYPES, VERBS, type XapiStatement } from "./statement";

/** What a statement has of its own: all but whose it is and what it is part of. */
export interface OwnParts extends Pick<XapiStatement, "id" | "verb" | "object" | "result"> {
  readonly personId: string;
  /** Milliseconds since 1970. */
  readonly at: number;
  /** The sitting it was a try or an answer of. */
  readonly sittingId?: string | undefined;
}

type Statement = Omit<OwnParts, "id">;

/** What turned the dial, where that was not the hands on the screen alone, and why its turns are in doubt, where they are. */
const turnedBy = (record: SourcedRecord & DoubtedRecord) => ({
  ...(record.sources && { [extension("turned-by")]: sourceTexts(record) }),
  ...(record.doubts && { [extension("turns-in-doubt")]: record.doubts }),
});

const simulation = (profileId: string, exercise: string) =>
  activity(`${pathPart(profileId)}/${pathPart(exercise)}`, TYPES.simulation, `${exercise}, ${profileId}`);

/** An attempt at the dial; one that never came to its end is stated as that. */
export function attemptParts(attempt: AttemptRecord): Statement {
  const { personId, sittingId, startedAt, duration_ms, profileId, exercise, isUnfinished } = attempt;
  const isWhole = isUnfinished !== true;
  return {
    ...{ personId, sittingId, at: startedAt + duration_ms },
    verb: VERBS.attempted,
    object: simulation(profileId, exercise),
    result: {
      ...(isWhole && { success: triedRight(attempt) }),
      completion: isWhole,
      duration: duration(duration_ms),
      extensions: {
        [extension("stop-errors")]: attempt.stops.map(({ error }) => error),
        [extension("faults")]: attempt.faults.map(({ code }) => code),
        [extension("help")]: attempt.help,
        [extension("conditions")]: attempt.conditions,
        ...turnedBy(attempt),
      },
    },
  };
}

/** A zeroing, broken off or ended. */
export function zeroingParts(zeroing: ZeroingRecord, sittingId: string | undefined): Statement {
  const { personId, startedAt, profileId, outcome, readings } = zeroing;
  const isBrokenOff = outcome === "broken-off";
  const refused = readings.filter(({ refusal }) => refusal !== undefined).length;
  return {
    ...{ personId, sittingId, at: startedAt },
    verb: isBrokenOff ? VERBS.terminated : VERBS.zeroed,
    object: simulation(profileId, "zeroing"),
    result: {
      ...(!isBrokenOff && { success: triedRight({ ...zeroing, opened: outcome === "zero-set" }) }),
      completion: !isBrokenOff,
      extensions: {
        [extension("accepted-readings")]: readings.length - refused,
        [extension("refused-readings")]: refused,
        ...turnedBy(zeroing),
      },
    },
  };
}

/** A job at the bench: a change, a trouble, a handover. */
export function jobParts(job: JobRecord): Statement {
  const { personId, sittingId, startedAt, duration_ms, profileId, kind, isRight, missed, help } = job;
  return {
    ...{ personId, sittingId, at: startedAt + duration_ms },
    verb: VERBS.attempted,
    object: simulation(profileId, kind),
    result: {
      success: isRight,
      completion: true,
      duration: duration(duration_ms),
      extensions: { [extension("missed")]: missed, [extension("help")]: help, ...turnedBy(job) },
    },
  };
}

/** That someone has shown a skill. */
export function declarationParts(declaration: DeclarationRecord): Statement {
  const { personId, profileId, exercise, attempts, declaredAt, rule } = declaration;
  const path = `${pathPart(profileId)}/${pathPart(exercise)}/mastery`;
  return {
    ...{ personId, at: declaredAt },
    verb: VERBS.mastered,
    object: activity(path, TYPES.objective, `${exercise}, ${profileId}`),
    result: {
      success: true,
      completion: true,
      extensions: {
        [extension("attempts")]: attempts,
        ...(rule && { [extension("rule")]: rule }),
        ...turnedBy(declaration),
      },
    },
  };
}
