import * as z from "zod/mini";
import { matching, must, shortList, shortText, strict } from "../../lock/fieldSchemas";
import { id, moment } from "../../records/fields";
import { keyFingerprint } from "./fingerprint";

const publicKey = matching(/^[0-9a-f]{64}$/, must("hash"));

/** The public keys of a school, as a server gives them and as a file holds them. */
export const schoolKeysSchema = strict({
  format: z.literal("gatefall-school-keys"),
  version: z.literal(1),
  school: strict({ id, name: shortText(200) }),
  keys: shortList(
    strict({
      fingerprint: shortText(40),
      publicKey,
      createdAt: moment,
      /** When another took its place; what it signed before stays signed. */
      retiredAt: z.nullable(moment),
    }),
    10_000,
  ),
});

/** The public keys of a school. */
export type SchoolKeys = Readonly<z.infer<typeof schoolKeysSchema>>;

/** Fingerprints of the keys in a file, each worked out from its key; null for what is no file of keys. */
export function fingerprintsOf(value: unknown): readonly string[] | null {
  const { data } = schoolKeysSchema.safeParse(value);
  return data?.keys.map((key) => keyFingerprint(key.publicKey)) ?? null;
}
