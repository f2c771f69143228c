import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type EditVersion, mergedEdit } from "../../src/school/records/mergedEdit";

const NOW = 1000;
const apply = (versions: readonly EditVersion[], note: string, at: number, base: number) => {
  const merged = mergedEdit(versions, { note, at }, base, NOW);
  return { ...merged, all: [...versions, ...merged.added] };
};

describe("edits of tags and note", () => {
  test("one made on the version that holds is taken, and leaves the rest as it was", () => {
    const first = mergedEdit([], { tags: ["a"], at: 5 }, 0, NOW);
    expect(first).toMatchObject({ isTaken: true, holds: { version: 1, tags: ["a"] } });
    const second = mergedEdit(first.added, { note: "n", at: 4 }, 1, NOW);
    expect(second).toMatchObject({ isTaken: true, holds: { version: 2, tags: ["a"], note: "n" } });
  });

  test("of two made on one version the later holds, in whichever order they come, and both stay", () => {
    fc.assert(
      fc.property(fc.nat({ max: NOW }), fc.nat({ max: NOW }), (at, other) => {
        fc.pre(at !== other);
        const one = apply(apply([], "one", at, 0).all, "other", other, 0);
        const two = apply(apply([], "other", other, 0).all, "one", at, 0);
        const later = at > other ? "one" : "other";
        for (const { all, holds } of [one, two]) {
          expect([all.at(-1)?.note, holds.note]).toEqual([later, later]);
          expect(new Set(all.map(({ note }) => note))).toEqual(new Set(["one", "other"]));
          expect(all.map(({ version }) => version)).toEqual(all.map((_, k) => k + 1));
        }
      }),
    );
  });

  test("a clock that is ahead does not hold for ever", () => {
    const ahead = apply([], "ahead", 1e12, 0);
    expect(ahead.holds.at).toBe(NOW);
    expect(mergedEdit(ahead.all, { note: "later", at: NOW + 1 }, 0, NOW + 5).isTaken).toBe(true);
  });

  test("one that comes again changes nothing, and is told what holds", () => {
    fc.assert(
      fc.property(fc.array(fc.nat({ max: NOW }), { minLength: 1, maxLength: 5 }), fc.nat(), (times, which) => {
        let all: readonly EditVersion[] = [];
        for (const [k, at] of times.entries()) all = apply(all, `note ${k}`, at, 0).all;
        const k = which % times.length;
        const again = mergedEdit(all, { note: `note ${k}`, at: times[k] ?? 0 }, 0, NOW);
        expect(again.added).toEqual([]);
        expect(again.holds).toEqual(all.at(-1));
        expect(again.isTaken).toBe(all.at(-1)?.note === `note ${k}`);
      }),
    );
  });
});
