import { expect, test } from "vitest";
import { checkRun } from "../../../src/handover/run/checkRun";
import { parseRun } from "../../../src/handover/run/recordedRun";
import clean from "../../fixtures/0.2.0/handover-run.json" with { type: "json" };

test("a run of 5,000 steps is checked as one of a few", () => {
  const events = Array.from({ length: 5000 }, (_, k) => ({ type: "lock.spunOff", at_ms: 10 * k }));
  const result = checkRun(parseRun({ ...clean, events }));
  expect(result).toMatchObject({ isHandedOver: false, steps: 5000, faults: [], duration_ms: 49_990 });
});

test("a run of more than 10,000 steps is refused", () => {
  const events = Array.from({ length: 10_001 }, (_, k) => ({ type: "lock.spunOff", at_ms: k }));
  expect(() => parseRun({ ...clean, events })).toThrow(/10000|10,000/);
});
