import { crc32 as zlibCrc32 } from "node:zlib";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { crc32 } from "../../../src/realdial/wire/crc32";
import { readWireLine, type WireLine } from "../../../src/realdial/wire/wireLine";
import { anyWireLine } from "../../support/board/anyWireLine";
import { withChecksum, writeWireLine } from "../../support/board/writeWireLine";

describe("the checksum", () => {
  test("is the published one", () => {
    // Check value of CRC-32/ISO-HDLC.
    expect(crc32("123456789")).toBe(0xcbf43926);
    expect(crc32("")).toBe(0);
  });

  test("is that of any other implementation", () => {
    const text = fc.string({ unit: "binary-ascii" });
    fc.assert(fc.property(text, (any) => crc32(any) === zlibCrc32(any)));
  });
});

describe("a line", () => {
  test("is read as it was written, whatever it says", () => {
    const isReadAgain = (line: WireLine) => {
      expect(readWireLine(writeWireLine(line))).toEqual(line);
    };
    fc.assert(fc.property(anyWireLine, isReadAgain));
  });

  test("is written as boards write it", () => {
    const stamp = { seq: 63, count: -733, ms: 562, start: 7, missed: 0 };
    expect(writeWireLine({ type: "position", ...stamp })).toMatch(/^p 63 -733 562 7 0\*[0-9a-f]{8}$/);
    expect(writeWireLine({ type: "hello", ...stamp, countsPerTurn: 2400, version: 1 })).toMatch(/^h .* 2400 1\*/);
  });

  test.each([
    { why: "nothing", text: "" },
    { why: "no checksum", text: "p 1 2 3 4 5" },
    { why: "a wrong checksum", text: `${withChecksum("p 1 2 3 4 5").slice(0, -1)}z` },
    { why: "a checksum of another line", text: withChecksum("p 1 2 3 4 5").replace("2", "3") },
    { why: "a checksum in capitals", text: withChecksum("p 1 2 3 4 5").toUpperCase() },
    { why: "too few numbers", text: withChecksum("p 1 2 3 4") },
    { why: "a number that is none", text: withChecksum("p 1 2 x 4 5") },
    { why: "a leading zero", text: withChecksum("p 01 2 3 4 5") },
    { why: "minus nothing", text: withChecksum("p 1 -0 3 4 5") },
    { why: "two spaces", text: withChecksum("p 1  2 3 4 5") },
    { why: "a broken number", text: withChecksum("p 1 2.5 3 4 5") },
    { why: "a line's number out of range", text: withChecksum("p 65536 2 3 4 5") },
    { why: "a count beyond 32 bits", text: withChecksum("p 1 2147483648 3 4 5") },
    { why: "a time beyond 32 bits", text: withChecksum("p 1 2 4294967296 4 5") },
    { why: "a time below 0", text: withChecksum("p 1 2 -3 4 5") },
    { why: "a hello without its counts a turn", text: withChecksum("h 1 2 3 4 5") },
    { why: "a hello with no counts a turn", text: withChecksum("h 1 2 3 4 5 0 1") },
    { why: "a hello without a version", text: withChecksum("h 1 2 3 4 5 2400 0") },
  ])("with $why is none", ({ text }) => {
    expect(readWireLine(text)).toBeNull();
  });

  test("of a kind that is not known is a sign of life", () => {
    expect(readWireLine(withChecksum("t 1 2 3 4 5 6 7"))).toEqual({
      type: "other",
      seq: 1,
      count: 2,
      ms: 3,
      start: 4,
      missed: 5,
    });
  });
});
