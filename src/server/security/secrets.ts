import { createHash, timingSafeEqual } from "node:crypto";
import type { World } from "../world/world";

const BYTES = 32;

/** A secret for a link, a card or a cookie: 32 bytes, base64url. */
export const newSecret = ({ chance }: Pick<World, "chance">): string =>
  Buffer.from(chance(BYTES)).toString("base64url");

/** What is stored of a secret: its SHA-256. A secret of 256 bits needs no slow hash. */
export const secretHash = (secret: string): string => createHash("sha256").update(secret).digest("hex");

/** Whether two texts are the same, in a time that does not tell where they differ. */
export function isSameText(one: string, other: string): boolean {
  const [a, b] = [Buffer.from(secretHash(one)), Buffer.from(secretHash(other))];
  return timingSafeEqual(a, b);
}

/** An id that no other machine gives, 32 hexadecimal digits. */
export const newServerId = ({ chance }: Pick<World, "chance">): string => Buffer.from(chance(16)).toString("hex");
