import type { SettingRecord } from "../records/records";
import type { LogbookDatabase } from "./logbookDatabase";
import { type LogbookWrite, ownerOf } from "./logbookWrite";

/*
 * Who was made one with somebody else stays on record, as a setting of the one who remains: another tab that still has the
 * other in hand must not bring that person back.
 */

/** Name of the setting for a person who was made one with somebody. */
export const mergedKey = (from: string): string => `merged-${from}`;

/** What remains of a person who was made one with somebody. @param now - milliseconds since 1970 */
export const mergedMark = (from: string, to: string, now: number): SettingRecord => ({
  id: mergedKey(from),
  personId: to,
  createdAt: now,
  updatedAt: now,
  value: true,
});

/**
 * Whoever remains of people who are gone because they were made one with somebody else, by the id of the one who is gone.
 * To be called within a transaction.
 */
export async function mergedAmong(
  database: LogbookDatabase,
  writes: readonly LogbookWrite[],
): Promise<Map<string, string>> {
  const owners = [
    ...new Set(writes.flatMap((write) => (write.kind === "people" ? write.record.id : (ownerOf(write) ?? [])))),
  ];
  const here = await database.people.bulkGet(owners);
  const gone = owners.filter((_, k) => here[k] === undefined);
  const marks = await database.settings.bulkGet(gone.map(mergedKey));
  const remaining = await database.people.bulkGet(marks.map((mark) => mark?.personId ?? ""));
  return new Map(
    gone.flatMap((id, k) => {
      const person = remaining[k];
      return person === undefined ? [] : [[id, person.id] as const];
    }),
  );
}
