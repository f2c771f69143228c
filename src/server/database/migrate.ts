import { type Kysely, type Migration, Migrator } from "kysely";
import { ServerError } from "../words/serverError";
import { serverProblem } from "../words/serverWords";
import { firstTables } from "./tables/firstTables";
import type { Tables } from "./tables/tables";

/** In the order of their names. One that was released is never changed. */
const MIGRATIONS: Readonly<Record<string, Migration>> = { "001-first-tables": firstTables };

/**
 * Brings a database to the tables of this version. Servers that start at once wait for each other.
 *
 * @throws {ServerError} "not-migrated", for a database of a newer version or one that refuses
 */
export async function migrate(database: Kysely<Tables>): Promise<void> {
  const migrator = new Migrator({ db: database, provider: { getMigrations: async () => ({ ...MIGRATIONS }) } });
  const { error } = await migrator.migrateToLatest();
  if (error !== undefined) throw new ServerError(serverProblem("not-migrated", [], { why: String(error) }));
}
