import fc from "fast-check";
import { describe, expect, test, vi } from "vitest";
import { checksOf } from "../../../src/fitting/fitChecks";
import { FIT_FAULTS, type FitFault } from "../../../src/fitting/fitFaultCode";
import { lockToFit } from "../../../src/fitting/fittedLock";
import { FOUND_BY } from "../../../src/fitting/foundBy";
import { drawInspection, fitWith } from "../../../src/fitting/inspect/drawFit";
import { faultsOn } from "../../../src/fitting/inspect/faultDraws";
import { SHIPPED_PROFILES, shippedProfile } from "../../../src/lock/shippedProfiles";
import { seededChance } from "../../../src/statistics/chance";
import { draws } from "../../support/draws";
import { drawnWith, inOrder, locksWith, namedRight } from "../../support/fitTrial";
import { diagnosed, trainingLock } from "../../support/fitter";

// A loaded machine must not make a property fail.
vi.setConfig({ testTimeout: 60_000 });

const seeds = fc.integer({ min: 0, max: 2 ** 31 });
const RUNS = draws(200, 1000);
const THREE_WHEEL = shippedProfile("three-wheel");

/** What comes with a fault, whoever fits the lock. */
const COMES_WITH: { readonly [Fault in FitFault]?: readonly FitFault[] } = {
  // No cover goes over it.
  "spindle-long": ["cover-off"],
  // Leads the wrong way round blow the fuse.
  "battery-reversed": ["fuse-blown"],
};

describe("a fit that is drawn", () => {
  test.each(FIT_FAULTS)("with %s has that fault and no other but what comes with it, on every lock", (fault) => {
    fc.assert(
      fc.property(seeds, fc.constantFrom(...locksWith(fault)), (seed, profile) => {
        const chance = seededChance(seed);
        expect(fitWith([fault], lockToFit(profile, chance), chance).faults).toEqual([
          fault,
          ...(COMES_WITH[fault] ?? []),
        ]);
      }),
      { numRuns: 200 },
    );
  });

  test("with nothing wanted has nothing wrong", () => {
    fc.assert(
      fc.property(seeds, fc.constantFrom(...SHIPPED_PROFILES), (seed, profile) => {
        const chance = seededChance(seed);
        expect(fitWith([], lockToFit(profile, chance), chance).faults).toEqual([]);
      }),
    );
  });

  test("leaves out what cannot go together with what was wanted before", () => {
    const chance = seededChance(1);
    const lock = trainingLock(30);
    expect(fitWith(["gap-wide", "rubs", "body-by-one-screw"], lock, chance).faults).toEqual([
      "gap-wide",
      "body-by-one-screw",
    ]);
    expect(fitWith(["spindle-long", "spindle-short"], lock, chance).faults).toEqual(["spindle-long", "cover-off"]);
  });

  test.each(SHIPPED_PROFILES)(
    "$id: has nothing wrong once in five, has every fault at some time, and comes again",
    (profile) => {
      const draws = Array.from({ length: RUNS }, (_, seed) => drawInspection(profile, seededChance(seed)));
      const faultless = draws.filter(({ faults }) => faults.length === 0).length / RUNS;
      expect(faultless).toBeGreaterThan(0.15);
      expect(faultless).toBeLessThan(0.25);
      expect(inOrder(draws.flatMap(({ faults }) => faults))).toEqual(faultsOn(lockToFit(profile, seededChance(1))));
      expect(Math.max(...draws.map(({ faults }) => faults.length))).toBeGreaterThanOrEqual(3);
      expect(drawInspection(profile, seededChance(7))).toEqual(draws[7]);
    },
  );
});

describe("a technician who has the checks alone names all that is wrong, and nothing else", () => {
  test.each(FIT_FAULTS)("in 99 of 100 runs or more: %s", (fault) => {
    const [profile = THREE_WHEEL] = locksWith(fault);
    const right = namedRight(RUNS, (chance) => drawnWith([fault], profile, chance));
    process.stdout.write(`${fault}: named right in ${right} of ${RUNS}\n`);
    expect(right).toBeGreaterThanOrEqual(0.99 * RUNS);
  });

  test.each(SHIPPED_PROFILES)("in 99 of 100 runs or more of any draw, and of good fits: $id", (profile) => {
    const right = namedRight(RUNS, (chance) => drawInspection(profile, chance));
    const good = namedRight(RUNS, (chance) => drawnWith([], profile, chance));
    process.stdout.write(`${profile.id}, any draw: named right in ${right} of ${RUNS}, nothing wrong in ${good}\n`);
    expect(Math.min(right, good)).toBeGreaterThanOrEqual(0.99 * RUNS);
  });

  test.each(FIT_FAULTS)("and finds %s by the checks that can show it, and by no others", (fault) => {
    const [profile = THREE_WHEEL] = locksWith(fault);
    const found = { by: 0, without: 0 };
    for (let seed = 0; seed < 200; seed++) {
      const chance = seededChance(seed);
      const { assembly, lock } = drawnWith([fault], profile, chance);
      const others = checksOf(assembly).filter((check) => !FOUND_BY[fault].includes(check));
      if (diagnosed(assembly, lock, chance, FOUND_BY[fault]).has(fault)) found.by++;
      if (diagnosed(assembly, lock, chance, others).has(fault)) found.without++;
    }
    expect(found.by).toBeGreaterThanOrEqual(198);
    expect(found.without).toBeLessThanOrEqual(2);
  });
});
