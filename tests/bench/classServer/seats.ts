import { COOKIES } from "../../../src/server/http/whoAsks";
import { newSecret, newServerId, secretHash } from "../../../src/server/security/secrets";
import type { TestServer } from "../../server/support/testSchool";

/** A bench of a school, with the one who sits at it. */
export interface Seat {
  readonly cookie: string;
  readonly classId: string;
  readonly deviceId: string;
  readonly personId: string;
}

/** Makes benches with a person each, as rows. @param perClass - benches of each class */
export async function seatBenches(
  { world }: TestServer,
  schoolId: string,
  benches: number,
  perClass: number,
): Promise<readonly Seat[]> {
  const { database } = world;
  const at = world.now();
  const made = { school_id: schoolId, created_at: at };
  const classes = Array.from({ length: Math.ceil(benches / perClass) }, () => newServerId(world));
  const seats = Array.from({ length: benches }, (_, k) => ({
    secret: newSecret(world),
    classId: classes[Math.floor(k / perClass)] ?? "",
    deviceId: newServerId(world),
    personId: newServerId(world),
    name: `Bench ${k}`,
  }));
  await database
    .insertInto("classes")
    .values(classes.map((id, k) => ({ ...made, id, name: `Class ${k}` })))
    .execute();
  await database
    .insertInto("people")
    .values(seats.map(({ personId: id, name }) => ({ ...made, id, name, extra_time: 0, updated_at: at, version: 1 })))
    .execute();
  await database
    .insertInto("devices")
    .values(
      seats.map(({ secret, deviceId, classId, name }) => ({
        ...made,
        ...{ id: deviceId, class_id: classId, token_hash: secretHash(secret), name, seen_at: at },
      })),
    )
    .execute();
  const joined = { school_id: schoolId, joined_at: at };
  await database
    .insertInto("device_people")
    .values(seats.map(({ deviceId, personId }) => ({ ...joined, device_id: deviceId, person_id: personId })))
    .execute();
  await database
    .insertInto("class_people")
    .values(seats.map(({ classId, personId }) => ({ ...joined, class_id: classId, person_id: personId })))
    .execute();
  return seats.map(({ secret, name: _name, ...seat }) => ({ ...seat, cookie: `${COOKIES.bench}=${secret}` }));
}
