import { readFile } from "node:fs/promises";
import type { Page } from "@playwright/test";
import manifest from "../../package.json" with { type: "json" };
import { FittingTry } from "../../src/app/sittings/tries/fittingTry";
import { trySetup } from "../../src/app/sittings/tries/trySetup";
import { planTries } from "../../src/drill/sheet/planTries";
import type { Sheet } from "../../src/drill/sheet/sheet";
import { farthestIn, goodPlaces } from "../../src/fitting/fittedLock";
import { offsetOf } from "../../src/fitting/offCenter";
import { parsedJson } from "../../src/records/hashedRecord";
import { sittingShown } from "../../src/records/sitting/sittingShown";
import { seededChance } from "../../src/statistics/chance";
import { fittingStation, testSheet } from "../support/testSheet";
import { LOOKS, look, violations } from "./axe";
import { expect, test } from "./page";
import { start, verdict } from "./sittingByKeys";

const LENGTH_mm = 88.5;

const sheetOf = (seed: number): Sheet =>
  testSheet({
    title: "Fit",
    seed,
    stations: [fittingStation({ help: "full", repetitions: 1, timeLimit_s: 900, passMarks: { faults: 2 } })],
    sitting: { pauseAllowed: true, onReload: "resume", clockHideable: true },
  });

/** A sheet whose first spindle is straight, with its lock. */
function straightSheet() {
  for (let seed = 1; seed < 50; seed++) {
    const sheet = sheetOf(seed);
    const [plan] = planTries(sheet, seededChance(seed));
    if (plan === undefined) throw new Error("the sheet has no try");
    const { lock, assembly } = new FittingTry(trySetup(sheet, plan, seed, 0)).session;
    if (offsetOf(assembly.spindle.bend) === 0) return { sheet, lock };
  }
  throw new Error("no seed gives a straight spindle");
}

const press = async (page: Page, ...names: readonly string[]) => {
  for (const name of names) await page.getByRole("button", { name, exact: true }).press("Enter");
};

const tray = (page: Page) => page.getByRole("region", { name: "Dial to fit" });

/** Graduations out from where the dial lies on the ring to the right keyway, in whole ones. */
function outOf(lock: ReturnType<typeof straightSheet>["lock"]): number {
  const most = farthestIn(lock, LENGTH_mm);
  const outs = goodPlaces(lock, LENGTH_mm).map(({ turnedIn }) => most - turnedIn);
  return Math.round(Math.min(...outs.filter((out) => out >= 0)));
}

test("a dial is fitted by keyboard in a sitting, up to its verdict and its row among the jobs", async ({ page }) => {
  test.slow();
  const { sheet, lock } = straightSheet();
  await start(page, sheet, tray(page));
  await page.getByLabel("Washers, from the cam out").selectOption("flat, flat, spring");
  await press(page, "Hang it by one screw", "Tighten all screws", "Put it on over the bushing", "Tighten the ring");
  await page.getByLabel("Cut to, mm from the dial's back").fill(`${LENGTH_mm}`);
  await press(page, "Saw off", "File and chamfer the end", "In until it touches");
  const out = outOf(lock);
  for (let tens = 0; tens < Math.floor(out / 10); tens++) await press(page, "Out 10 graduations");
  for (let ones = 0; ones < out % 10; ones++) await press(page, "Out 1 graduation");
  const gap = page.getByRole("term").filter({ hasText: "Gap between dial and ring" }).locator("+ dd");
  await expect(gap).toHaveText(/^0\.\d\d mm, good from [\d.]+ to [\d.]+ mm$/);
  await expect(page.getByText(/, good from 2\.0 mm inside to 1\.5 mm out$/)).toBeVisible();
  await press(page, "Insert the key", "Drive it home", "Screw firmly, 0.6 Nm", "Drop on the key's screw");
  await press(page, "Hang the strike by one screw", "Look at the key");
  await expect(page.getByRole("region", { name: "Checks" }).getByRole("status")).toContainText("all the way in");
  await press(page, "Put the cover on", "The dial is fitted");
  await expect(verdict(page)).toHaveText("Passed.");
  await expect(page.getByRole("region", { name: "Debrief" })).toHaveCount(0);
  const made = page.getByRole("region", { name: "Tries" }).locator("tbody tr");
  await expect(made).toContainText("13 checks skipped");
  await expect(made).toContainText("the strike hangs by one screw");

  const downloading = page.waitForEvent("download");
  await page.getByRole("link", { name: /^Save the record/ }).click();
  const text = await readFile(await (await downloading).path(), "utf8");
  expect(sittingShown(parsedJson(text), manifest.version).check.problems).toEqual([]);

  await page.goto("#/logbook?view=jobs");
  await expect(page.getByRole("row", { name: /Fitting/ })).toContainText(
    /Three-wheel, full help\s*Not right\s*the strike hangs by one screw/,
  );
});

test("axe finds nothing wrong at a fitting station, all fits, and spoiled parts are not told of before the end", {
  tag: "@long",
}, async ({ page }) => {
  test.slow();
  await start(page, sheetOf(3), tray(page));
  for (const name of ["Take the spare spindle", "none"]) {
    await page.getByLabel("Cut to, mm from the dial's back").fill("60");
    await press(page, "Saw off");
    if (name !== "none") await press(page, name);
  }
  await expect(page.getByRole("region", { name: "Checks" })).toContainText("any more. End this try.");
  for (const one of LOOKS) {
    await look(page, one);
    expect(await violations(page), one.name).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), one.name).toBe(true);
  }
  await press(page, "The dial is fitted");
  await expect(verdict(page)).toHaveText("Not passed.");
  await expect(page.getByRole("region", { name: "Tries" })).toContainText("parts spoiled");
});
