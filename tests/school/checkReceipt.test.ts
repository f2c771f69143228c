import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { checkReceipt, receiptSentences } from "../../src/school/signing/checkReceipt";
import { keyFingerprint } from "../../src/school/signing/fingerprint";
import { PROVES, PROVES_NOT, publicKeyOf, type Receipt, signedReceipt } from "../../src/school/signing/receipt";
import { fingerprintsOf } from "../../src/school/signing/schoolKeys";
import { aReceipt, KEY } from "./aReceipt";

const HASH = "a".repeat(64);
const TRUSTED = [keyFingerprint(publicKeyOf(KEY))];
const codes = (receipt: unknown, hash = HASH, trusted: readonly string[] | null = TRUSTED) =>
  checkReceipt(receipt, hash, trusted).problems.map(({ code }) => code);

/** A receipt whose statement was changed after it was signed. */
const changed = (change: (one: Receipt["statement"]) => object): unknown => {
  const receipt = aReceipt();
  return { ...receipt, statement: { ...receipt.statement, ...change(receipt.statement) } };
};

describe("the signature of a school on a record", () => {
  test("holds for the record that it was made for, by a key that is trusted", () => {
    const { isTrusted, problems, unchecked, statement } = checkReceipt(aReceipt(), HASH.toUpperCase(), TRUSTED);
    expect([isTrusted, problems, unchecked]).toEqual([true, [], []]);
    expect(statement).toMatchObject({ proves: PROVES, provesNot: PROVES_NOT });
  });

  test("without a key at hand it fits, and says whose it is was not checked", () => {
    const { isTrusted, problems, unchecked } = checkReceipt(aReceipt(), HASH, null);
    expect([isTrusted, problems]).toEqual([false, []]);
    expect(receiptSentences(unchecked)).toEqual([
      `Whose signature it is was not checked. Compare the fingerprint ${TRUSTED[0]} with the one that the school printed.`,
    ]);
  });

  test.each([
    { why: "the person", change: () => ({ person: { id: "tavro", name: "Mibsy" } }) },
    { why: "the time", change: () => ({ receivedAt: "2026-03-02T08:00:00.001Z" }) },
    { why: "the place in the chain", change: () => ({ chain: { place: 4, sha256: HASH, link: HASH } }) },
    { why: "what it proves", change: () => ({ proves: "Everything." }) },
  ])("$why that was changed is found", ({ change }) => {
    expect(codes(changed(change))).toEqual(["not-signed"]);
  });

  test("moved to another record it is found", () => {
    expect(codes(aReceipt(), "d".repeat(64))).toEqual(["of-another-record"]);
  });

  test("that of somebody else is found, whatever it names", () => {
    expect(codes(aReceipt({}, new Uint8Array(32).fill(9)))).toEqual(["another-school"]);
    const { statement: _statement, ...mine } = aReceipt();
    const forged = signedReceipt({ ...aReceipt().statement }, new Uint8Array(32).fill(9));
    expect(codes({ ...forged, publicKey: mine.publicKey })).toContain("not-signed");
  });

  test.each([{ value: undefined }, { value: null }, { value: {} }, { value: { ...aReceipt(), more: 1 } }])(
    "what is none is told: $value",
    ({ value }) => {
      expect(codes(value)).toEqual(["no-receipt"]);
      expect(receiptSentences(checkReceipt(value, HASH, null).problems).join()).toMatch(/^The signature of the server/);
    },
  );

  test("any bytes in place of key or signature are refused and break nothing", () => {
    const hex = (length: number) => fc.stringMatching(new RegExp(`^[0-9a-f]{${length}}$`));
    fc.assert(
      fc.property(hex(64), hex(128), (publicKey, signature) => {
        expect(codes({ ...aReceipt(), publicKey })).toContain("not-signed");
        expect(codes({ ...aReceipt(), signature })).toContain("not-signed");
      }),
      { numRuns: 40 },
    );
  });

  test("the fingerprints of a file of keys come from the keys, not from what it says", () => {
    const one = { fingerprint: "AAAAA", publicKey: publicKeyOf(KEY), createdAt: 1, retiredAt: null };
    const file = { format: "gatefall-school-keys", version: 1, school: { id: "s", name: "S" }, keys: [one] };
    expect(fingerprintsOf(file)).toEqual(TRUSTED);
    expect(fingerprintsOf({ ...file, version: 2 })).toBeNull();
  });
});
