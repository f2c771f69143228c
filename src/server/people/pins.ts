import type { Kysely } from "kysely";
import { SchoolError } from "../../school/schoolError";
import { schoolProblem } from "../../school/schoolWords";
import type { PersonRow, Tables } from "../database/tables/tables";
import { trying } from "../limits/guesses";
import { isPassword, passwordHash } from "../security/passwords";
import type { World } from "../world/world";

/** Of a person, what their PIN needs. */
type Guarded = Pick<PersonRow, "id" | "school_id"> & { readonly pin_hash: string | null };

/**
 * Holds a PIN against a person's. A missing one is answered as a wrong one is.
 *
 * @throws {SchoolError} "wrong-pin", "wait-first"
 */
export async function checkPin(
  { id, school_id, pin_hash }: Guarded,
  pin: string | undefined,
  world: World,
): Promise<void> {
  if (pin_hash === null) return;
  if (pin === undefined) throw new SchoolError(schoolProblem("wrong-pin", ["pin"]));
  await trying([["pin-of", `${school_id} ${id}`]], world, async () => {
    if (!(await isPassword(pin, pin_hash))) throw new SchoolError(schoolProblem("wrong-pin", ["pin"]));
  });
}

/** Sets the first PIN of a person; where another was quicker, theirs holds. @throws {SchoolError} "wrong-pin" then */
export async function setFirstPin(
  database: Kysely<Tables>,
  { id, school_id }: Omit<Guarded, "pin_hash">,
  hash: string,
): Promise<void> {
  const set = await database
    .updateTable("people")
    .set({ pin_hash: hash })
    .where("school_id", "=", school_id)
    .where("id", "=", id)
    .where("pin_hash", "is", null)
    .executeTakeFirst();
  if (set.numUpdatedRows === 0n) throw new SchoolError(schoolProblem("wrong-pin", ["pin"]));
}

/** The hash of a PIN; null where there is none. */
export const pinHash = async (pin: string | undefined, world: World): Promise<string | null> =>
  pin === undefined ? null : passwordHash(pin, world);
