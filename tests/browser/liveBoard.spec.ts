import { LOOKS, look, violations } from "./axe";
import { openBoard } from "./boardPage";
import { expect, test } from "./classServer";
import { expectLateAndSigned, liveClass } from "./liveClass";

// A server of its own comes first, and a test that ends without network after its time.
test.setTimeout(150_000);

test("an instructor sees three benches live; a test that loses the network comes late, marked so and signed", async ({
  page,
  browser,
  classServer,
}) => {
  expectLateAndSigned(await liveClass(page, browser, classServer));
});

test("the board is worked by keys alone, and no look of it is hard to read", async ({ page }) => {
  await openBoard(page);
  const table = page.getByRole("table", { name: "Live board" });
  await expect(table.getByRole("rowheader")).toHaveText([/^Mibsy Rowe/, /^Tavro/, /^Bo Ellery/, /^Jorrel/, /^Ondrell/]);
  await table.getByRole("button", { name: "Watch Bo Ellery" }).press("Enter");
  await expect(page.locator(":focus")).toHaveText(/^Bo Ellery/);
  await expect(page.getByRole("region", { name: "What happened" })).toContainText("so far");
  for (const one of LOOKS) {
    await look(page, one);
    expect(await violations(page)).toEqual([]);
  }
});
