import { describe, expect, test } from "vitest";
import { CONDITIONS, DEFECT, FAULTS, FITTED, FOUND, JUDGED, SERVED, verdictOn } from "../../support/drawnTries";

test("the record that forgeries are made of is sound", () => {
  expect(verdictOn([FITTED, JUDGED, SERVED, FOUND])).toEqual([]);
});

const [FIRST, ...REST] = CONDITIONS;
const ELSE = (["key-loose", "bolt-drags", "ring-dirty"] as const).filter((one) => !CONDITIONS.includes(one));
const NOT_PROVED = { code: "not-proved", about: null } as const;
const missed = (about: (typeof CONDITIONS)[number]) => ({ code: "missed-in-record", about }) as const;

describe("a forged try is found, marks and hash made anew", () => {
  test.each([
    ["a fit with fewer faults than were drawn", { ...JUDGED, faults: FAULTS.slice(1), named: FAULTS.slice(1) }],
    ["a fit with no faults", { ...JUDGED, faults: [], named: [] }],
    ["a fit with faults in another order", { ...JUDGED, faults: FAULTS.toReversed() }],
    ["a fault named that its lock cannot have", { ...JUDGED, named: [...FAULTS, "fuse-blown" as const] }],
    ["a check skipped that its lock does not have", { ...JUDGED, skipped: ["self-check" as const] }],
    ["a fault named twice", { ...JUDGED, named: [...FAULTS, ...FAULTS] }],
    ["an answer in no time", { ...JUDGED, time_ms: 0 }],
  ])("%s", (_, forged) => {
    expect(verdictOn([FITTED, forged, SERVED, FOUND])).not.toEqual([]);
  });

  test.each([
    ["a lock with fewer conditions than were drawn", { ...SERVED, conditions: REST, found: REST }],
    ["a lock with nothing wrong", { ...SERVED, conditions: [], found: [] }],
    ["a lock with other conditions", { ...SERVED, conditions: ELSE, found: ELSE }],
    ["a condition that was not written down, and no fault of it", { ...SERVED, found: REST, faults: [NOT_PROVED] }],
    ["a condition invented, and no fault of it", { ...SERVED, found: [...CONDITIONS, ...ELSE], faults: [NOT_PROVED] }],
    ["a fault of what was written down", { ...SERVED, faults: FIRST === undefined ? [] : [missed(FIRST)] }],
    ["something found without a record", { ...SERVED, faults: [{ code: "no-record" as const, about: null }] }],
    [
      "left wrong what was not wrong",
      { ...SERVED, faults: ELSE.slice(0, 1).map((about) => ({ code: "left-wrong" as const, about })) },
    ],
    [
      "made wrong what was wrong",
      { ...SERVED, faults: CONDITIONS.slice(0, 1).map((about) => ({ code: "made-wrong" as const, about })) },
    ],
    [
      "batteries measured on a wheel pack",
      { ...SERVED, faults: [{ code: "not-measured" as const, about: "battery" as const }] },
    ],
    ["a static strap for a wheel pack", { ...SERVED, faults: [{ code: "cover-without-strap" as const, about: null }] }],
    ["a good visit in too few acts", { ...SERVED, acts: 12 }],
  ])("%s", (_, forged) => {
    expect(verdictOn([FITTED, JUDGED, forged, FOUND])).not.toEqual([]);
  });

  test.each([
    ["a fault that its lock cannot have", { ...FITTED, faults: [{ code: "battery-missing" as const }] }],
    ["a check skipped that its lock does not have", { ...FITTED, skipped: ["wires" as const] }],
    ["fitted with hardly a part moved", { ...FITTED, moves: 3 }],
    ["fitted with parts in the tray", { ...FITTED, declared: "apart" as const }],
    [
      "faults of a fit that never was together",
      { ...FITTED, declared: null, moves: 2, faults: [{ code: "rubs" as const }] },
    ],
  ])("%s", (_, forged) => {
    expect(verdictOn([forged, JUDGED, SERVED, FOUND])).not.toEqual([]);
  });

  const OTHER = DEFECT === "wheel-off" ? "index-slipped" : "wheel-off";
  test.each([
    ["another defect than was drawn", { ...FOUND, condition: OTHER, named: OTHER }],
    ["a defect that its lock cannot have", { ...FOUND, condition: "zero-never-set", named: "zero-never-set" }],
    ["another defect, and it was not found", { ...FOUND, condition: OTHER, isNamedRight: false, sizeError: null }],
  ] as const)("%s", (_, forged) => {
    const says = "Try 4 has another defect than sheet and seed lead to.";
    expect(verdictOn([FITTED, JUDGED, SERVED, forged])).toContain(says);
    expect(verdictOn([FITTED, JUDGED, SERVED, forged], "9.9.9")).not.toContain(says);
  });
});
