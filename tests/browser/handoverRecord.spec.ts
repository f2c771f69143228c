import { describeSource } from "../../src/realdial/sources/sourceDescription";
import { handoverRecord } from "../../src/records/handover/handoverRecord";
import { recordHash, writeHashed } from "../../src/records/hashedRecord";
import { RECORD_FACTS } from "../support/savedHandoverRecord";
import { LOOKS, look, violations } from "./axe";
import { expect, test } from "./page";

/** Runs in the page: drops a file of some text on it. */
const dropText = (text: string) => {
  const dataTransfer = new DataTransfer();
  dataTransfer.items.add(new File([text], "record.json", { type: "application/json" }));
  document.body.dispatchEvent(new DragEvent("drop", { dataTransfer, bubbles: true, cancelable: true }));
};

test("a saved handover record is checked: reached by key, loaded, dropped and pasted", async ({ page }) => {
  // Seed 5 draws a door with the dial at 41 inches.
  const record = handoverRecord({ ...RECORD_FACTS, height_in: 41 });
  const text = writeHashed({ sha256: recordHash(record), record });
  const forged = text.replace('"technician": "P. Underbell"', '"technician": "X. Pelline"');
  await page.goto("#/handover");
  await page
    .getByRole("navigation", { name: "Parts of the handover" })
    .getByRole("link", { name: "Check a record" })
    .press("Enter");
  const check = page.getByRole("region", { name: "Check a record" });
  const file = (body: string) => ({ name: "record.json", mimeType: "application/json", buffer: Buffer.from(body) });
  await check.getByLabel("Load a file").setInputFiles(file(text));
  await expect(check.getByRole("status")).toHaveText(/^The record is sound\. It is unchanged since its hash was made/);
  await expect(check.getByText("turns in doubt")).toBeHidden();
  const doubted = handoverRecord({
    ...{ ...RECORD_FACTS, height_in: 41 },
    ...{ sources: [describeSource("encoder", 100 / 2400)], doubts: ["disconnected"] },
  });
  await page.evaluate(dropText, writeHashed({ sha256: recordHash(doubted), record: doubted }));
  await expect(check.getByText("the device was disconnected. A turn of the dial may")).toBeVisible();
  await page.evaluate(dropText, forged);
  await expect(check.getByRole("alert")).toContainText("it or the hash was changed");
  for (const one of LOOKS) {
    await look(page, one);
    expect(await violations(page), one.name).toEqual([]);
  }
  await check.getByRole("textbox", { name: "A saved record" }).fill("{}");
  await check.getByRole("button", { name: "Check it" }).press("Enter");
  await expect(check.getByRole("alert")).toHaveText("Not checked: this file holds no handover record.");
  expect(
    await page.locator("main").evaluate((element) => element.scrollWidth - element.clientWidth),
  ).toBeLessThanOrEqual(0);
});
