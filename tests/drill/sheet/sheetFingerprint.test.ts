import { createHash } from "node:crypto";
import { describe, expect, test } from "vitest";
import type { Sheet } from "../../../src/drill/sheet/sheet";
import { sheetFingerprint, sheetSha256 } from "../../../src/drill/sheet/sheetFingerprint";
import { SHIPPED_SHEETS } from "../../../src/drill/sheet/shippedSheets";
import { dialingStation, testSheet, zeroingStation } from "../../support/testSheet";

const DIAL = dialingStation({ passMarks: { firstTime: 9 } });
const SHEET = testSheet({ stations: [DIAL, zeroingStation()], seed: 4 });

describe("the fingerprint of a sheet", () => {
  test("is eight hexadecimal digits, the first of a SHA-256", () => {
    expect(sheetFingerprint(SHEET)).toMatch(/^[0-9A-F]{4}-[0-9A-F]{4}$/);
    expect(sheetSha256(SHEET)).toMatch(/^[0-9a-f]{64}$/);
    expect(sheetSha256(SHEET).toUpperCase()).toMatch(new RegExp(`^${sheetFingerprint(SHEET).replace("-", "")}`));
  });

  test("is made as its description says", () => {
    const { id: _a, ...dial } = DIAL;
    const { id: _b, ...zero } = zeroingStation();
    const sorted = (value: unknown): unknown => {
      if (Array.isArray(value)) return value.map(sorted);
      if (typeof value !== "object" || value === null) return value;
      return Object.fromEntries(
        Object.entries(value)
          .sort(([one], [other]) => (one < other ? -1 : 1))
          .map(([key, each]) => [key, sorted(each)]),
      );
    };
    const text = JSON.stringify(sorted({ version: 1, stations: [dial, zero], order: "blocked", seed: 4 }));
    expect(sheetSha256(SHEET)).toBe(createHash("sha256").update(text).digest("hex"));
  });

  test.each<[string, Partial<Sheet>]>([
    ["the title", { title: "Another" }],
    ["the purpose", { purpose: "Another." }],
    ["instructions and cautions", { instructions: ["Sit down."], cautions: ["Mind the door."] }],
    ["the source", { source: "a book" }],
    ["a station's name and wording", { stations: [{ ...DIAL, id: "x", title: "X", task: "Y" }, zeroingStation()] }],
    ["an empty list of conditions", { stations: [{ ...DIAL, conditions: [] }, zeroingStation()] }],
  ])("stays with another wording: %s", (_, change) => {
    expect(sheetFingerprint({ ...SHEET, ...change })).toBe(sheetFingerprint(SHEET));
  });

  test.each<[string, Partial<Sheet>]>([
    ["a pass mark eased", { stations: [{ ...DIAL, passMarks: { firstTime: 8 } }, zeroingStation()] }],
    ["a pass mark left out", { stations: [{ ...DIAL, passMarks: {} }, zeroingStation()] }],
    ["more help", { stations: [{ ...DIAL, help: "full" }, zeroingStation()] }],
    ["fewer tries", { stations: [{ ...DIAL, repetitions: 9 }, zeroingStation()] }],
    ["another lock", { stations: [{ ...DIAL, profile: "two-wheel" }, zeroingStation()] }],
    ["another tolerance", { stations: [DIAL, zeroingStation({ tolerance: 0.6 })] }],
    ["a condition", { stations: [{ ...DIAL, conditions: [{ kind: "heavy-dial" }] }, zeroingStation()] }],
    ["another order of the stations", { stations: [zeroingStation(), DIAL] }],
    ["another order of the tries", { order: "random" }],
    ["another seed", { seed: 5 }],
    ["rules of a sitting", { sitting: { pauseAllowed: true, onReload: "resume", clockHideable: true } }],
  ])("changes with what counts: %s", (_, change) => {
    expect(sheetFingerprint({ ...SHEET, ...change })).not.toBe(sheetFingerprint(SHEET));
  });

  test("tells all sheets of this trainer apart", () => {
    expect(new Set(SHIPPED_SHEETS.map(sheetFingerprint)).size).toBe(SHIPPED_SHEETS.length);
  });
});
