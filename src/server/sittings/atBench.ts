import { SchoolError } from "../../school/schoolError";
import { schoolProblem } from "../../school/schoolWords";
import type { AskingBench } from "../http/whoAsks";
import type { World } from "../world/world";

/** Somebody who joined at a bench and has not left it. */
export interface PersonAtBench {
  readonly schoolId: string;
  readonly classId: string;
  readonly deviceId: string;
  readonly personId: string;
  /** Percent, as the roster has it. */
  readonly extraTime: number;
}

/** The person at the bench that asks. @throws {SchoolError} "no-such-thing" for anybody else */
export async function personAtBench(
  personId: string,
  { schoolId, classId, deviceId }: AskingBench,
  { database }: Pick<World, "database">,
): Promise<PersonAtBench> {
  const found = await database
    .selectFrom("device_people")
    .innerJoin("people", (join) =>
      join.onRef("people.school_id", "=", "device_people.school_id").onRef("people.id", "=", "person_id"),
    )
    .leftJoin("people as other", (join) =>
      join.onRef("other.school_id", "=", "people.school_id").onRef("other.id", "=", "people.merged_into"),
    )
    .select(["people.extra_time", "people.merged_into", "other.extra_time as other_time"])
    .where("device_people.school_id", "=", schoolId)
    .where("device_id", "=", deviceId)
    .where("person_id", "=", personId)
    .where("left_at", "is", null)
    .where("people.erased_at", "is", null)
    .executeTakeFirst();
  if (found === undefined) throw new SchoolError(schoolProblem("no-such-thing", []));
  return {
    ...{ schoolId, classId, deviceId },
    personId: found.merged_into ?? personId,
    extraTime: found.other_time ?? found.extra_time,
  };
}
