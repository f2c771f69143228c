import { recordHash } from "../../records/hashedRecord";
import { checkReceipt, receiptSentences } from "../../school/signing/checkReceipt";

/** What checking the signature of a file came to. */
export interface CheckedSignature {
  /** What the server of a school states, in a few words; null where there is no signature, or none that holds. */
  readonly signed: string | null;
  /** What does not fit, in sentences. */
  readonly problems: readonly string[];
  /** What was not checked, in sentences. */
  readonly remarks: readonly string[];
}

/**
 * Checks the signature of a school's server on a record's file, where it has one.
 *
 * @param value - the file, whose record was read
 * @param trusted - fingerprints of the keys of the school; null where none are at hand
 */
export function checkedSignature(value: unknown, trusted: readonly string[] | null): CheckedSignature {
  const { receipt, record } = value as { readonly receipt?: unknown; readonly record: object };
  if (receipt === undefined) {
    // Whoever gives a key wants to see a signature.
    const remarks = trusted === null ? [] : ["It has no signature of a school: the key was not used."];
    return { signed: null, problems: [], remarks };
  }
  const { statement, fingerprint, problems, unchecked } = checkReceipt(receipt, recordHash(record), trusted);
  const words =
    statement === null || problems.length > 0
      ? null
      : `signed by ${statement.school.name} with the key ${fingerprint}: received ${statement.receivedAt} of ${statement.person.name}, place ${statement.chain.place}`;
  return { signed: words, problems: receiptSentences(problems), remarks: receiptSentences(unchecked) };
}
