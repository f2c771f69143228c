import { ed25519 } from "@noble/curves/ed25519.js";
import { bytesToHex, hexToBytes, utf8ToBytes } from "@noble/hashes/utils.js";
import * as z from "zod/mini";
import { canonicalJson } from "../../drill/canonicalJson";
import { matching, must, shortText, strict, whole } from "../../lock/fieldSchemas";
import { id } from "../../records/fields";
import { sittingStatement } from "../assignments/sittingStatement";
import { keyFingerprint } from "./fingerprint";

const hash = matching(/^[0-9a-f]{64}$/, must("hash"));
const signatureHex = matching(/^[0-9a-f]{128}$/, must("text", { least: 128, most: 128 }));
const named = strict({ id, name: shortText(200) });
const aMoment = must("moment", { example: "2026-11-20T08:00:00.000Z" });

/** What a signature proves. */
export const PROVES =
  "The class server of this school received this record, under the name of this person, at this time, and the record was not changed since.";

/** What it does not. */
export const PROVES_NOT =
  "It does not prove who turned the dial, that the bench told the truth, or that its clock was right. A practice result is not a certificate.";

/** What a school's server states of a record that it received. */
export const statementSchema = strict({
  format: z.literal("gatefall-receipt"),
  version: z.literal(1),
  school: named,
  person: named,
  /** Its SHA-256 is the one that stands beside it in its file. */
  record: strict({ kind: shortText(40), id, sha256: hash }),
  /** By the server's clock, ISO 8601. */
  receivedAt: z.iso.datetime(aMoment).check(z.maxLength(40, aMoment)),
  /** Its place among all that the school received, the hash that it has there, and the link. */
  chain: strict({ place: whole(1, 1e15), sha256: hash, link: hash }),
  /** Of a sitting that the server gave out: what it knows of it beside its record. Left out of every other. */
  sitting: z.optional(sittingStatement),
  /** Fingerprint of the key that signs. */
  key: shortText(40),
  /** Version of the server. */
  appVersion: shortText(40),
  proves: shortText(1000),
  provesNot: shortText(1000),
});

/** What a school's server states of a record that it received. */
export type Statement = Readonly<z.infer<typeof statementSchema>>;

/** A signed statement, as it stands in the file of a record. */
export const receiptSchema = strict({
  statement: statementSchema,
  /** Ed25519 (RFC 8032), 32 bytes, hexadecimal. */
  publicKey: hash,
  /** Of the canonical JSON (RFC 8785) of the statement, in UTF-8; 64 bytes, hexadecimal. */
  signature: signatureHex,
});

/** A signed statement. */
export type Receipt = Readonly<z.infer<typeof receiptSchema>>;

/** What is signed of a statement. */
const signedBytes = (statement: Statement) => utf8ToBytes(canonicalJson(statement));

/** The public half of a key. @param privateKey - 32 bytes */
export const publicKeyOf = (privateKey: Uint8Array): string => bytesToHex(ed25519.getPublicKey(privateKey));

/** Signs a statement. @param facts - all of it but what follows from the key and what every statement says */
export function signedReceipt(
  facts: Omit<Statement, "format" | "version" | "key" | "proves" | "provesNot">,
  privateKey: Uint8Array,
): Receipt {
  const publicKey = publicKeyOf(privateKey);
  const statement: Statement = {
    format: "gatefall-receipt",
    version: 1,
    ...facts,
    key: keyFingerprint(publicKey),
    proves: PROVES,
    provesNot: PROVES_NOT,
  };
  return { statement, publicKey, signature: bytesToHex(ed25519.sign(signedBytes(statement), privateKey)) };
}

/** Whether a signature is that of the statement by the key beside it. */
export function isSignatureRight({ statement, publicKey, signature }: Receipt): boolean {
  try {
    const options = { zip215: false };
    return ed25519.verify(hexToBytes(signature), signedBytes(statement), hexToBytes(publicKey), options);
  } catch {
    // Points and numbers that are none.
    return false;
  }
}
