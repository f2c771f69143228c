import { type ScryptOptions, scrypt, timingSafeEqual } from "node:crypto";
import { promisify } from "node:util";
import type { World } from "../world/world";

const derive = promisify<string, Uint8Array, number, ScryptOptions, Buffer>(scrypt);

/** Work of one guess: 2^15 rounds of 8 blocks, 32 MiB (RFC 7914; the size is from memory of common advice for sign-ins). */
const COST = { N: 2 ** 15, r: 8, p: 1, maxmem: 64 * 2 ** 20 } as const;
const SALT_BYTES = 16;
const KEY_BYTES = 32;

/** What is stored of a password or a PIN: "scrypt", cost, salt and key. One letter has one form (NFKC) on every keyboard. */
export async function passwordHash(password: string, { chance }: Pick<World, "chance">): Promise<string> {
  const salt = chance(SALT_BYTES);
  const key = await derive(password.normalize("NFKC"), salt, KEY_BYTES, COST);
  return ["scrypt", COST.N, COST.r, COST.p, Buffer.from(salt).toString("base64"), key.toString("base64")].join("$");
}

/** Stands in where nobody has the name, so that a wrong name takes as long as a wrong password. */
const NOBODY = `scrypt$${COST.N}$${COST.r}$${COST.p}$${Buffer.alloc(SALT_BYTES).toString("base64")}$${Buffer.alloc(KEY_BYTES).toString("base64")}`;

/** Whether a password is the one that a hash was made of. @param stored - null where there is nobody: false, after as much work */
export async function isPassword(password: string, stored: string | null): Promise<boolean> {
  const [, N, r, p, salt = "", key = ""] = (stored ?? NOBODY).split("$");
  const options = { N: Number(N), r: Number(r), p: Number(p), maxmem: COST.maxmem };
  const expected = Buffer.from(key, "base64");
  const found = await derive(password.normalize("NFKC"), Buffer.from(salt, "base64"), expected.length, options);
  return stored !== null && timingSafeEqual(found, expected);
}
