import { readFile } from "node:fs/promises";
import type { Page } from "@playwright/test";
import manifest from "../../package.json" with { type: "json" };
import { InspectionTry } from "../../src/app/sittings/tries/inspectionTry";
import { trySetup } from "../../src/app/sittings/tries/trySetup";
import { planTries } from "../../src/drill/sheet/planTries";
import type { Sheet } from "../../src/drill/sheet/sheet";
import { FAULT_WORDS } from "../../src/fitting/fitWords";
import { parsedJson } from "../../src/records/hashedRecord";
import { sittingShown } from "../../src/records/sitting/sittingShown";
import { seededChance } from "../../src/statistics/chance";
import { inspectionStation, testSheet } from "../support/testSheet";
import { LOOKS, look, violations } from "./axe";
import { Fitter } from "./fitting";
import { expect, test } from "./page";
import { byKey } from "./press";
import { start, verdict } from "./sittingByKeys";

const sheetOf = (seed: number): Sheet =>
  testSheet({
    title: "Judge",
    seed,
    stations: [inspectionStation({ help: "counts", repetitions: 1, timeLimit_s: 900, passMarks: { right: 1 } })],
    sitting: { pauseAllowed: true, onReload: "resume", clockHideable: true },
  });

/** A sheet whose fit has something wrong, and what that is. */
function faultySheet() {
  for (let seed = 1; seed < 50; seed++) {
    const sheet = sheetOf(seed);
    const [plan] = planTries(sheet, seededChance(seed));
    if (plan === undefined) throw new Error("the sheet has no try");
    const { faults } = new InspectionTry(trySetup(sheet, plan, seed, 0)).session.result;
    if (faults.length > 0) return { sheet, faults };
  }
  throw new Error("no seed gives a fault");
}

const judged = (page: Page) => page.getByRole("region", { name: "Fit to judge" });

test("what is wrong with a fit is found in a sitting, up to its verdict, its record and its row among the jobs", async ({
  page,
}) => {
  const { sheet, faults } = faultySheet();
  await start(page, sheet, judged(page));
  await expect(page.getByRole("region", { name: "Sitting" })).toContainText("Your answer ends the try.");
  const fitter = new Fitter(page, byKey);
  const checks = page.getByRole("region", { name: "Checks" });
  await fitter.check(...(await checks.getByRole("button").allTextContents()));
  for (const one of LOOKS) {
    await look(page, one);
    expect(await violations(page), one.name).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), one.name).toBe(true);
  }
  const answer = page.getByRole("region", { name: "Your answer" });
  for (const fault of faults) await answer.getByLabel(FAULT_WORDS[fault].what).check();
  await answer.getByRole("button", { name: /^Name \d fault/ }).press("Enter");
  await expect(verdict(page)).toHaveText("Passed.");
  await expect(page.getByRole("region", { name: "Debrief" })).toHaveCount(0);

  const downloading = page.waitForEvent("download");
  await page.getByRole("link", { name: /^Save the record/ }).click();
  const text = await readFile(await (await downloading).path(), "utf8");
  expect(sittingShown(parsedJson(text), manifest.version).check.problems).toEqual([]);
  await page.goto("#/logbook?view=jobs");
  await expect(page.getByRole("row", { name: /Find what is wrong/ })).toContainText(
    /Three-wheel, counts\s*Right\s*nothing missed/,
  );
});

test("an answer by guess does not pass", async ({ page }) => {
  await start(page, faultySheet().sheet, judged(page));
  await page.getByRole("button", { name: "Nothing is wrong" }).press("Enter");
  await expect(verdict(page)).toHaveText("Not passed.");
  await expect(page.getByRole("region", { name: "Tries" })).toContainText("a guess");
});
