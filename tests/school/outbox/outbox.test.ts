import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { clockAhead_ms } from "../../../src/school/outbox/clockAhead";
import { afterAnswer, afterRefusal, afterSilence, firstPace, wait_ms } from "../../../src/school/outbox/pace";
import { partOf } from "../../../src/school/outbox/partOf";
import { settle } from "../../../src/school/outbox/settle";

const MINUTE_MS = 60_000;

describe("a part", () => {
  const sizes = fc.array(fc.record({ bytes: fc.integer({ min: 1, max: 50 }) }), { minLength: 1, maxLength: 40 });
  test("is the longest beginning of what waits that fits, and never empty", () => {
    fc.assert(
      fc.property(
        sizes,
        fc.integer({ min: 1, max: 20 }),
        fc.integer({ min: 1, max: 200 }),
        (waiting, records, bytes) => {
          const part = partOf(waiting, { records, bytes });
          const weigh = (list: typeof waiting) => list.reduce((sum, one) => sum + one.bytes, 0);
          expect(part).toEqual(waiting.slice(0, part.length));
          expect(part.length).toBeGreaterThan(0);
          if (part.length > 1) expect([part.length <= records, weigh([...part]) <= bytes]).toEqual([true, true]);
          const next = waiting.slice(0, part.length + 1);
          if (next.length > part.length) expect(next.length > records || weigh(next) > bytes).toBe(true);
        },
      ),
    );
  });
});

describe("the pace", () => {
  test("waits from half to all of a span that doubles with each failure, up to five minutes", () => {
    const waits = (chance: number) =>
      Array.from({ length: 10 }, (_, k) => wait_ms({ failures: k, records: 200 }, chance) / 1000);
    expect(waits(0)).toEqual([0, 1, 2, 4, 8, 16, 32, 64, 128, 150]);
    expect(waits(1)).toEqual([0, 2, 4, 8, 16, 32, 64, 128, 256, 300]);
  });

  test("halves the part that was refused down to one record, and doubles it again", () => {
    const first = firstPace(200);
    expect(afterSilence(first)).toEqual({ failures: 1, records: 200 });
    expect(afterRefusal(first, 7)).toEqual({ failures: 1, records: 3 });
    expect(afterRefusal(first, 1)).toEqual({ failures: 1, records: 1 });
    expect(afterAnswer({ failures: 4, records: 3 }, 200)).toEqual({ failures: 0, records: 6 });
    expect(afterAnswer({ failures: 4, records: 150 }, 200)).toEqual({ failures: 0, records: 200 });
  });
});

test("a receipt settles what it names in its place, and nothing else", () => {
  const problem = { code: "not-allowed", path: [], values: {} };
  const receipts = [
    { id: "a", outcome: "received" },
    { id: "b", outcome: "known" },
    { id: null, outcome: "refused", problem },
    { id: "x", outcome: "received" },
    { id: "e", outcome: "erased" },
  ] as const;
  expect(settle(["a", "b", "c", "d", "e", "f"], receipts as unknown as Parameters<typeof settle>[1])).toEqual([
    { id: "a", state: "sent" },
    { id: "b", state: "sent" },
    { id: "c", state: "refused", problem },
    { id: "e", state: "sent" },
  ]);
});

test.each([
  { asked: 0, answered: 2000, server: 1000, ahead: 0 },
  { asked: 0, answered: 90_000, server: -60_000, ahead: 0 },
  { asked: 10 * MINUTE_MS, answered: 10 * MINUTE_MS, server: 0, ahead: 10 * MINUTE_MS },
  { asked: 0, answered: 0, server: 3 * MINUTE_MS, ahead: -3 * MINUTE_MS },
])("asked at $asked, answered at $answered by a server at $server, the clock is $ahead ms ahead", (one) => {
  expect(clockAhead_ms(one.asked, one.answered, one.server)).toBe(one.ahead);
});
