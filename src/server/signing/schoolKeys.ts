import type { Transaction } from "kysely";
import { sha256Hex } from "../../drill/sha256";
import { keyFingerprint } from "../../school/signing/fingerprint";
import { publicKeyOf } from "../../school/signing/receipt";
import type { SchoolKeys } from "../../school/signing/schoolKeys";
import { writeAudit } from "../audit/writeAudit";
import { addToChain, holdChain } from "../chain/schoolChain";
import type { Tables } from "../database/tables/tables";
import type { AskingInstructor } from "../http/whoAsks";
import type { World } from "../world/world";

const BYTES = 32;

/** Whether what lies under a key's name is its private half, and not a damaged file or that of another. */
export const isPrivateHalf = (found: Uint8Array, publicKey: string): boolean =>
  found.length === BYTES && publicKeyOf(found) === publicKey;

/** The private half of the latest key of a school that lies here whole and was not retired; null where there is none. */
async function keyHere(database: World["database"], schoolId: string, { keys }: World): Promise<Uint8Array | null> {
  const rows = await database
    .selectFrom("signing_keys")
    .select(["id", "public_key"])
    .where("school_id", "=", schoolId)
    .where("retired_at", "is", null)
    .orderBy("created_at", "desc")
    .orderBy("id")
    .execute();
  for (const { id, public_key } of rows) {
    const found = await keys.read(id);
    if (found !== null && isPrivateHalf(found, public_key)) return found;
  }
  return null;
}

async function makeKey(database: Transaction<Tables>, schoolId: string, world: World): Promise<Uint8Array> {
  const chain = await holdChain(database, schoolId);
  // Another request may have made it while this one waited.
  const made = await keyHere(database, schoolId, world);
  if (made !== null) return made;
  const privateKey = world.chance(BYTES);
  const publicKey = publicKeyOf(privateKey);
  const id = keyFingerprint(publicKey);
  const at = world.now();
  // The private half first: a key that is named and lies nowhere could sign nothing.
  await world.keys.write(id, privateKey);
  const row = { id, school_id: schoolId, public_key: publicKey, created_at: at };
  await database.insertInto("signing_keys").values(row).execute();
  await addToChain(database, chain, [{ at, what: "key", ofId: id, sha256: sha256Hex(publicKey) }]);
  return privateKey;
}

/** The key that a school signs with at this server, made when it is first needed. @returns its private half */
export async function signingKey(schoolId: string, world: World): Promise<Uint8Array> {
  const found = await keyHere(world.database, schoolId, world);
  return found ?? world.database.transaction().execute((held) => makeKey(held, schoolId, world));
}

/** Every public key that a school ever had. One is made where there is none: its fingerprint is printed before anything is signed. */
export async function keysOf({ schoolId }: AskingInstructor, world: World): Promise<SchoolKeys> {
  const { database } = world;
  await signingKey(schoolId, world);
  const school = await database
    .selectFrom("schools")
    .select(["id", "name"])
    .where("id", "=", schoolId)
    .executeTakeFirstOrThrow();
  const rows = await database
    .selectFrom("signing_keys")
    .selectAll()
    .where("school_id", "=", schoolId)
    .orderBy("created_at")
    .execute();
  return {
    format: "gatefall-school-keys",
    version: 1,
    school,
    keys: rows.map(({ id, public_key, created_at, retired_at }) => ({
      fingerprint: id,
      publicKey: public_key,
      createdAt: created_at,
      retiredAt: retired_at,
    })),
  };
}

/** Retires every key of a school and makes a new one. What the old ones signed stays signed. */
export async function rotateKeys(asking: AskingInstructor, world: World): Promise<SchoolKeys> {
  const { schoolId, instructorId } = asking;
  const at = world.now();
  await world.database.transaction().execute(async (database) => {
    await holdChain(database, schoolId);
    await database
      .updateTable("signing_keys")
      .set({ retired_at: at })
      .where("school_id", "=", schoolId)
      .where("retired_at", "is", null)
      .execute();
    await makeKey(database, schoolId, world);
    await writeAudit(database, { schoolId, byId: instructorId, at, action: "keys.rotated", ofId: schoolId });
  });
  return keysOf(asking, world);
}
