import type * as z from "zod/mini";
import type { sittingMotions } from "../../school/wire/assignmentsWire";
import type { World } from "../world/world";

/** Motions of a sitting's tries, as they were sent when each ended. */
export async function motionsOf(
  schoolId: string,
  sittingId: string,
  { database }: World,
): Promise<z.infer<typeof sittingMotions>> {
  const rows = await database
    .selectFrom("sitting_tries")
    .select(["place", "motion"])
    .where("school_id", "=", schoolId)
    .where("sitting_id", "=", sittingId)
    .orderBy("place")
    .execute();
  return { motions: rows.flatMap(({ place, motion }) => (motion === null ? [] : [{ index: place, motion }])) };
}
