import { createHash } from "node:crypto";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type ChainLink, ChainWalk, chained, chainStart } from "../../src/school/signing/chain";

const entries = fc.array(
  fc.record({
    at: fc.nat(),
    what: fc.constantFrom("attempts", "sittings", "deletion"),
    ofId: fc.string({ minLength: 1, maxLength: 8 }),
    sha256: fc.stringMatching(/^[0-9a-f]{64}$/),
  }),
  { minLength: 1, maxLength: 12 },
);

function brokenAt(links: readonly ChainLink[], school = "s") {
  const walk = new ChainWalk(school);
  for (const link of links) walk.next(link);
  return walk.broken;
}

const links = entries.map((list) => chained(chainStart("s"), list));

describe("the chain of what a school received", () => {
  test("a link is SHA-256 of the one before and of its own fields, as anybody can work it out", () => {
    const sha = (text: string) => createHash("sha256").update(text).digest("hex");
    const [first] = chained(chainStart("s"), [{ at: 5, what: "jobs", ofId: "a", sha256: "b" }]);
    const start = sha('{"chain":1,"school":"s"}');
    expect(first?.link).toBe(sha(`["${start}",1,5,"jobs","a","b"]`));
  });

  test("one that nobody touched holds, however it was added to", () => {
    fc.assert(
      fc.property(entries, fc.nat(), (list, cut) => {
        const first = chained(chainStart("s"), list.slice(0, cut % list.length));
        const rest = chained(first.at(-1) ?? chainStart("s"), list.slice(cut % list.length));
        expect(brokenAt([...first, ...rest])).toBeNull();
        expect([...first, ...rest]).toEqual(chained(chainStart("s"), list));
      }),
    );
  });

  test("a changed field breaks it in its place", () => {
    const change = fc.constantFrom<(one: ChainLink) => ChainLink>(
      (one) => ({ ...one, at: one.at + 1 }),
      (one) => ({ ...one, what: `${one.what}s` }),
      (one) => ({ ...one, ofId: `${one.ofId}x` }),
      (one) => ({ ...one, sha256: one.sha256.replace(/^./, (digit) => (digit === "0" ? "1" : "0")) }),
      (one) => ({ ...one, link: one.link.replace(/^./, (digit) => (digit === "0" ? "1" : "0")) }),
    );
    fc.assert(
      fc.property(links, fc.nat(), change, (list, at, changed) => {
        const k = at % list.length;
        expect(brokenAt(list.map((one, i) => (i === k ? changed(one) : one)))).toEqual({
          place: k + 1,
          why: "changed",
        });
      }),
    );
  });

  test("one that is gone, comes twice or has another's place is missed in its place", () => {
    fc.assert(
      fc.property(links, fc.nat(), (list, at) => {
        const k = at % list.length;
        const without = list.filter((_, i) => i !== k);
        // Nobody can tell from a chain alone that its end was cut off: its length is counted beside it.
        expect(brokenAt(without)).toEqual(k === list.length - 1 ? null : { place: k + 1, why: "missing" });
        const twice = list.flatMap((one, i) => (i === k ? [one, one] : [one]));
        expect(brokenAt(twice)).toEqual({ place: k + 2, why: "missing" });
      }),
    );
  });

  test("one of another school does not hold", () => {
    expect(brokenAt(chained(chainStart("t"), [{ at: 5, what: "jobs", ofId: "a", sha256: "b" }]))).not.toBeNull();
  });
});
