import { readFile } from "node:fs/promises";
import manifest from "../../package.json" with { type: "json" };
import type { Sheet } from "../../src/drill/sheet/sheet";
import { parsedJson } from "../../src/records/hashedRecord";
import { sittingShown } from "../../src/records/sitting/sittingShown";
import { serviceStation, testSheet } from "../support/testSheet";
import { expect, test } from "./page";
import { start, verdict } from "./sittingByKeys";

const SHEET: Sheet = testSheet({
  title: "Serve",
  seed: 4,
  stations: [serviceStation({ help: "silent", repetitions: 1, timeLimit_s: 900, passMarks: { faults: 2 } })],
  sitting: { pauseAllowed: true, onReload: "resume", clockHideable: true },
});

test("a service visit in a sitting shows no debrief, and comes to its verdict and to a row among the jobs", async ({
  page,
}) => {
  const visit = page.getByRole("region", { name: "Service visit" });
  await start(page, SHEET, visit);
  await expect(page.getByRole("region", { name: "Help" })).toHaveCount(0);
  await page.getByRole("button", { name: "Have the door opened" }).press("Enter");
  await page.getByRole("button", { name: "Leave the site", exact: true }).press("Enter");
  await expect(page.getByRole("region", { name: "Debrief" })).toHaveCount(0);
  await expect(verdict(page)).toHaveText("Not passed.");
  await expect(page.getByRole("region", { name: "Tries" })).toContainText("visit ended");
  const downloading = page.waitForEvent("download");
  await page.getByRole("link", { name: /^Save the record/ }).click();
  const text = await readFile(await (await downloading).path(), "utf8");
  expect(sittingShown(parsedJson(text), manifest.version).check.problems).toEqual([]);
  await expect(page.getByRole("main")).toContainText(/\d+ faults in 1 visit; at most 2 allowed/);
  await page.goto("#/logbook?view=jobs");
  await expect(page.getByRole("row", { name: /Service visit/ })).toContainText("Not right");
});
