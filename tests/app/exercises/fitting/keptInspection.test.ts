import fc from "fast-check";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import type { InspectionSession } from "../../../../src/app/exercises/fitting/find/inspectionSession";
import {
  firstInspection,
  INSPECTION_KEY,
  isJudging,
  keptInspectionOf,
} from "../../../../src/app/exercises/fitting/find/keptInspection";
import { keepText } from "../../../../src/app/parts/storage/safeTexts";
import { checksOf, FIT_CHECKS } from "../../../../src/fitting/fitChecks";
import { FIT_FAULTS } from "../../../../src/fitting/fitFaultCode";
import { faultsOn } from "../../../../src/fitting/inspect/faultDraws";
import { seededChance } from "../../../../src/statistics/chance";

const texts = new Map<string, string>();
beforeEach(() => {
  texts.clear();
  vi.stubGlobal("localStorage", {
    getItem: (key: string) => texts.get(key) ?? null,
    setItem: (key: string, text: string) => texts.set(key, text),
    removeItem: (key: string) => texts.delete(key),
  });
});
afterEach(() => void vi.unstubAllGlobals());

const begun = (address: string, steady_ms = 0) =>
  firstInspection(new URLSearchParams(address), seededChance(4), steady_ms);

function keep(session: InspectionSession, steady_ms = 0): void {
  const kept = keptInspectionOf(session, steady_ms);
  void keepText(INSPECTION_KEY, kept === null ? null : JSON.stringify(kept));
}

describe("a fit that is being judged", () => {
  test("goes on as it was: the same lock, what its checks showed, and the same answer to the next one", () => {
    const checks = fc.array(fc.constantFrom(...FIT_CHECKS), { minLength: 1, maxLength: 30 });
    fc.assert(
      fc.property(fc.nat(1000), checks, (seed, made) => {
        const { session } = begun(`seed=${seed}&help=silent`);
        session.begunAt = 1000;
        for (const check of made) session.check(check);
        keep(session, 6000);
        const { session: again, problem } = begun("", 90_000);
        expect(problem).toBeNull();
        // Time away is no time worked.
        expect([again.help, again.workedBy(91_000)]).toEqual(["silent", 6000]);
        for (const one of [session, again]) one.check("marks");
        expect(again.log).toEqual(session.log);
        expect(again.result).toEqual(session.result);
      }),
      { numRuns: 40 },
    );
  });

  test("is kept no more when the answer is given, and not before the first check", () => {
    const { session } = begun("seed=3");
    keep(session);
    expect(texts.has(INSPECTION_KEY)).toBe(false);
    for (const check of checksOf(session.assembly)) session.check(check);
    keep(session);
    expect(texts.has(INSPECTION_KEY)).toBe(true);
    session.name([]);
    keep(session);
    expect([texts.has(INSPECTION_KEY), isJudging(session)]).toEqual([false, false]);
  });

  test.each([
    ["", true],
    ["profile=three-wheel&seed=12&help=counts", true],
    ["seed=13", false],
    ["profile=two-wheel", false],
    ["help=silent", false],
  ])("goes on where the address asks for it: %s, %s", (address, isIt) => {
    const { session } = begun("profile=three-wheel&seed=12&help=counts");
    session.check("bolt");
    keep(session);
    expect(isJudging(begun(address).session)).toBe(isIt);
    expect(texts.has(INSPECTION_KEY)).toBe(true);
  });

  test("has the ticks of its answer again, before its first check too; another lock has none", () => {
    for (const checks of [[], ["bolt"]] as const) {
      const { session } = begun("seed=12&profile=three-wheel");
      for (const check of checks) session.check(check);
      session.tick(["ring-off-center", "rubs"]);
      keep(session, 5000);
      const { session: again } = begun("", 90_000);
      expect([again.ticked, again.log, again.isNamed]).toEqual([["ring-off-center", "rubs"], session.log, false]);
      // A tick is no work: time runs from the first check on.
      expect(again.workedBy(90_000)).toBe(0);
      again.again();
      expect([again.ticked, isJudging(again)]).toEqual([[], false]);
    }
  });

  test("has no ticks where it was stored before they were, nor of what its lock cannot have", () => {
    const stored = { version: 1, profile: "three-wheel", seed: 3, help: "full", worked_ms: 5, checks: ["bolt"] };
    texts.set(INSPECTION_KEY, JSON.stringify(stored));
    expect(begun("").session.ticked).toEqual([]);
    texts.set(INSPECTION_KEY, JSON.stringify({ ...stored, ticked: FIT_FAULTS }));
    const { session, problem } = begun("");
    expect([session.ticked, problem]).toEqual([faultsOn(session.lock), null]);
  });

  test("with another lock after it goes on with that one", () => {
    const { session } = begun("seed=12");
    session.again();
    session.check("bolt");
    keep(session);
    expect(begun(`seed=${session.seed}`).session.log).toEqual(session.log);
  });

  const sound = { version: 1, profile: "three-wheel", seed: 3, help: "full", worked_ms: 5, checks: ["bolt"] };
  test.each([
    "not json",
    "null",
    "[]",
    JSON.stringify({ ...sound, version: 2 }),
    JSON.stringify({ ...sound, profile: "__proto__" }),
    JSON.stringify({ ...sound, seed: -1 }),
    JSON.stringify({ ...sound, seed: 1e300 }),
    JSON.stringify({ ...sound, help: "all" }),
    JSON.stringify({ ...sound, worked_ms: null }),
    JSON.stringify({ ...sound, checks: ["smell"] }),
    JSON.stringify({ ...sound, ticked: ["dusty"] }),
    JSON.stringify({ ...sound, ticked: "rubs" }),
    JSON.stringify({ ...sound, checks: Array.from({ length: 5001 }, () => "bolt") }),
  ])("that cannot be read is set aside and told: %s", (text) => {
    texts.set(INSPECTION_KEY, JSON.stringify(sound));
    expect(isJudging(begun("").session)).toBe(true);
    texts.set(INSPECTION_KEY, text);
    const { session, problem } = begun("");
    expect(isJudging(session)).toBe(false);
    expect(problem).toMatch(/^The inspection that this browser saved cannot be read\. A copy is kept/);
    expect(texts.get(`${INSPECTION_KEY}.unread`)).toBe(text);
  });
});
