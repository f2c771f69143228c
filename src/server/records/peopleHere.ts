import type { Kysely } from "kysely";
import type { Tables } from "../database/tables/tables";
import type { AskingBench } from "../http/whoAsks";

/** Who joined at a bench, ever, by id: somebody of the school, or somebody whose data was erased. */
export type PeopleHere = ReadonlyMap<string, "here" | "erased">;

/** Who joined at a bench. What somebody did there is theirs, also after they left it. */
export async function peopleHere(database: Kysely<Tables>, { schoolId, deviceId }: AskingBench): Promise<PeopleHere> {
  const rows = await database
    .selectFrom("device_people")
    .innerJoin("people", (join) =>
      join.onRef("people.id", "=", "person_id").onRef("people.school_id", "=", "device_people.school_id"),
    )
    .select(["person_id", "erased_at"])
    .where("device_people.school_id", "=", schoolId)
    .where("device_id", "=", deviceId)
    .execute();
  return new Map(rows.map(({ person_id, erased_at }) => [person_id, erased_at === null ? "here" : "erased"]));
}
