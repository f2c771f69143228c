import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  CARD_LETTERS,
  CODE_BYTES,
  codeFrom,
  codeText,
  isLikeCardCode,
  readCode,
} from "../../src/school/people/classCode";

const bytes = fc.uint8Array({ minLength: CODE_BYTES, maxLength: CODE_BYTES });

describe("a code of a card", () => {
  test("is read back however it is typed, and is no class code", () => {
    fc.assert(
      fc.property(bytes, (chance) => {
        const code = codeFrom(chance, CARD_LETTERS);
        if (code === null) return;
        expect(codeText(code)).toMatch(/^(\w{4}-){3}\w{4}$/);
        expect(readCode(` ${codeText(code).toLowerCase().replaceAll("-", " – ")}`, CARD_LETTERS)).toBe(code);
        expect(readCode(code)).toBeNull();
        expect(readCode(code.slice(0, 8), CARD_LETTERS)).toBeNull();
      }),
    );
  });

  test.each([
    ["abcd efgh", false],
    ["ABCD-EFGH-J", true],
    ["abcd efgh jkmn pqrt", true],
  ])("%j is meant for one: %s", (typed, isOne) => {
    expect(isLikeCardCode(typed)).toBe(isOne);
  });
});

describe("a class code", () => {
  test("is read back however it is typed", () => {
    fc.assert(
      fc.property(bytes, (chance) => {
        const code = codeFrom(chance);
        if (code === null) return;
        expect(readCode(codeText(code))).toBe(code);
        expect(readCode(` ${codeText(code).toLowerCase().replace("-", " – ")}`)).toBe(code);
      }),
    );
  });

  test("has no letter or digit that is taken for another", () => {
    const all = Uint8Array.from({ length: 256 }, (_, k) => k);
    const letters = new Set<string>();
    for (let k = 0; k < 256; k++) for (const letter of codeFrom(all.slice(k).slice(0, 8)) ?? "") letters.add(letter);
    expect([...letters].toSorted().join("")).toBe("34679ACDEFGHJKMNPQRTWXY");
    expect([..."01258BILOSUVZ"].filter((letter) => letters.has(letter))).toEqual([]);
  });

  test("comes upon each letter as often as upon others, and passes bytes over that would favor one", () => {
    const counts = new Map<string, number>();
    for (let byte = 0; byte < 256; byte++) {
      const [letter] = codeFrom(Uint8Array.from([byte, ...Array(8).fill(0)])) ?? "";
      // A byte that is passed over leaves the first of those behind it.
      if (byte < 253) counts.set(letter ?? "", (counts.get(letter ?? "") ?? 0) + 1);
    }
    expect(new Set(counts.values())).toEqual(new Set([11]));
    expect(codeFrom(new Uint8Array(CODE_BYTES).fill(255))).toBeNull();
  });

  test.each(["", "ABCD", "ABCD-EFGHJ", "ABCD-EFG0", "ABCD_EFGH"])("%j is none", (typed) => {
    expect(readCode(typed)).toBeNull();
  });
});
