import { expect, test } from "../page";
import { dialLast } from "../sittingByKeys";
import { storedRows } from "../storedRows";

test("a person who was merged away stays away, whatever a second open tab still has in hand", async ({
  page,
  context,
}) => {
  await page.goto("#/logbook");
  for (const name of ["Quorin", "Ilsabet"]) {
    await page.getByRole("button", { name: "Add a person" }).click();
    await page.getByRole("textbox", { name: /^Name/ }).fill(name);
    await page.keyboard.press("Enter");
  }
  await expect.poll(() => storedRows(page, "people")).toHaveLength(2);
  const other = await context.newPage();
  await other.goto("#/bench?seed=5");
  await dialLast(other);
  await expect.poll(() => storedRows(page, "attempts")).toHaveLength(1);

  await page.getByRole("button", { name: "Merge Ilsabet" }).click();
  await page.getByRole("button", { name: "Give all of Ilsabet’s records to Quorin" }).click();
  await expect.poll(() => storedRows(page, "people")).toMatchObject([{ name: "Quorin" }]);

  await other.keyboard.press("r");
  await dialLast(other);
  await expect.poll(() => storedRows(page, "attempts")).toHaveLength(2);
  expect((await storedRows(page, "people")).map(({ name }) => name)).toEqual(["Quorin"]);
  const [quorin] = await storedRows(page, "people");
  expect((await storedRows(page, "attempts")).map(({ personId }) => personId)).toEqual([quorin?.id, quorin?.id]);
});
