import { mayKeepMotion } from "../realdial/sources/sourceDescription";
import { unknownPerson } from "../records/owners";
import type { PersonRecord } from "../records/records";
import { endedAmong, withoutRevived, wouldUndoEnd } from "./endedStays";
import { attemptRow, type LogbookDatabase } from "./logbookDatabase";
import { type LogbookWrite, ownerOf, type PersonWrite } from "./logbookWrite";
import { isNotedAnew, markEdited, marksOf, markWaiting } from "./marks/outboxMarks";
import { mergedAmong } from "./mergedPeople";
import { nextRevision } from "./revision";

/** What storing found out about people. */
interface StoredPeople {
  /** People who were gone, and came back with their records. */
  readonly restored: PersonRecord[];
  /** Whoever stands in for a person that nobody chose, or that was made one with somebody, by the id of that person. */
  readonly standIns: Map<string, string>;
}

const firstMade = (one: PersonRecord, other: PersonRecord) =>
  one.createdAt - other.createdAt || (one.id < other.id ? -1 : 1);

/** Someone real who is there; whoever came first. */
const anyoneReal = (database: LogbookDatabase) =>
  database.people
    .filter(({ isDemo }) => isDemo !== true)
    .toArray()
    .then((real) => real.toSorted(firstMade)[0]);

async function storePerson(
  database: LogbookDatabase,
  { record, only }: PersonWrite,
  { restored, standIns }: StoredPeople,
): Promise<void> {
  const before = await database.people.get(record.id);
  const isMerged = before === undefined && standIns.has(record.id);
  if (only !== undefined && (before !== undefined || isMerged)) return;
  const standIn = only === "if-nobody" ? await anyoneReal(database) : undefined;
  if (standIn !== undefined) {
    standIns.set(record.id, standIn.id);
    return;
  }
  await database.people.put({ ...record, revision: nextRevision(before, record) });
  if (only === "if-missing") restored.push(record);
}

/** A write for whoever stands in for its person. */
function forStandIn(write: LogbookWrite, standIns: ReadonlyMap<string, string>): LogbookWrite {
  const personId = standIns.get(ownerOf(write) ?? "");
  return personId === undefined ? write : ({ ...write, record: { ...write.record, personId } } as LogbookWrite);
}

/** Never a record without its person: no screen would show it. */
async function keepOwner(
  database: LogbookDatabase,
  personId: string,
  createdAt: number,
  { restored }: StoredPeople,
): Promise<void> {
  if ((await database.people.get(personId)) !== undefined) return;
  const person = unknownPerson(personId, createdAt);
  await database.people.put(person);
  restored.push(person);
}

async function storeRecord(database: LogbookDatabase, write: Exclude<LogbookWrite, PersonWrite>): Promise<void> {
  const { kind, record } = write;
  const before = await database.table(kind).get(record.id);
  if (before !== undefined && wouldUndoEnd({ ...write, record: before }, write)) return;
  const revision = nextRevision(before, record);
  if (isNotedAnew(before, record)) await markEdited(database, record.id);
  if (write.kind !== "attempts") {
    await database.table(kind).put({ ...record, revision });
    return;
  }
  await database.attempts.put({ ...attemptRow(write.record), revision });
  if (!mayKeepMotion(write.record)) await database.traces.delete(record.id);
  else if (write.trace) await database.traces.put({ id: record.id, bytes: write.trace });
}

/** Those of the stand-ins who have not been deleted meanwhile. */
async function stillHere(database: LogbookDatabase, standIns: ReadonlyMap<string, string>) {
  const people = await database.people.bulkGet([...standIns.values()]);
  return new Map([...standIns].filter((_, k) => people[k] !== undefined));
}

/** What storing came to. */
export interface Stored extends StoredPeople {
  /** Sittings that a write took as going on, and that have ended: nothing of those was kept. */
  readonly ended: ReadonlySet<string>;
}

/**
 * Stores records in the order they come, each with its person. To be called within a transaction.
 *
 * What comes later takes the place of what is there, whatever the clock says, but for an end: that stays.
 *
 * @param known - who stands in for whom, as far as the page has found out before
 */
export async function storeWrites(
  database: LogbookDatabase,
  writes: readonly LogbookWrite[],
  known: ReadonlyMap<string, string> = new Map(),
): Promise<Stored> {
  // Waiting for a function that asks the database nothing would lose the transaction.
  const here = known.size === 0 ? known : await stillHere(database, known);
  const standIns = new Map([...here, ...(await mergedAmong(database, writes))]);
  const people: StoredPeople = { restored: [], standIns };
  const ended = await endedAmong(database, writes);
  const stored: LogbookWrite[] = [];
  for (const asked of withoutRevived(writes, ended)) {
    const write = forStandIn(asked, people.standIns);
    if (write.kind === "people") {
      await storePerson(database, write, people);
      continue;
    }
    // As above: what belongs to nobody asks for no person.
    const personId = ownerOf(write);
    if (personId !== undefined) await keepOwner(database, personId, write.record.createdAt, people);
    await storeRecord(database, write);
    stored.push(write);
  }
  const marks = marksOf(stored);
  if (marks.length > 0) await markWaiting(database, marks);
  return { ...people, ended };
}
