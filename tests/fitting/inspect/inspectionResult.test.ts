import { describe, expect, test } from "vitest";
import { inTheTray } from "../../../src/fitting/assembly";
import { checksOf } from "../../../src/fitting/fitChecks";
import type { FitFault } from "../../../src/fitting/fitFaultCode";
import { inspectionResult, isGuessed, overlooked, unfounded } from "../../../src/fitting/inspect/inspectionResult";

const assembly = inTheTray(140);
const CHECKS = checksOf(assembly);
const drawn = (...faults: readonly FitFault[]) => ({ assembly, faults });

describe("an answer to what is wrong with a fit", () => {
  test("tells what was overlooked, what was unfounded, and which checks were skipped", () => {
    const result = inspectionResult(
      drawn("ring-loose", "end-play"),
      ["ring-loose", "bolt-binds"],
      ["screws", "push-pull"],
    );
    expect(overlooked(result)).toEqual(["end-play"]);
    expect(unfounded(result)).toEqual(["bolt-binds"]);
    expect(result.skipped).toEqual(CHECKS.filter((check) => check !== "screws" && check !== "push-pull"));
  });

  test("that was never given overlooks everything, and is no guess", () => {
    const result = inspectionResult(drawn("ring-loose"), null, []);
    expect(overlooked(result)).toEqual(["ring-loose"]);
    expect(unfounded(result)).toEqual([]);
    expect(isGuessed(result)).toBe(false);
  });

  test.each([
    { named: ["ring-loose"], checks: ["screws"], isGuess: false, why: "the check that shows it was made" },
    { named: ["ring-loose"], checks: ["bolt", "depth"], isGuess: true, why: "other checks were made" },
    { named: ["ring-loose", "end-play"], checks: ["screws"], isGuess: true, why: "one of two was not looked at" },
    { named: ["locker-astray"], checks: ["wheels"], isGuess: false, why: "one of two checks that can show it" },
    { named: [], checks: CHECKS, isGuess: false, why: "nothing is wrong, and every check was made" },
    { named: [], checks: CHECKS.slice(1), isGuess: true, why: "nothing is wrong, and a check was skipped" },
  ] as const)("is a guess or not: $why", ({ named, checks, isGuess }) => {
    expect(isGuessed(inspectionResult(drawn(), named, checks))).toBe(isGuess);
  });

  test.each([
    {
      named: ["key-not-seated"],
      skipped: ["key"],
      checkSet: undefined,
      isGuess: true,
      why: "there was no other check",
    },
    { named: ["key-not-seated"], skipped: ["key"], checkSet: 2, isGuess: false, why: "the lever's nose shows it too" },
    { named: ["key-not-seated"], skipped: ["key", "nose"], checkSet: 2, isGuess: true, why: "neither was looked at" },
    { named: [], skipped: [], checkSet: undefined, isGuess: false, why: "every check that there was" },
  ] as const)("is judged by the checks that there were, set $checkSet: $why", ({ isGuess, ...record }) => {
    expect(isGuessed(record)).toBe(isGuess);
  });
});
