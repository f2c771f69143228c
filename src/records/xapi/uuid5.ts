import { sha1 } from "@noble/hashes/legacy.js";
import { bytesToHex, hexToBytes, utf8ToBytes } from "@noble/hashes/utils.js";

/** The namespace of domain names. Source: RFC 9562, 6.6. */
export const DNS_NAMESPACE = "6ba7b810-9dad-11d1-80b4-00c04fd430c8";

const BYTES = 16;

/**
 * A uuid that is made of a name: the same name gives the same one, on every machine and every day (version 5, RFC 9562,
 * 5.5).
 *
 * @param namespace - a uuid
 */
export function uuid5(namespace: string, name: string): string {
  const space = hexToBytes(namespace.replaceAll("-", ""));
  const text = utf8ToBytes(name);
  const whole = new Uint8Array(space.length + text.length);
  whole.set(space);
  whole.set(text, space.length);
  const hex = bytesToHex(sha1(whole).slice(0, BYTES));
  const variant = ((Number.parseInt(hex.slice(16, 18), 16) & 0x3f) | 0x80).toString(16);
  return [
    hex.slice(0, 8),
    hex.slice(8, 12),
    `5${hex.slice(13, 16)}`,
    `${variant}${hex.slice(18, 20)}`,
    hex.slice(20),
  ].join("-");
}
