import { describe, expect, test } from "vitest";
import { describeSource } from "../../../src/realdial/sources/sourceDescription";
import { SOURCE_KINDS } from "../../../src/realdial/sources/sourceKinds";
import { sourcesSchema } from "../../../src/realdial/sources/sourceSchema";

describe("what a source is", () => {
  test.each([
    { resolution: 100 / 2400, isCoarse: false },
    { resolution: 0.49, isCoarse: false },
    { resolution: 0.5, isCoarse: true },
    { resolution: 4, isCoarse: true },
  ])("with steps of $resolution graduations: coarse is $isCoarse", ({ resolution, isCoarse }) => {
    expect(describeSource("midi", resolution)).toEqual({ kind: "midi", resolution, noise: null, isCoarse });
  });

  test.each(SOURCE_KINDS)("%s is read as it was written", (kind) => {
    const source = describeSource(kind, 0.05, 0.003);
    expect(sourcesSchema.parse(JSON.parse(JSON.stringify([source])))).toEqual([source]);
  });

  test.each([
    { kind: "telepathy" },
    { resolution: -1 },
    { resolution: Number.NaN },
    { noise: "none" },
    { noise: undefined },
    { isCoarse: 1 },
  ])("%j is none", (wrong) => {
    expect(sourcesSchema.safeParse([{ ...describeSource("encoder", 0.05), ...wrong }]).success).toBe(false);
  });
});
