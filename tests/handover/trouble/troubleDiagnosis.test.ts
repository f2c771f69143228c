import { describe, expect, test, vi } from "vitest";
import { kindsFor } from "../../../src/handover/trouble/drawTrouble";
import { TROUBLE_KINDS } from "../../../src/handover/trouble/trouble";
import { SHIPPED_PROFILES } from "../../../src/lock/shippedProfiles";
import { draws } from "../../support/draws";
import { troubleTrial } from "../../support/troubleTrial";

// A loaded machine must not make this fail.
vi.setConfig({ testTimeout: 120_000 });

/** How many locks with one defect are diagnosed, the shipped ones in turn, and how many may be missed; what was missed is shown. */
const RUNS = draws(60, 300);
const MISSED_MOST = 0.01 * RUNS;
const cases = TROUBLE_KINDS.map((kind) => ({
  kind,
  locks: SHIPPED_PROFILES.filter((profile) => kindsFor(profile).includes(kind)),
}));

describe("every condition can be found by the instruments alone", () => {
  test("there are at least eight, and every one is found in some lock", () => {
    expect(TROUBLE_KINDS.length).toBeGreaterThanOrEqual(8);
    expect(cases.filter(({ locks }) => locks.length === 0)).toEqual([]);
  });

  test.each(cases)("$kind is named right in 99 of 100 locks or more, size and all", ({ kind, locks }) => {
    const trials = Array.from({ length: RUNS / locks.length }, (_, k) => k + 1).flatMap((seed) =>
      locks.map((profile) => troubleTrial(profile, kind, seed)),
    );
    expect(trials.length).toBe(RUNS);
    const missed = trials.filter(({ isRight }) => !isRight);
    expect(missed.length <= MISSED_MOST ? [] : missed).toEqual([]);
  });
});
