import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { keptPosition } from "../../../src/dialing/hand/keptPosition";
import type { Motion } from "../../../src/dialing/motion";
import { fromBase64, toBase64 } from "../../../src/records/motion/base64";
import { decodeTrace, encodeTrace } from "../../../src/records/motion/traceCodec";
import { MotionError } from "../../../src/records/motionError";

const position = fc.oneof(
  fc.double({ min: -2000, max: 2000, noNaN: true }),
  // Rare: jumps that no 16 bits hold.
  fc.double({ min: -1e9, max: 1e9, noNaN: true }),
);
const start = fc.record(
  {
    dial: fc.double({ min: -1e9, max: 1e9, noNaN: true }),
    slack: fc.array(fc.double({ min: 0, max: 100, noNaN: true }), { maxLength: 6 }),
    memory: fc.record({
      wrongTries: fc.nat(5),
      waitsUntil_ms: fc.option(fc.double({ min: 0, max: 1e7, noNaN: true })),
    }),
  },
  { requiredKeys: ["dial"] },
);
const motion: fc.Arbitrary<Motion> = fc
  .tuple(fc.array(fc.tuple(position, fc.nat(100_000)), { maxLength: 200 }), fc.boolean(), fc.option(start))
  .map(([moves, isTimed, from]) => {
    let now = 0;
    const times_ms = moves.map(([, pause]) => (now += pause / 3));
    return { ...(from && { start: from }), positions: moves.map(([at]) => at), ...(isTimed && { times_ms }) };
  });

describe("a packed trace", () => {
  test("gives back every position to 1/128 graduation and every time to half a millisecond", () => {
    fc.assert(
      fc.property(motion, (before) => {
        const after = decodeTrace(encodeTrace(before));
        expect(after.positions).toHaveLength(before.positions.length);
        expect(after.times_ms === undefined).toBe(before.times_ms === undefined);
        after.positions.forEach((at, i) => {
          expect(Math.abs(at - (before.positions[i] ?? Number.NaN))).toBeLessThanOrEqual(1 / 128);
        });
        after.times_ms?.forEach((time, i) => {
          expect(Math.abs(time - (before.times_ms?.[i] ?? Number.NaN))).toBeLessThanOrEqual(0.5);
        });
      }),
    );
  });

  test("keeps the start to the last bit", () => {
    fc.assert(
      fc.property(motion, (before) => {
        expect(decodeTrace(encodeTrace(before)).start).toEqual(before.start);
      }),
    );
  });

  test("loses nothing when it is packed again", () => {
    fc.assert(
      fc.property(motion, (before) => {
        const once = decodeTrace(encodeTrace(before));
        expect(once.positions).toEqual(before.positions.map(keptPosition));
        expect(decodeTrace(encodeTrace(once))).toEqual(once);
      }),
    );
  });

  test("passes through base64 unchanged", () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => {
        expect(fromBase64(toBase64(bytes))).toEqual(bytes);
      }),
    );
    const long = Uint8Array.from({ length: 100_000 }, (_, i) => (i * 7) % 251);
    expect(fromBase64(toBase64(long))).toEqual(long);
  });
});

describe("what is no trace", () => {
  // "AQ==" is the byte 1; the others spell it too where a reader is lax (RFC 4648, sections 3.3 and 3.5).
  test.each(["A Q==", "AQ==\n", " AQ==", "AQ", "AR==", "A=Q="])(
    "%j is another spelling of a byte, and refused",
    (text) => {
      expect([...fromBase64("AQ==")]).toEqual([1]);
      expect(() => fromBase64(text)).toThrow(expect.objectContaining({ code: "bad-trace" }));
    },
  );

  const readOrRefuse = (bytes: Uint8Array) => {
    try {
      decodeTrace(bytes);
    } catch (error) {
      expect(error).toBeInstanceOf(MotionError);
      expect(error).toMatchObject({ message: expect.stringMatching(/\.$/) });
    }
  };

  test("any bytes are read or refused with a sentence", () => {
    fc.assert(fc.property(fc.uint8Array({ maxLength: 300 }), readOrRefuse));
  });

  test("a damaged trace is read or refused with a sentence", () => {
    fc.assert(
      fc.property(motion, fc.nat(), fc.nat(255), fc.nat(), (whole, place, value, length) => {
        const bytes = encodeTrace(whole);
        bytes[place % bytes.length] = value;
        readOrRefuse(bytes);
        readOrRefuse(bytes.subarray(0, length % bytes.length));
      }),
      { numRuns: 300 },
    );
  });

  test.each<[string, Motion]>([
    ["a position that is none", { positions: [0, Number.NaN] }],
    ["a position too far away", { positions: [2e9] }],
    ["times for half the positions", { positions: [0, 1], times_ms: [0] }],
    ["times that fall", { positions: [0, 1], times_ms: [5, 4] }],
    ["a time that is none", { positions: [0, 1], times_ms: [Number.NaN, 4] }],
  ])("%s is not packed", (_why, bad) => {
    expect(() => encodeTrace(bad)).toThrow(MotionError);
  });

  test("a claim of a gigabyte in a few bytes is refused before any room is taken", () => {
    const bytes = encodeTrace({ positions: [1] });
    new DataView(bytes.buffer).setUint32(1, 1 << 30, true);
    expect(() => decodeTrace(bytes)).toThrow("it is longer than 8388608 bytes");
  });
});
