import type { Transaction } from "kysely";
import type { Tables } from "../database/tables/tables";

/** What was sent and made of sittings goes with their records; that they were begun stays, for an attempt was used. */
export async function forgetSittings(
  database: Transaction<Tables>,
  schoolId: string,
  sittingIds: readonly string[],
): Promise<void> {
  if (sittingIds.length === 0) return;
  for (const table of ["sitting_tries", "sitting_judgments", "comments"] as const) {
    await database.deleteFrom(table).where("school_id", "=", schoolId).where("sitting_id", "in", sittingIds).execute();
  }
}

/** Everything of the sittings of somebody who is erased, what never came in too, and what was set this person alone. */
export async function eraseSittings(database: Transaction<Tables>, schoolId: string, personId: string): Promise<void> {
  const rows = await database
    .selectFrom("begun_sittings")
    .select("id")
    .where("school_id", "=", schoolId)
    .where("person_id", "=", personId)
    .execute();
  await forgetSittings(
    database,
    schoolId,
    rows.map(({ id }) => id),
  );
  for (const table of ["begun_sittings", "assignment_people"] as const) {
    await database.deleteFrom(table).where("school_id", "=", schoolId).where("person_id", "=", personId).execute();
  }
}
