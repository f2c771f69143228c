import type { Kysely } from "kysely";
import type { Tables } from "../database/tables/tables";
import type { AskingBench } from "../http/whoAsks";

/** Who joined at a bench, ever. */
export interface PeopleHere {
  /** By id: somebody of the school, or somebody whose data was erased. */
  readonly standing: ReadonlyMap<string, "here" | "erased">;
  /** Under whom what somebody did is shown: another entry of the same person, where two were merged. */
  readonly shownAs: (personId: string) => string;
}

/** Who joined at a bench. What somebody did there is theirs, also after they left it. */
export async function peopleHere(database: Kysely<Tables>, { schoolId, deviceId }: AskingBench): Promise<PeopleHere> {
  const rows = await database
    .selectFrom("device_people")
    .innerJoin("people", (join) =>
      join.onRef("people.id", "=", "person_id").onRef("people.school_id", "=", "device_people.school_id"),
    )
    .select(["person_id", "erased_at", "merged_into"])
    .where("device_people.school_id", "=", schoolId)
    .where("device_id", "=", deviceId)
    .execute();
  const merged = new Map(rows.map(({ person_id, merged_into }) => [person_id, merged_into ?? person_id]));
  const standing = (erased_at: number | null) => (erased_at === null ? "here" : "erased");
  return {
    standing: new Map(
      rows.flatMap(({ person_id, merged_into, erased_at }) =>
        [person_id, merged_into ?? person_id].map((id) => [id, standing(erased_at)] as const),
      ),
    ),
    shownAs: (personId) => merged.get(personId) ?? personId,
  };
}
