import { RECORD_KINDS, type RecordKind, type RecordOf } from "./records";

/** Records of every kind, and the packed motions of the attempts by their ids: a whole logbook, or part of one. */
export interface LogbookContents {
  readonly records: { readonly [Kind in RecordKind]: readonly RecordOf[Kind][] };
  readonly traces: ReadonlyMap<string, Uint8Array>;
}

/** A logbook with nothing in it. */
export const NO_CONTENTS: LogbookContents = {
  records: {
    people: [],
    attempts: [],
    zeroings: [],
    jobs: [],
    sittings: [],
    sheets: [],
    settings: [],
    declarations: [],
    handoverRuns: [],
  },
  traces: new Map(),
};

/** What two records with one id are told apart by. */
interface Stamped {
  readonly id: string;
  readonly updatedAt: number;
  readonly revision?: number | undefined;
}

/**
 * Whether a record from elsewhere takes the place of another with its id: only where it was written more often, or as
 * often and later by the clock. Clocks can be set back, counts cannot. Of two that are alike in both the one that is here
 * already stays.
 */
export function replaces(incoming: Stamped, existing: Stamped | undefined): boolean {
  if (existing === undefined) return true;
  const more = (incoming.revision ?? 0) - (existing.revision ?? 0);
  return more === 0 ? incoming.updatedAt > existing.updatedAt : more > 0;
}

/** The later of the records with one id; each id once, in the order of its first coming. */
function latestById<One extends Stamped>(records: readonly One[]): One[] {
  const byId = new Map<string, One>();
  for (const record of records) {
    if (replaces(record, byId.get(record.id))) byId.set(record.id, record);
  }
  return [...byId.values()];
}

/** Motions of attempts: an unfinished one grows, so each comes from the logbook whose record of the attempt holds. */
function tracesFor(
  attempts: LogbookContents["records"]["attempts"],
  parts: readonly LogbookContents[],
): Map<string, Uint8Array> {
  const traces = new Map<string, Uint8Array>();
  const holding = new Set<unknown>(attempts);
  for (const part of parts) {
    for (const attempt of part.records.attempts) {
      const bytes = part.traces.get(attempt.id);
      if (bytes !== undefined && (holding.has(attempt) || !traces.has(attempt.id))) traces.set(attempt.id, bytes);
    }
  }
  return traces;
}

/** Joins logbooks: each record once, the later one where two have one id. */
export function joinContents(parts: readonly LogbookContents[]): LogbookContents {
  const joined = RECORD_KINDS.map((kind) => [kind, latestById(parts.flatMap(({ records }) => [...records[kind]]))]);
  const records = Object.fromEntries(joined) as LogbookContents["records"];
  return { records, traces: tracesFor(records.attempts, parts) };
}

/** The part of a logbook that belongs to some people, with the sheets, which belong to all. */
export function contentsOf(people: ReadonlySet<string>, { records, traces }: LogbookContents): LogbookContents {
  const own = <One extends { readonly personId: string }>(list: readonly One[]) =>
    list.filter(({ personId }) => people.has(personId));
  const attempts = own(records.attempts);
  const kept = new Set(attempts.map(({ id }) => id));
  return {
    records: {
      people: records.people.filter(({ id }) => people.has(id)),
      attempts,
      zeroings: own(records.zeroings),
      jobs: own(records.jobs),
      sittings: own(records.sittings),
      sheets: records.sheets,
      settings: records.settings.filter(({ personId }) => personId !== undefined && people.has(personId)),
      declarations: own(records.declarations),
      handoverRuns: own(records.handoverRuns),
    },
    traces: new Map([...traces].filter(([id]) => kept.has(id))),
  };
}
