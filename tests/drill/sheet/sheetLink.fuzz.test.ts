import fc from "fast-check";
import { deflateSync, strToU8 } from "fflate";
import { describe, expect, test, vi } from "vitest";
import { DrillError } from "../../../src/drill/drillError";
import { MOST_CHARACTERS, sheetFromLink, sheetToLink } from "../../../src/drill/sheet/sheetLink";
import { SHIPPED_SHEETS } from "../../../src/drill/sheet/shippedSheets";
import { anySheet } from "../../support/anySheet";
import { dialingStation, testSheet } from "../../support/testSheet";

// A loaded machine must not make a property fail.
vi.setConfig({ testTimeout: 60_000 });

const plain = (value: unknown) => JSON.parse(JSON.stringify(value));
const packed = (text: string) => `s1.${Buffer.from(deflateSync(strToU8(text))).toString("base64url")}`;

/** A sheet, or a sentence of ours: nothing else may come of a link. */
function sheetOrSentence(text: string): void {
  try {
    sheetFromLink(text);
  } catch (error) {
    expect(error, String(error)).toBeInstanceOf(DrillError);
  }
}

test("any sheet comes back from its link, which needs no escaping", () => {
  fc.assert(
    fc.property(anySheet, (sheet) => {
      const link = sheetToLink(sheet);
      expect(link).toMatch(/^[\w.-]+$/);
      expect(sheetFromLink(link)).toEqual(plain(sheet));
    }),
  );
});

test.each(SHIPPED_SHEETS.map((sheet) => [sheet.title, sheet] as const))("%s fits a link and a QR code", (_, sheet) => {
  expect(sheetToLink(sheet).length).toBeLessThan(2900);
  expect(sheetFromLink(sheetToLink(sheet))).toEqual(sheet);
});

describe("what is no link gets a sentence", () => {
  test.each([
    { text: "", says: "carries no drill sheet" },
    { text: "s2.abcd", says: "carries no drill sheet" },
    { text: "s1.", says: "damaged" },
    { text: "s1.a b", says: "damaged" },
    { text: "s1.abcde", says: "damaged" },
    { text: "s1.____", says: "damaged" },
    { text: packed("{"), says: "damaged" },
    { text: packed("{}"), says: "sheet: format" },
    { text: `s1.${"a".repeat(MOST_CHARACTERS)}`, says: "longer than" },
    { text: packed(" ".repeat(5_000_000)), says: "far more than a sheet" },
  ])("$says", ({ text, says }) => {
    expect(() => sheetFromLink(text)).toThrow(DrillError);
    expect(() => sheetFromLink(text)).toThrow(says);
  });

  test("any text", () => {
    fc.assert(
      fc.property(
        fc.string().map((text) => `s1.${text}`),
        sheetOrSentence,
      ),
      { numRuns: 500 },
    );
  });

  test("any bytes", () => {
    const bytes = fc.uint8Array({ maxLength: 300 });
    fc.assert(
      fc.property(bytes, (one) => sheetOrSentence(`s1.${Buffer.from(one).toString("base64url")}`)),
      { numRuns: 500 },
    );
  });

  test("a sound link with one character changed, lost or doubled", () => {
    const link = sheetToLink(testSheet());
    const place = fc.integer({ min: 0, max: link.length - 1 });
    fc.assert(
      fc.property(place, fc.constantFrom("A", "z", "_", "", "77"), (at, piece) =>
        sheetOrSentence(`${link.slice(0, at)}${piece}${link.slice(at + 1)}`),
      ),
      { numRuns: 500 },
    );
  });
});

test("a sheet too large for a link is to go as a file", () => {
  let noise = 1;
  const letters = () =>
    Array.from({ length: 500 }, () => {
      noise = (noise * 48_271) % 2_147_483_647;
      return String.fromCharCode(0x4e00 + (noise % 20_000));
    }).join("");
  const stations = Array.from({ length: 40 }, (_, k) => dialingStation({ id: `station ${k}`, task: letters() }));
  expect(() => sheetToLink(testSheet({ stations }))).toThrow(/too large for a link .* as a file/);
});
