import type { Page } from "@playwright/test";
import { sheetFromLink, sheetToLink } from "../../src/drill/sheet/sheetLink";
import { SHIPPED_SHEETS } from "../../src/drill/sheet/shippedSheets";
import { LOOKS, look, violations } from "./axe";
import { expect, test } from "./page";

const heading = (page: Page) => page.getByRole("heading", { level: 1 });

async function openShelf(page: Page): Promise<void> {
  await page.goto("#/sheets");
  await expect(heading(page)).toHaveText("Drill sheets");
  await expect(page.getByText("You have no sheets yet.")).toBeVisible();
}

async function openCopy(page: Page, title: string): Promise<void> {
  await openShelf(page);
  await page.getByRole("button", { name: `Copy: ${title}` }).click();
  await expect(heading(page)).toHaveText("Edit a drill sheet");
}

/** Names of the stations in their order. */
const stationNames = (page: Page) => page.locator("[data-station] [aria-expanded] > span:first-child");

/** Goes on by Tab until the focused thing has this name. */
async function tabTo(page: Page, name: RegExp): Promise<void> {
  for (let k = 0; k < 90; k++) {
    await page.keyboard.press("Tab");
    const label = await page.evaluate(() => {
      const { activeElement: at } = document;
      const own = at instanceof HTMLInputElement || at instanceof HTMLTextAreaElement ? at.labels?.[0] : at;
      return at?.getAttribute("aria-label") ?? own?.textContent ?? "";
    });
    if (name.test(label.trim())) return;
  }
  throw new Error(`Tab never comes to ${name}`);
}

test("a sheet is built by keyboard alone, and is there after a reload", async ({ page }) => {
  await openShelf(page);
  await tabTo(page, /^New sheet$/);
  await page.keyboard.press("Enter");
  await expect(heading(page)).toBeFocused();
  await tabTo(page, /^Title$/);
  await page.keyboard.press("ControlOrMeta+a");
  await page.keyboard.type("Monday drill");
  await tabTo(page, /^Purpose$/);
  await page.keyboard.press("ControlOrMeta+a");
  await page.keyboard.type("Stop on the last one.");
  await tabTo(page, /^1 Dial the combination/);
  await page.keyboard.press("Enter");
  await tabTo(page, /^Tries$/);
  await page.keyboard.press("ControlOrMeta+a");
  await page.keyboard.type("7");
  await tabTo(page, /^Add zeroing$/);
  await page.keyboard.press("Enter");
  await expect(page.getByRole("button", { name: /^2 Set the zero/ })).toBeFocused();
  await expect(page.getByRole("article")).toContainText("Tries 1 to 7 Dial the combination");
  await expect(page.getByText("Saved in this browser.")).toBeVisible();
  await page.reload();
  await expect(page.getByRole("article")).toContainText("Tries 8 to 9 Set the zero");
  await page.goto("#/sheets");
  await expect(page.getByRole("link", { name: "Monday drill" })).toBeVisible();
});

test("the editor says what each rule for a real dial means, and asks for none where only the screen may turn", async ({
  page,
}) => {
  await openCopy(page, "Friday sitting");
  await page.locator("[data-act=toggle]").first().click();
  const turnedBy = page.getByLabel("What may turn the dial");
  const lostHand = page.getByLabel("If a device loses the hand");
  await expect(turnedBy).toHaveValue("not-coarse");
  await expect(turnedBy).toHaveAccessibleDescription(/half a graduation or more/);
  await expect(lostHand).toHaveValue("try-again");
  await expect(lostHand).toHaveAccessibleDescription(/the same numbers from another start, at most 2 times/);
  await lostHand.selectOption("The try does not count as right");
  await expect(lostHand).toHaveAccessibleDescription(/no other try for it/);
  await turnedBy.selectOption("A real dial only");
  await expect(turnedBy).toHaveAccessibleDescription(/A printed or ordinary dial before a camera/);
  await expect(page.getByRole("article")).toContainText("a real dial only");
  await turnedBy.selectOption("The screen only");
  await expect(lostHand).toBeHidden();
});

test("stations are moved by keyboard; the focus stays and the place is told", async ({ page }) => {
  await openCopy(page, "Friday sitting");
  const down = page.getByRole("button", { name: "Move down: Three wheels" });
  await down.focus();
  await page.keyboard.press("Enter");
  await expect(page.getByRole("status").filter({ hasText: "moved" })).toHaveText(
    "Three wheels is moved to place 2 of 3.",
  );
  await expect(down).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(stationNames(page)).toHaveText(["1 An encoder lock", "2 Zero from both directions", "3 Three wheels"]);
  await expect(down).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(page.getByText("Three wheels is last already.")).toBeAttached();
  await page.keyboard.press("ControlOrMeta+z");
  await expect(stationNames(page)).toHaveText(["1 An encoder lock", "2 Three wheels", "3 Zero from both directions"]);
});

test("stations are moved by drag, and Escape lets go", async ({ page }) => {
  await openCopy(page, "Friday sitting");
  const handles = page.locator("[data-handle]");
  const carry = async (from: number, to: number) => {
    await handles.nth(0).scrollIntoViewIfNeeded();
    const [start, end] = [await handles.nth(from).boundingBox(), await handles.nth(to).boundingBox()];
    if (start === null || end === null) throw new Error("a handle is not drawn");
    await page.mouse.move(start.x + 10, start.y + 10);
    await page.mouse.down();
    await page.mouse.move(end.x + 10, end.y + end.height + 12, { steps: 8 });
  };
  await carry(0, 1);
  await page.keyboard.press("Escape");
  await page.mouse.up();
  await expect(stationNames(page).first()).toHaveText("1 Three wheels");
  await carry(0, 1);
  await page.mouse.up();
  await expect(stationNames(page)).toHaveText(["1 An encoder lock", "2 Three wheels", "3 Zero from both directions"]);
});

test("stations are moved by finger", async ({ page }) => {
  await openCopy(page, "Friday sitting");
  const handle = page.locator("[data-handle]");
  await handle.nth(2).scrollIntoViewIfNeeded();
  const [start, end] = [await handle.nth(2).boundingBox(), await handle.nth(0).boundingBox()];
  if (start === null || end === null) throw new Error("a handle is not drawn");
  const finger = await page.context().newCDPSession(page);
  const touch = (type: "touchStart" | "touchMove" | "touchEnd", y: number) =>
    finger.send("Input.dispatchTouchEvent", { type, touchPoints: type === "touchEnd" ? [] : [{ x: start.x + 12, y }] });
  await touch("touchStart", start.y + 10);
  for (let k = 1; k <= 10; k++) await touch("touchMove", start.y + ((end.y - 8 - start.y) * k) / 10);
  await touch("touchEnd", 0);
  await expect(stationNames(page)).toHaveText(["1 Zero from both directions", "2 Three wheels", "3 An encoder lock"]);
});

test("undo and redo go through typing, adding and removing, by button and by key", async ({ page }) => {
  await openCopy(page, "Past it");
  const title = page.getByRole("textbox", { name: "Title", exact: true });
  await title.fill("Mine");
  await page.getByRole("button", { name: "Add dialing" }).click();
  await page.getByRole("button", { name: "Remove: Dial the combination" }).click();
  await expect(stationNames(page)).toHaveCount(1);
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(stationNames(page)).toHaveCount(2);
  await page.keyboard.press("ControlOrMeta+z");
  await page.keyboard.press("ControlOrMeta+z");
  await expect(title).toHaveValue("Copy of Past it");
  await page.keyboard.press("ControlOrMeta+Shift+z");
  await expect(title).toHaveValue("Mine");
  await page.getByRole("button", { name: "Redo" }).click();
  await expect(stationNames(page)).toHaveCount(2);
});

test("what is wrong is shown beside its field, and the sheet cannot be passed on until it is fixed", async ({
  page,
}) => {
  await openCopy(page, "Past it");
  await page.getByRole("button", { name: /^1 / }).click();
  const tries = page.getByRole("textbox", { name: "Tries", exact: true });
  await tries.fill("0");
  await expect(tries).toHaveAccessibleDescription("Must be a whole number from 1 to 200, not 0.");
  await expect(page.getByRole("link", { name: "Sit this sheet" })).toBeHidden();
  await tries.fill("3");
  await expect(page.getByRole("link", { name: "Sit this sheet" })).toHaveAttribute("href", /^#\/sittings\?sheet=s1\./);
  await page.getByRole("combobox", { name: "Combinations" }).selectOption("fixed");
  await page.getByRole("textbox", { name: /^Combinations, one a line/ }).fill("10-40-70");
  await expect(page.getByText("10-40-70: ").first()).toBeVisible();
});

test("rules of the sheet's own tell how many combinations they leave, and when there is none", async ({ page }) => {
  await openCopy(page, "Past it");
  await page.getByRole("button", { name: /^1 / }).click();
  const combinations = page.getByRole("combobox", { name: "Combinations" });
  await combinations.selectOption("own-rules");
  await expect(page.getByText(/^The rules leave [\d,]+ combinations\.$/)).toBeVisible();
  await page.getByRole("textbox", { name: "Least distance between numbers" }).fill("60");
  await expect(combinations).toHaveAccessibleDescription(/leave no combination/);
});

test("a link carries the whole sheet, changes nothing here, and is kept only when asked", async ({ page, context }) => {
  await openCopy(page, "Where is zero");
  await page.getByRole("button", { name: "Link and QR code" }).click();
  const address = await page.getByRole("textbox", { name: "Link that contains the sheet" }).inputValue();
  await expect(
    page.getByRole("img", { name: "QR code of the link that opens the sheet “Copy of Where is zero”" }),
  ).toBeVisible();
  const carried = sheetFromLink(new URL(address).hash.split("sheet=")[1] ?? "");
  expect(carried.stations).toEqual(SHIPPED_SHEETS.find(({ title }) => title === "Where is zero")?.stations);

  const other = await context.newPage();
  await other.goto(address);
  await expect(other.getByRole("article")).toContainText("Copy of Where is zero");
  await other.goto("#/sheets");
  await expect(other.getByRole("link", { name: "Copy of Where is zero" })).toHaveCount(1);
  await other.goto(address);
  await expect(other.getByText("You already have a sheet that asks the same:")).toContainText("Copy of Where is zero");
  await other.getByRole("button", { name: "Save this sheet" }).click();
  await expect(heading(other)).toHaveText("Edit a drill sheet");
  await other.goto("#/sheets");
  await expect(other.getByRole("link", { name: "Copy of Where is zero" })).toHaveCount(2);
});

test("a damaged link and a bad file get a sentence, a good file is taken", async ({ page }) => {
  await page.goto("#/sheets?sheet=s1.AAAA");
  await expect(page.getByRole("alert")).toHaveText(/^The sheet in this link cannot be opened: /);
  await openShelf(page);
  const load = (text: string) =>
    page
      .getByLabel("Load a file")
      .setInputFiles({ name: "mine.json", mimeType: "application/json", buffer: Buffer.from(text) });
  await load("{");
  await expect(page.getByRole("alert")).toHaveText("mine.json was not loaded: it is not JSON. Nothing was changed.");
  const [sheet] = SHIPPED_SHEETS;
  await load(JSON.stringify({ ...sheet, order: "sideways" }));
  await expect(page.getByRole("alert")).toHaveText(/^mine\.json was not loaded: order must be "blocked"/);
  await load(JSON.stringify(sheet));
  await expect(page.getByRole("textbox", { name: "Title", exact: true })).toHaveValue(sheet?.title ?? "");
});

test("the saved file holds the sheet", async ({ page }) => {
  await page.goto("#/sheets?sample=2");
  const waiting = page.waitForEvent("download");
  await page.getByRole("link", { name: "Save as a file" }).click();
  const file = await waiting;
  expect(file.suggestedFilename()).toMatch(/^gatefall-sheet-Three-not-four-\d{4}-\d\d-\d\d-\d{4}\.json$/);
});

test("a sheet is deleted and brought back", async ({ page }) => {
  await openCopy(page, "Past it");
  await page.getByRole("link", { name: "All sheets" }).click();
  await page.getByRole("button", { name: "Delete: Copy of Past it" }).click();
  const undo = page.getByRole("button", { name: "Undo" });
  await expect(undo).toBeFocused();
  await undo.press("Enter");
  await expect(page.getByRole("link", { name: "Copy of Past it" })).toBeVisible();
  await page.reload();
  await expect(page.getByRole("link", { name: "Copy of Past it" })).toBeVisible();
});

test("without a database it works on and says so", async ({ page }) => {
  await page.addInitScript(() => Object.defineProperty(globalThis, "indexedDB", { value: undefined }));
  await openShelf(page);
  await expect(page.getByText(/does not let the page store anything/)).toBeVisible();
  await page.getByRole("button", { name: "New sheet" }).click();
  await page.getByRole("textbox", { name: "Title", exact: true }).fill("In memory");
  await page.getByRole("link", { name: "All sheets" }).click();
  await expect(page.getByRole("link", { name: "In memory" })).toBeVisible();
});

test("it prints as one page: the sheet, with its fingerprint, and nothing else", async ({ page }) => {
  await openCopy(page, "Friday sitting");
  await page.emulateMedia({ media: "print" });
  await expect(page.getByRole("article")).toBeVisible();
  // This page runs on this machine alone: its code would open nothing elsewhere.
  await expect(page.getByRole("img", { name: /^QR code/ })).toHaveCount(0);
  await expect(page.getByRole("article")).toContainText(/Fingerprint of this sheet: [0-9A-F]{4}-[0-9A-F]{4}/);
  await expect(page.getByRole("button", { name: "Answer key, for the instructor" })).toBeHidden();
  await expect(page.getByRole("navigation")).toBeHidden();
  await expect(page.getByRole("button", { name: "Print" })).toBeHidden();
  await expect(page.getByRole("textbox", { name: "Purpose" })).toBeHidden();
  const printed = (await page.pdf({ format: "A4" })).toString("latin1");
  expect(printed.match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
});

test("a link of a page on this machine alone says that it works only here", async ({ page }) => {
  await openCopy(page, "Past it");
  await page.getByRole("button", { name: "Link and QR code" }).click();
  await expect(page.getByRole("note")).toHaveText(/works? only here/);
});

test("the answer key opens behind a step that says what it shows, and closes again", async ({ page }) => {
  await page.goto("#/sheets?sample=13");
  await expect(page.getByRole("table", { name: "All tries" })).toHaveCount(0);
  const opener = page.getByRole("button", { name: "Answer key, for the instructor" });
  await opener.click();
  await expect(page.getByText(/every try with its combination/)).toBeVisible();
  await expect(page.getByRole("region", { name: "Answer key" })).toHaveCount(0);
  await page.getByRole("button", { name: "Show the answer key" }).click();
  await expect(page.getByRole("region", { name: "Answer key" })).toContainText("drawn from");
  await page.getByRole("button", { name: "Hide the answer key" }).click();
  await expect(opener).toBeFocused();
});

test("defects are chosen from a list by their names, times are typed as a clock shows them, rates in percent", async ({
  page,
}) => {
  await openCopy(page, "Friday sitting");
  await page.locator("[data-act=toggle]").first().click();
  const limit = page.getByRole("textbox", { name: /^Time limit of a try/ });
  await expect(limit).toHaveValue("2:00");
  await limit.fill("1:30");
  await expect(page.getByRole("article")).toContainText("at most 90 s for a try");
  await limit.fill("1:3");
  await expect(limit).toHaveAccessibleDescription(
    /Must be a number of seconds from 1 to 36000; what is typed is not a number/,
  );
  await limit.fill("2 min");
  const claim = page.getByRole("checkbox", { name: "The tries must show a rate of opening" });
  if (!(await claim.isChecked())) await claim.check();
  const rate = page.getByRole("textbox", { name: "Rate of opening to show, %" });
  await rate.fill("40");
  await expect(rate).toHaveAccessibleDescription(/Must be from 50 to 99.9 %/);
  await rate.fill("95 %");
  await expect(page.getByText(/Cannot be reached: 22 of 22 do not show 95 %/).first()).toBeVisible();
  await page.getByRole("button", { name: "Add a hidden defect" }).click();
  await page.getByRole("checkbox", { name: /^Lost motion/ }).check();
  await expect(page.getByRole("article")).toContainText("one hidden defect in each try");
});

test("full help in a test is called unusual beside its field", async ({ page }) => {
  await openCopy(page, "Friday sitting");
  await page.locator("[data-act=toggle]").first().click();
  const help = page.getByRole("combobox", { name: "Help" });
  await help.selectOption("full");
  await expect(help).toHaveAccessibleDescription(/^Full help in a test is unusual/);
});

test("a distance that the dial has no room for is a sentence, and the sheet opens again after it", async ({ page }) => {
  await openCopy(page, "Past it");
  await page.getByRole("button", { name: /^1 / }).click();
  await page.getByRole("combobox", { name: "Combinations" }).selectOption("own-rules");
  await page.getByRole("checkbox", { name: /the shorter way round/ }).check();
  await page.getByRole("textbox", { name: /^Least distance between numbers/ }).fill("105");
  await expect(page.getByRole("combobox", { name: "Combinations" })).toHaveAccessibleDescription(
    /leave no combination/,
  );
  await expect(page.getByText("Saved in this browser.")).toBeVisible();
  await page.reload();
  await expect(heading(page)).toHaveText("Edit a drill sheet");
});

const MOMENTS: readonly { readonly name: string; readonly reach: (page: Page) => Promise<void> }[] = [
  { name: "the shelf", reach: openShelf },
  {
    name: "the shelf after a deletion",
    reach: async (page) => {
      await openCopy(page, "Past it");
      await page.getByRole("link", { name: "All sheets" }).click();
      await page.getByRole("button", { name: "Delete: Copy of Past it" }).click();
    },
  },
  {
    name: "a sheet that came by link, all tries shown",
    reach: async (page) => {
      const sheet = SHIPPED_SHEETS.find(({ title }) => title === "Service round");
      if (sheet === undefined) throw new Error("no sheet is shipped");
      await page.goto(`#/sheets?sheet=${sheetToLink(sheet)}`);
      await page.getByRole("button", { name: "Answer key, for the instructor" }).click();
      await page.getByRole("button", { name: "Show the answer key" }).click();
    },
  },
  {
    name: "the editor with both kinds of station open and something to fix",
    reach: async (page) => {
      await openCopy(page, "Friday sitting");
      for (const k of [0, 2]) await page.locator("[data-act=toggle]").nth(k).click();
      await page.getByRole("textbox", { name: "Tries", exact: true }).first().fill("0");
    },
  },
  {
    name: "the link and its code",
    reach: async (page) => {
      await openCopy(page, "Past it");
      await page.getByRole("button", { name: "Link and QR code" }).click();
      await expect(page.getByRole("img", { name: /^QR code/ })).toBeVisible();
    },
  },
];

for (const { name, reach } of MOMENTS) {
  for (const one of LOOKS) {
    const tag = one.colorScheme === "dark" ? [] : ["@long"];
    test(`axe finds nothing wrong: ${name}, ${one.name}`, { tag }, async ({ page }) => {
      await look(page, one);
      await reach(page);
      expect(await violations(page)).toEqual([]);
      const isWide = await page.evaluate(() => document.documentElement.scrollWidth > innerWidth);
      expect(isWide, "nothing is cut off").toBe(false);
    });
  }
}
