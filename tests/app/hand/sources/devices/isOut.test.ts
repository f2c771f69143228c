import { expect, test } from "vitest";
import { deviceProblem } from "../../../../../src/app/hand/sources/devices/deviceWords";
import { isOut } from "../../../../../src/app/hand/sources/devices/isOut";

test.each([
  ["nothing is open", { isConnected: false, isOpening: false, trouble: null }, true],
  ["it is being opened", { isConnected: false, isOpening: true, trouble: null }, false],
  ["it turns the dial", { isConnected: true, isOpening: false, trouble: null }, false],
  ["it has fallen silent", { isConnected: true, isOpening: false, trouble: deviceProblem("silent", []) }, true],
  ["no picture comes of it", { isConnected: true, isOpening: false, trouble: deviceProblem("no-pictures", []) }, true],
  ["it does not see its sheet", { isConnected: true, isOpening: false, trouble: deviceProblem("no-sheet", []) }, false],
])("connecting again is offered or not where %s", (_, hub, expected) => {
  expect(isOut(hub)).toBe(expected);
});
