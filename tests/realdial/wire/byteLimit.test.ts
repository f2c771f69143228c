import fc from "fast-check";
import { expect, test } from "vitest";
import { ByteLimit } from "../../../src/realdial/wire/byteLimit";

/** Bytes of 100,000 lines. */
const FLOOD = 100_000 * 30;

test("what a line of its speed can carry is allowed, as far as a system keeps it for a page that did not read it, in however many pieces", () => {
  const reads = fc.array(fc.record({ waited: fc.nat(60_000), pieces: fc.integer({ min: 1, max: 9 }) }));
  fc.assert(
    fc.property(reads, (all) => {
      const limit = new ByteLimit(0);
      let at = 0;
      return all.every(({ waited, pieces }) => {
        at += waited;
        const piece = Math.floor(Math.min(65_536, 11.52 * waited) / pieces);
        return Array.from({ length: pieces }, () => limit.allows(piece, at)).every(Boolean);
      });
    }),
  );
});

test("a flood is not allowed, in one piece or in many", () => {
  expect(new ByteLimit(0).allows(FLOOD, 100)).toBe(false);
  const limit = new ByteLimit(0);
  const pieces = Array.from({ length: FLOOD / 250 }, (_, k) => limit.allows(250, k / 10));
  expect(pieces.slice(0, 200)).not.toContain(false);
  expect(pieces.at(-1)).toBe(false);
});

test("a board that is quiet for long may not send the more at once for it", () => {
  const limit = new ByteLimit(0);
  for (let at = 250; at <= 3_600_000; at += 250) limit.allows(30, at);
  expect(limit.allows(FLOOD, 3_600_001)).toBe(false);
});
