import { sha256 } from "@noble/hashes/sha2.js";
import { bytesToHex, utf8ToBytes } from "@noble/hashes/utils.js";

/** SHA-256 of a text in UTF-8, 64 hexadecimal digits. Pages without a secure address have no hash of their own. */
export const sha256Hex = (text: string): string => bytesToHex(sha256(utf8ToBytes(text)));
