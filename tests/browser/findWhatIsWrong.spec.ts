import { FAULT_WORDS } from "../../src/fitting/fitWords";
import { drawInspection } from "../../src/fitting/inspect/drawFit";
import { shippedProfile } from "../../src/lock/shippedProfiles";
import { seededChance } from "../../src/statistics/chance";
import { violations } from "./axe";
import { Fitter } from "./fitting";
import { expect, test } from "./page";
import { byKey } from "./press";

const PROFILE = shippedProfile("three-wheel");

/** A seed whose fit has two faults or more. */
function faultySeed(): number {
  for (let seed = 1; seed < 200; seed++) {
    if (drawInspection(PROFILE, seededChance(seed)).faults.length >= 2) return seed;
  }
  throw new Error("no seed gives two faults");
}

test("what is wrong with a fit is found by checks alone, named, and kept as a job", async ({ page }) => {
  const seed = faultySeed();
  const { faults } = drawInspection(PROFILE, seededChance(seed));
  await page.goto(`#/fitting?view=find&profile=three-wheel&help=full&seed=${seed}`);
  const checks = page.getByRole("region", { name: "Checks" });
  const answer = page.getByRole("region", { name: "Your answer" });
  await expect(answer.getByRole("button", { name: "Name what is ticked" })).toBeDisabled();
  const fitter = new Fitter(page, byKey);
  await fitter.check(...(await checks.getByRole("button").allTextContents()));
  await expect(checks.getByRole("status")).not.toBeEmpty();
  expect(await violations(page)).toEqual([]);
  for (const fault of faults) await answer.getByLabel(FAULT_WORDS[fault].what).check();
  await expect(answer.getByRole("button", { name: "Nothing is wrong" })).toBeDisabled();
  await answer.getByRole("button", { name: `Name ${faults.length} faults` }).press("Enter");
  const debrief = page.getByRole("region", { name: "Debrief" });
  await expect(debrief.getByRole("heading", { name: "Right answer" })).toBeFocused();
  await expect(debrief.getByText("Overlooked")).toHaveCount(0);
  await debrief.getByRole("button", { name: "Judge another fit" }).press("Enter");
  await expect(page.getByRole("heading", { name: /^A good fit/ })).toBeFocused();
  await expect(checks).toContainText(/^\D*0 of \d+ checks made/);
  await page.goto("#/logbook?view=jobs");
  await expect(page.getByRole("row", { name: /Find what is wrong/ })).toContainText(/Right\s*nothing missed/);
});
