import { describe, expect, test } from "vitest";
import type { FaultCode } from "../../src/dialing/fault";
import { tellFaults, tellFaultsSoFar } from "../../src/dialing/faultWords";
import { shippedProfile } from "../../src/lock/shippedProfiles";
import { COMBINATION, FAULT_TRACES } from "../support/faultTraces";
import { handled } from "../support/handled";

const facts = (faults: readonly { code: FaultCode; number: number; size: number }[]) =>
  faults.map(({ code, number, size }) => [code, number, size]);

describe.each(["three-wheel", "dial-encoder"] as const)("38-71-26 on the %s lock", (id) => {
  const traces = FAULT_TRACES.filter(({ profile }) => profile === id).map((trace) => [trace.why, trace] as const);

  test.each(traces)("%s", (_, { hand, times, opens, faults }) => {
    const { attempt } = handled(shippedProfile(id), COMBINATION, { hand, times });
    expect(facts(tellFaults(attempt))).toEqual(faults);
    expect(attempt.opened).toBe(opens);
  });

  test.each(traces)("%s: cutting the motion finely changes no fault", (_, { hand, times, opens, faults }) => {
    // Each move in four equal parts; a clock that runs evenly meanwhile. A rest of one sample becomes one of five.
    const PARTS = [0.25, 0.5, 0.75, 1];
    const finely = (values: readonly number[]) =>
      values.flatMap((value, i) => {
        const before = values[i - 1];
        return before === undefined ? [value] : PARTS.map((part) => before + (value - before) * part);
      });
    const { attempt } = handled(shippedProfile(id), COMBINATION, { hand: finely(hand), times: times && finely(times) });
    const isTimed = faults.some(([code]) => code === "came-back");
    const codes = (list: readonly { code: FaultCode }[]) => list.map(({ code }) => code);
    if (isTimed) expect(codes(tellFaults(attempt))).toContain("came-back");
    else if (times === undefined) expect(facts(tellFaults(attempt))).toEqual(faults);
    expect(attempt.opened).toBe(opens);
  });
});

test("every fault has its trace, on each kind of lock that knows it", () => {
  const told = (id: string) =>
    new Set(FAULT_TRACES.filter(({ profile }) => profile === id).flatMap(({ faults }) => faults.map(([code]) => code)));
  const common: FaultCode[] = ["wrong-way", "too-few-turns", "stopped-short", "ran-past", "came-back"];
  const all = [...common, "extra-turnback", "not-drawn"];
  expect(told("three-wheel")).toEqual(new Set([...all, "too-many-turns"]));
  expect(told("dial-encoder")).toEqual(new Set([...all, "paused-too-long"]));
});

describe("faults so far", () => {
  const profile = shippedProfile("three-wheel");
  const soFar = (hand: readonly number[]) => facts(tellFaultsSoFar(handled(profile, COMBINATION, { hand }).attempt));

  test("say nothing of the number that is still being turned to", () => {
    expect(soFar([0, 338, 200])).toEqual([]);
    expect(soFar([0, 340.5])).toEqual([]);
  });

  test("tell a number as soon as the hand has turned back from it", () => {
    expect(soFar([0, 340.5, 338])).toEqual([["ran-past", 1, 2.5]]);
  });

  test("are those of the attempt since its fresh start", () => {
    expect(soFar([0, 340.5, 171, 541, 533])).toEqual([["ran-past", 1, 3]]);
  });
});

test("a fresh start leaves the faults before it behind", () => {
  const profile = shippedProfile("three-wheel");
  // A spoiled attempt, then a sound one whose first turn is long enough to clear the wheels.
  const { attempt } = handled(profile, COMBINATION, { hand: [0, 338, -29, 126, 90, 438, 171, 326, 290] });
  expect(tellFaults(attempt)).toEqual([]);
  expect(attempt.opened).toBe(true);
});
