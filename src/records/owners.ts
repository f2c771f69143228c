import type { LogbookContents } from "./logbookContents";
import { PERSONAL_KINDS, type PersonRecord } from "./records";

/** Letters of an id that a name made of it shows. */
const LETTERS = 6;

/**
 * A person for records whose own one is gone and not remembered: better under a name that nobody chose than out of sight.
 * It counts as older than any other record of the person.
 *
 * @param since - time of the earliest of the records, milliseconds since 1970
 */
export function unknownPerson(id: string, since: number): PersonRecord {
  return { id, createdAt: since, updatedAt: 0, name: `Unknown person ${id.slice(0, LETTERS)}`, part: "trainee" };
}

/** People whom records belong to and who are not among the people, by id, with the time of their earliest record. */
export function missingOwners({ records }: LogbookContents): ReadonlyMap<string, number> {
  const here = new Set(records.people.map(({ id }) => id));
  const missing = new Map<string, number>();
  for (const kind of [...PERSONAL_KINDS, "settings"] as const) {
    for (const { personId, createdAt } of records[kind]) {
      if (personId === undefined || here.has(personId)) continue;
      missing.set(personId, Math.min(createdAt, missing.get(personId) ?? createdAt));
    }
  }
  return missing;
}

/** A logbook in which every record has its person. @param known - people remembered from before, by id */
export function withOwners(contents: LogbookContents, known: ReadonlyMap<string, PersonRecord>): LogbookContents {
  const missing = [...missingOwners(contents)].map(([id, since]) => known.get(id) ?? unknownPerson(id, since));
  if (missing.length === 0) return contents;
  const people = [...contents.records.people, ...missing];
  return { ...contents, records: { ...contents.records, people } };
}
