import { type Receipt, type Statement, signedReceipt } from "../../src/school/signing/receipt";

/** A private key of tests. */
export const KEY = Uint8Array.from({ length: 32 }, (_, k) => k + 1);

/** A signed statement, about a record with the hash of sixty-four a's unless told otherwise. */
export const aReceipt = (fields: Partial<Statement> = {}, key: Uint8Array = KEY): Receipt =>
  signedReceipt(
    {
      school: { id: "school", name: "Millbrook" },
      person: { id: "tavro", name: "Tavro" },
      record: { kind: "sittings", id: "one", sha256: "a".repeat(64) },
      receivedAt: "2026-03-02T08:00:00.000Z",
      chain: { place: 3, sha256: "b".repeat(64), link: "c".repeat(64) },
      appVersion: "0.4.0",
      ...fields,
    },
    key,
  );
