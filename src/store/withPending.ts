import { type LogbookContents, NO_CONTENTS } from "../records/logbookContents";
import { RECORD_KINDS, type RecordKind, type RecordOf } from "../records/records";
import { wouldUndoEnd } from "./endedStays";
import { contentsOfWrites, type LogbookWrite } from "./logbookWrite";
import { nextRevision } from "./revision";

/** Those of some waiting records that will take the place of the stored ones, counted on from them. */
function taken<Kind extends RecordKind>(
  kind: Kind,
  waiting: readonly RecordOf[Kind][],
  stored: readonly RecordOf[Kind][],
): RecordOf[Kind][] {
  const byId = new Map(stored.map((one) => [one.id, one]));
  const write = (record: RecordOf[Kind]) => ({ kind, record }) as unknown as LogbookWrite;
  const isUndone = (one: RecordOf[Kind]) => {
    const before = byId.get(one.id);
    return before !== undefined && wouldUndoEnd(write(before), write(one));
  };
  return waiting
    .filter((one) => !isUndone(one))
    .map((one) => ({ ...one, revision: nextRevision(byId.get(one.id), one) }));
}

/**
 * What is stored with what waits to be stored, as it will be: what waits comes later, whatever the clock says, and comes
 * first in each list.
 */
export function withPending(pending: readonly LogbookWrite[], stored: LogbookContents): LogbookContents {
  if (pending.length === 0) return stored;
  const isHere = (id: string) => stored.records.people.some((one) => one.id === id);
  const waiting = contentsOfWrites(
    pending.filter((write) => write.kind !== "people" || write.only === undefined || !isHere(write.record.id)),
  );
  const records = Object.fromEntries(
    RECORD_KINDS.map((kind) => {
      const first = taken<RecordKind>(kind, waiting.records[kind], stored.records[kind]);
      const ids = new Set(first.map(({ id }) => id));
      return [kind, [...first, ...stored.records[kind].filter(({ id }) => !ids.has(id))]];
    }),
  ) as unknown as LogbookContents["records"];
  const attempts = new Set(taken("attempts", waiting.records.attempts, stored.records.attempts).map(({ id }) => id));
  const traces = [...waiting.traces].filter(([id]) => attempts.has(id) || !stored.traces.has(id));
  return { records, traces: new Map([...stored.traces, ...traces]) };
}

/** Records of one kind, stored ones with those that wait. */
export function kindWithPending<Kind extends RecordKind>(
  pending: readonly LogbookWrite[],
  kind: Kind,
  stored: readonly RecordOf[Kind][],
): readonly RecordOf[Kind][] {
  return withPending(pending, { ...NO_CONTENTS, records: { ...NO_CONTENTS.records, [kind]: stored } }).records[kind];
}
