import type { PersonRecord } from "../records/records";
import { type LogbookWrite, ownerOf } from "./logbookWrite";

/** The people that this page knows, and who stands in for whom: a record is stored with its person, whatever became of the tables. */
export class KnownPeople {
  private readonly known = new Map<string, PersonRecord>();
  private readonly standIns = new Map<string, string>();

  /** By id. */
  get byId(): ReadonlyMap<string, PersonRecord> {
    return this.known;
  }

  /** Who stands in for a person, by that person's id. */
  get replaced(): ReadonlyMap<string, string> {
    return this.standIns;
  }

  know(people: readonly PersonRecord[]): void {
    for (const person of people) this.known.set(person.id, person);
  }

  /** Whoever stands in for a person that another tab had made first; else the person. */
  personFor(personId: string): string {
    return this.standIns.get(personId) ?? personId;
  }

  /** Has one person stand in for another: what this page still keeps for the one goes to the other. */
  standIn(personId: string, standIn: string): void {
    if (personId === standIn) this.standIns.delete(personId);
    else this.standIns.set(personId, standIn);
    this.known.delete(personId);
  }

  /** What storing came upon: people that another tab had made first. */
  replace(standIns: Iterable<readonly [string, string]>): void {
    for (const [id, standIn] of standIns) this.standIns.set(id, standIn);
  }

  /** Forgets people who were deleted here: no record brings them back. */
  forget(people: readonly string[]): void {
    for (const id of people) this.known.delete(id);
  }

  /** The persons of some records, to be kept with them where they are gone. */
  ownersOf(writes: readonly LogbookWrite[]): LogbookWrite[] {
    const ids = new Set(writes.flatMap((write) => ownerOf(write) ?? []));
    return [...ids].flatMap((id): LogbookWrite[] => {
      const record = this.known.get(id);
      return record === undefined ? [] : [{ kind: "people", record, only: "if-missing" }];
    });
  }
}
