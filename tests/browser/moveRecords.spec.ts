import { writeLogbookFile } from "../../src/records/file/logbookFile";
import { aPerson, contents, NOON } from "../support/logbookRecords";
import { expect, test } from "./page";
import { dialLast } from "./sittingByKeys";

test("an attempt is given to another person, deleted, and two people are merged; each can be undone", async ({
  page,
}) => {
  await page.goto("#/logbook");
  for (const name of ["Quorin", "Ilsabet"]) {
    await page.getByRole("button", { name: "Add a person" }).click();
    await page.getByRole("textbox", { name: /^Name/ }).fill(name);
    await page.keyboard.press("Enter");
  }
  await page.goto("#/bench?seed=5");
  await dialLast(page);
  await page.goto("#/logbook");
  const rows = page.getByRole("button", { name: /^Replay the attempt of/ });
  const who = (name: string) => page.getByRole("group", { name: "Who practices" }).getByRole("button", { name });
  const undo = page.getByRole("button", { name: "Undo" });
  await rows.click();
  await page.getByRole("combobox", { name: "Who dialed this attempt" }).selectOption("Quorin");
  await page.getByRole("button", { name: "Give this attempt to Quorin" }).click();
  await expect(page.getByText("The attempt is now Quorin’s.")).toBeVisible();
  await expect(undo).toBeFocused();
  await expect(rows).toHaveCount(0);
  await undo.click();
  await expect(rows).toHaveCount(1);

  await rows.click();
  await page.getByRole("button", { name: "Delete this attempt" }).click();
  await expect(rows).toHaveCount(0);
  await undo.click();
  await expect(rows).toHaveCount(1);

  await page.getByRole("button", { name: "Merge Ilsabet" }).click();
  await page.getByRole("button", { name: "Give all of Ilsabet’s records to Quorin" }).click();
  await expect(who("Ilsabet")).toHaveCount(0);
  await expect(who("Quorin")).toHaveAttribute("aria-pressed", "true");
  await expect(rows).toHaveCount(1);
  await undo.click();
  await expect(rows).toHaveCount(0);
  await who("Ilsabet").click();
  await expect(rows).toHaveCount(1);
});

test("a zeroing is given to another person and deleted, and each can be undone", async ({ page }) => {
  const records = contents([aPerson("quorin", { name: "Quorin" }), aPerson("ilsabet", { name: "Ilsabet" })], []);
  const zeroing = {
    id: "z",
    createdAt: NOON,
    updatedAt: NOON,
    personId: "ilsabet",
    startedAt: NOON,
    duration_ms: 60_000,
    profileId: "dial-encoder",
    outcome: "zero-set" as const,
    readings: [],
  };
  const whole = { ...records, records: { ...records.records, zeroings: [zeroing] } };
  await page.goto("#/logbook?view=files");
  await page.locator("input[type=file]").setInputFiles({
    name: "class.json",
    mimeType: "application/json",
    buffer: Buffer.from(writeLogbookFile(whole, NOON)),
  });
  await expect(page.getByText(/records added/)).toBeVisible();
  await page.getByRole("link", { name: "Attempts" }).click();
  const who = (name: string) => page.getByRole("group", { name: "Who practices" }).getByRole("button", { name });
  await who("Ilsabet").click();
  const table = page.getByRole("table", { name: /^Zeroings/ });
  await expect(table).toBeVisible();
  const choose = async () => {
    await page.getByText("Give or delete a zeroing").click();
    await page.getByRole("combobox", { name: "Zeroing", exact: true }).selectOption({ index: 1 });
  };
  await choose();
  await page.getByRole("combobox", { name: "Who dialed this zeroing" }).selectOption("Quorin");
  await page.getByRole("button", { name: "Give this zeroing to Quorin" }).click();
  await expect(page.getByText("The zeroing is now Quorin’s.")).toBeVisible();
  await expect(table).toHaveCount(0);
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(table).toBeVisible();
  await choose();
  await page.getByRole("button", { name: "Delete this zeroing" }).click();
  await expect(table).toHaveCount(0);
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(table).toBeVisible();
});
