import { createPublicKey, verify } from "node:crypto";
import { ed25519 } from "@noble/curves/ed25519.js";
import { bytesToHex, hexToBytes, utf8ToBytes } from "@noble/hashes/utils.js";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import published from "../../shared/published/rfc8032-ed25519.json" with { type: "json" };
import { canonicalJson } from "../../src/drill/canonicalJson";
import { keyFingerprint, typedFingerprint } from "../../src/school/signing/fingerprint";
import { publicKeyOf } from "../../src/school/signing/receipt";
import { aReceipt } from "./aReceipt";

// The judge beside the published vectors is Node's own Ed25519, which shares no code with ours.

describe(`${published.source}`, () => {
  test.each(published.vectors)("$name: public key and signature", ({ secret, publicKey, message, signature }) => {
    expect(publicKeyOf(hexToBytes(secret))).toBe(publicKey);
    expect(bytesToHex(ed25519.sign(hexToBytes(message), hexToBytes(secret)))).toBe(signature);
  });
});

/** The key as Node takes it: the head of an Ed25519 key in DER (RFC 8410), then its 32 bytes. */
const nodeKey = (publicKey: string) =>
  createPublicKey({ key: Buffer.from(`302a300506032b6570032100${publicKey}`, "hex"), format: "der", type: "spki" });

test("Node's own Ed25519 takes every signature of ours", () => {
  fc.assert(
    fc.property(fc.uint8Array({ minLength: 32, maxLength: 32 }), fc.string(), (secret, name) => {
      const { statement, publicKey, signature } = aReceipt({ person: { id: "p", name } }, secret);
      const bytes = utf8ToBytes(canonicalJson(statement));
      expect(verify(null, bytes, nodeKey(publicKey), Buffer.from(signature, "hex"))).toBe(true);
    }),
    { numRuns: 30 },
  );
});

describe("the fingerprint of a key", () => {
  test("is the first 125 bits of SHA-256 of its bytes, in base 32", () => {
    // SHA-256 of 32 zero bytes begins with 66687aadf862bd776c8fc18b8e9f8e20; worked out from it by hand.
    const bits = BigInt("0x66687aadf862bd776c8fc18b8e9f8e20") >> 3n;
    const digits = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
    const letters = Array.from({ length: 25 }, (_, k) => digits[Number((bits >> BigInt(5 * (24 - k))) & 31n)]).join("");
    expect(keyFingerprint("00".repeat(32)).replaceAll("-", "")).toBe(letters);
  });

  test("may be typed as one reads it", () => {
    const printed = keyFingerprint("00".repeat(32));
    const typed = printed.toLowerCase().replaceAll("-", " ").replaceAll("0", "o").replaceAll("1", "l");
    expect(typedFingerprint(` ${typed}`)).toBe(printed);
    expect(typedFingerprint(printed.slice(1))).toBeNull();
    expect(typedFingerprint(`${printed}U`)).toBeNull();
  });
});
