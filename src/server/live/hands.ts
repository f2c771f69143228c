import type { LiveBench } from "../../school/wire/liveWire";
import type { World } from "../world/world";

/** A raised hand. */
export type Hand = NonNullable<LiveBench["hand"]>;

/** A bench of a class of a school. */
export interface Place {
  readonly schoolId: string;
  readonly classId: string;
  readonly deviceId: string;
}

/** Raises a hand at a bench; one that is up already stays as it was. @returns the hand that is up */
export async function raiseHand({ schoolId, classId, deviceId }: Place, personId: string, world: World): Promise<Hand> {
  const row = {
    school_id: schoolId,
    class_id: classId,
    device_id: deviceId,
    person_id: personId,
    raised_at: world.now(),
  };
  await world.database
    .insertInto("live_hands")
    .values(row)
    .onConflict((conflict) => conflict.columns(["school_id", "device_id"]).doNothing())
    .execute();
  return (await handAt({ schoolId, classId, deviceId }, world)) ?? { personId, raisedAt: row.raised_at };
}

/** Lowers the hand at a bench. @returns whether one was up */
export async function lowerHand({ schoolId, classId, deviceId }: Place, { database }: World): Promise<boolean> {
  const { numDeletedRows } = await database
    .deleteFrom("live_hands")
    .where("school_id", "=", schoolId)
    .where("class_id", "=", classId)
    .where("device_id", "=", deviceId)
    .executeTakeFirstOrThrow();
  return numDeletedRows > 0n;
}

/** The hands that are up in a class, by their benches. */
export async function handsOf(
  { schoolId, classId }: Omit<Place, "deviceId">,
  { database }: World,
): Promise<ReadonlyMap<string, Hand>> {
  const rows = await database
    .selectFrom("live_hands")
    .select(["device_id", "person_id", "raised_at"])
    .where("school_id", "=", schoolId)
    .where("class_id", "=", classId)
    .execute();
  return new Map(rows.map((row) => [row.device_id, { personId: row.person_id, raisedAt: row.raised_at }]));
}

/** The hand that is up at a bench; null where none is. */
export const handAt = async (place: Place, world: World): Promise<Hand | null> =>
  (await handsOf(place, world)).get(place.deviceId) ?? null;
