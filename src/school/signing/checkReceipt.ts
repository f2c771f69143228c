import { fieldProblem } from "../../lock/fieldProblem";
import { FIELD_WORDS } from "../../lock/fieldWords";
import { isSameHash } from "../../records/hashedRecord";
import { failing, type Problem, problemsOf, type Words, wordsOf } from "../../wording/problem";
import { keyFingerprint } from "./fingerprint";
import { isSignatureRight, receiptSchema, type Statement } from "./receipt";

/** What a check of a signature can find; each a sentence. */
const RECEIPT_WORDS = {
  ...FIELD_WORDS,
  "no-receipt": "The signature of the server cannot be read: {why:placed}.",
  "not-signed": "The signature does not fit: what the server stated, or the signature, was changed.",
  "of-another-record": "The signature is that of another record: this one was changed, or the signature was moved.",
  "names-another-key": "The signature was made with another key than the statement names.",
  "another-school": "The signature was made with the key {fingerprint}, which is none of those that you gave.",
  "whose-key":
    "Whose signature it is was not checked. Compare the fingerprint {fingerprint} with the one that the school printed.",
} as const satisfies Words;

const receiptProblem = problemsOf(RECEIPT_WORDS);

/** Findings of a check of a signature, a sentence each. */
export const receiptSentences = (found: readonly Problem[]): string[] =>
  found.map((one) => wordsOf(one, RECEIPT_WORDS));

/** What checking the signature of a record came to. */
export interface ReceiptCheck {
  /** What the server stated; null where that cannot be read or was not signed so. */
  readonly statement: Statement | null;
  /** Fingerprint of the key that signed; null where there is none. */
  readonly fingerprint: string | null;
  /** Whether it was signed with one of the keys that are trusted. */
  readonly isTrusted: boolean;
  readonly problems: readonly Problem[];
  /** What was not checked. */
  readonly unchecked: readonly Problem[];
}

/**
 * Checks the signature that a file has beside its record. It needs no network.
 *
 * @param value - "receipt" of the file
 * @param recordSha256 - worked out anew from the record of the file
 * @param trusted - fingerprints of the school's keys, as printed; null where none are at hand
 */
export function checkReceipt(value: unknown, recordSha256: string, trusted: readonly string[] | null): ReceiptCheck {
  const parsed = receiptSchema.safeParse(value);
  if (!parsed.success) {
    const why = fieldProblem(parsed.error.issues, value);
    const problems = [receiptProblem("no-receipt", [], { why })];
    return { statement: null, fingerprint: null, isTrusted: false, problems, unchecked: [] };
  }
  const { statement, publicKey } = parsed.data;
  const fingerprint = keyFingerprint(publicKey);
  const isRight = isSignatureRight(parsed.data);
  const isTrusted = trusted?.includes(fingerprint) === true;
  const problems = failing([
    [isRight, receiptProblem("not-signed", [])],
    [isSameHash(statement.record.sha256, recordSha256), receiptProblem("of-another-record", [])],
    [statement.key === fingerprint, receiptProblem("names-another-key", [])],
    [trusted === null || isTrusted, receiptProblem("another-school", [], { fingerprint })],
  ]);
  return {
    statement: isRight ? statement : null,
    fingerprint,
    isTrusted: isTrusted && problems.length === 0,
    problems,
    unchecked: trusted === null ? [receiptProblem("whose-key", [], { fingerprint })] : [],
  };
}
