import { unknownPerson } from "../records/owners";
import { PERSONAL_KINDS, type PersonRecord } from "../records/records";
import type { Logbook } from "./logbook";
import type { LogbookDatabase } from "./logbookDatabase";

/** People whom records belong to and who are not there; found in indexes alone. */
async function missingPeople(database: LogbookDatabase): Promise<PersonRecord[]> {
  const here = new Set(await database.people.toCollection().primaryKeys());
  const missing: PersonRecord[] = [];
  for (const kind of [...PERSONAL_KINDS, "settings"]) {
    const table = database.table(kind);
    for (const key of await table.orderBy("personId").uniqueKeys()) {
      const id = String(key);
      if (here.has(id)) continue;
      const first = await table.where("personId").equals(id).first();
      missing.push(unknownPerson(id, first.createdAt));
      here.add(id);
    }
  }
  return missing;
}

/**
 * Gives a person to stored records whose own one is gone, so that screens show them again and an export can be read.
 *
 * @throws {LogbookError} when the storage fails
 */
export async function restoreOwners(logbook: Logbook): Promise<void> {
  if ((await logbook.read(missingPeople, [])).length === 0) return;
  // Another tab may have stored a person and the first record between two questions: asked again where nobody can.
  await logbook.change(async (database) => database.people.bulkAdd(await missingPeople(database)));
}
