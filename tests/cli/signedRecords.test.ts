import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { keyFingerprint } from "../../src/school/signing/fingerprint";
import { publicKeyOf } from "../../src/school/signing/receipt";
import { aReceipt, KEY } from "../school/aReceipt";
import { run } from "./fakeTerminal";

const SITTING = JSON.parse(readFileSync("tests/fixtures/0.2.0/sitting-passed.json", "utf8"));
const PRINTED = keyFingerprint(publicKeyOf(KEY));
const RECEIPT = aReceipt({ record: { kind: "sittings", id: "one", sha256: SITTING.sha256 } });
const SIGNED = { ...SITTING, receipt: RECEIPT };
const KEYS = {
  format: "gatefall-school-keys",
  version: 1,
  school: { id: "school", name: "Millbrook" },
  keys: [{ fingerprint: PRINTED, publicKey: publicKeyOf(KEY), createdAt: 1, retiredAt: 2 }],
};

async function check(file: object, ...args: string[]) {
  const files = { "a.json": JSON.stringify(file), "keys.json": JSON.stringify(KEYS) };
  const { status, out, complaints } = await run(["records", "check", "a.json", "--json", ...args], files);
  return { status, complaints, record: JSON.parse(out || "null") };
}

describe("gatefall records check, of a record that a class server signed", () => {
  test.each([{ key: PRINTED }, { key: PRINTED.toLowerCase().replaceAll("-", " ") }, { key: "keys.json" }])(
    "it holds by the key $key",
    async ({ key }) => {
      const { status, record } = await check(SIGNED, "--key", key);
      expect([status, record.problems]).toEqual([0, []]);
      expect(record.result).toBe("passed");
      expect(record.signed).toBe(
        `signed by Millbrook with the key ${PRINTED}: received 2026-03-02T08:00:00.000Z of Tavro, place 3`,
      );
      expect(record.remarks.join()).not.toContain("signature");
    },
  );

  test("without a key it says what to compare", async () => {
    const { status, record } = await check(SIGNED);
    expect(status).toBe(0);
    expect(record.remarks).toContainEqual(expect.stringContaining(PRINTED));
  });

  test("one that somebody else signed, or that was changed, shows no result", async () => {
    const other = { ...SITTING, receipt: aReceipt(RECEIPT.statement, new Uint8Array(32).fill(9)) };
    const changed = { ...SITTING, receipt: { ...RECEIPT, statement: { ...RECEIPT.statement, appVersion: "9.9.9" } } };
    const moved = { ...SITTING, receipt: aReceipt() };
    for (const file of [other, changed, moved, { ...SITTING, receipt: null }]) {
      const { status, record } = await check(file, "--key", PRINTED);
      expect([status, record.result, record.signed, record.standing]).toEqual([1, null, null, "fails its check"]);
      expect(record.problems).toEqual([expect.stringMatching(/signature/)]);
    }
  });

  test("one without a signature is checked as before, and a key that is none is refused", async () => {
    const { status, record } = await check(SITTING, "--key", PRINTED);
    expect([status, record.signed]).toEqual([0, null]);
    expect(record.remarks).toContainEqual(expect.stringContaining("no signature"));
    expect(await check(SITTING, "--key", "a.json")).toMatchObject({
      status: 2,
      complaints: [expect.stringContaining("holds no keys")],
    });
  });
});
