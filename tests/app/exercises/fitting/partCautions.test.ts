import { expect, test } from "vitest";
import { partsOf } from "../../../../src/app/exercises/fitting/partActs";
import { NEW_BOARD } from "../../../../src/fitting/board";
import { drawDoor, trayAt } from "../../../../src/fitting/doorToFit";
import { lockWith } from "../../../../src/fitting/fittedLock";
import { shippedProfile } from "../../../../src/lock/shippedProfiles";
import { seededChance } from "../../../../src/statistics/chance";

const profile = shippedProfile("dial-encoder");
const door = drawDoor(profile, seededChance(1));
const tray = trayAt(door, lockWith(profile, door.slotAt));
const STRAPPED = { ...NEW_BOARD, isStrapOn: true };

test.each([
  ["Lock body", "in the tray", tray, "weight"],
  ["Lock body", "on its plate", { ...tray, body: "by-all" }, "weight"],
  ["Lock body", "under the cover", { ...tray, body: "by-all", hasCover: true }, null],
  ["Board and battery", "as it comes", tray, "leads"],
  ["Board and battery", "with the strap on", { ...tray, board: STRAPPED }, "leads"],
  ["Board and battery", "with its battery", { ...tray, board: { ...STRAPPED, leads: "right" } }, null],
  ["Board and battery", "touched bare", { ...tray, board: { ...NEW_BOARD, leads: "right" } }, "static"],
  ["Board and battery", "under the cover", { ...tray, hasCover: true }, null],
] as const)("%s, %s, tells what can hurt", (name, _, now, caution) => {
  const part = partsOf(now).find((one) => one.name === name);
  expect(part?.caution?.(now)).toBe(caution);
});
