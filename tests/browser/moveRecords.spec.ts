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
