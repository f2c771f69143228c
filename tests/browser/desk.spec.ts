import { readFile } from "node:fs/promises";
import type { Page } from "@playwright/test";
import { csvParse } from "d3-dsv";
import { sittingWrite } from "../../src/app/sittings/session/sittingLogbook";
import { demoLogbook } from "../../src/progress/demo/demoLogbook";
import { writeLogbookFile } from "../../src/records/file/logbookFile";
import { contentsOf, joinContents, type LogbookContents } from "../../src/records/logbookContents";
import { contentsOfWrites } from "../../src/store/logbookWrite";
import { keptRecord } from "../support/keptRecord";
import { NOON } from "../support/logbookRecords";
import { violations } from "./axe";
import { expect, test } from "./page";

const demo = demoLogbook(7, NOON);

/** One person's logbook, as that person would export it: nobody in it is invented. */
function logbookOf(name: string): LogbookContents {
  const person = demo.records.people.find((one) => one.name === name);
  if (person === undefined) throw new Error(`the demo has no ${name}`);
  const { records, traces } = contentsOf(new Set([person.id]), demo);
  const { isDemo: _, ...own } = person;
  return { records: { ...records, people: [own] }, traces };
}

const file = (name: string, text: string) => ({ name, mimeType: "application/json", buffer: Buffer.from(text) });
const exported = (name: string) => file(`${name}.json`, writeLogbookFile(logbookOf(name), NOON));

/** Mibsy's logbook, with a sitting that was passed. */
async function withSitting() {
  const mibsy = logbookOf("Mibsy");
  const sitting = sittingWrite(keptRecord(), mibsy.records.people[0]?.id ?? "", NOON);
  return file("Mibsy.json", writeLogbookFile(joinContents([mibsy, contentsOfWrites([sitting])]), NOON));
}

const add = (page: Page) => page.locator("input[type=file]");
const table = (page: Page) => page.getByRole("table", { name: "People by skills" });
const listed = (page: Page) => table(page).getByRole("rowheader").getByRole("button").allTextContents();

async function saved(page: Page, button: string): Promise<string> {
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: button }).click(),
  ]);
  return readFile(await download.path(), "utf8");
}

test("a class comes from many files: a bad one is named, the others are sorted, looked at and saved by keyboard", async ({
  page,
}) => {
  await page.goto("#/desk");
  await add(page).setInputFiles([
    await withSitting(),
    file("notes.json", '{"format":"recipes"}'),
    exported("Ondrell"),
    exported("Tavro"),
    { ...exported("Tavro"), name: "Tavro again.json" },
  ]);
  await expect(page.getByRole("alert", { name: "Files that were not read" })).toHaveText(
    /^notes\.json was not read\. This file is not a logbook: its "format" is not "gatefall-logbook"\.$/,
  );
  const shelf = page.getByRole("region", { name: "Logbooks of the class" });
  await expect(shelf).toContainText("4 logbooks: 3 trainees, 120 attempts, 98 jobs, 1 sitting.");
  await expect(shelf).toContainText(/records came in more than one file\. Each counts once/);
  await page.getByRole("button", { name: "Remove Tavro again.json" }).click();
  await expect(shelf).not.toContainText("more than one file");

  expect(await listed(page)).toEqual(["Mibsy", "Ondrell", "Tavro"]);
  const head = table(page).getByRole("columnheader", { name: "Three-wheel, open" });
  await head.getByRole("button").press("Enter");
  await expect(head).toHaveAttribute("aria-sort", "descending");
  expect(await listed(page)).toEqual(["Ondrell", "Tavro", "Mibsy"]);
  await head.getByRole("button").press("Space");
  await expect(head).toHaveAttribute("aria-sort", "ascending");
  expect(await listed(page)).toEqual(["Mibsy", "Tavro", "Ondrell"]);

  const cell = page.getByRole("button", { name: /Not ready yet.*More of Mibsy, Three-wheel, open/ });
  await cell.press("Enter");
  const details = page.getByRole("dialog", { name: "Mibsy" });
  await expect(details.getByRole("table", { name: "Faults in 20 attempts" })).toContainText("ran past");
  await expect(details.getByRole("table", { name: "Latest 10 of 20 attempts" }).getByRole("row")).toHaveCount(11);
  await expect(
    details.getByRole("row", { name: /A sheet .* not one of your sheets passed 0 0 sound, not all replayed$/ }),
  ).toBeVisible();
  // From one person to the next, with the same skill in view.
  await expect(details.getByRole("button", { name: "Previous person" })).toBeDisabled();
  await details.getByRole("button", { name: "Next person: Ondrell" }).press("Enter");
  const next = page.getByRole("dialog", { name: "Ondrell" });
  await expect(next.getByRole("combobox", { name: "Skill looked at" })).toHaveValue(/three-wheel/);
  await next.getByRole("button", { name: "Previous person: Mibsy" }).press("Enter");
  await expect(details).toBeVisible();
  await page.keyboard.press("Escape");
  await expect(cell).toBeFocused();

  const rows = csvParse(await saved(page, "Save the table as CSV"));
  // Three people at two locks by dialing, and at six kinds of jobs.
  expect(rows).toHaveLength(24);
  const ofOndrell = rows.filter(({ person, profile }) => person === "Ondrell" && profile === "three-wheel");
  expect(ofOndrell.find(({ exercise }) => exercise === "open")).toMatchObject({
    attempts: "20",
    ready: "1",
    ready_in_all: "1",
  });
});

test("the demo class comes and goes with one click; who is ready, and the gauge study", async ({ page }) => {
  await page.goto("#/desk");
  await page.getByRole("button", { name: "Load the demo class" }).click();
  const ready = page.getByRole("region", { name: "Who is ready", exact: true });
  await expect(ready).toContainText("A practice result is not a certificate.");
  await expect(ready.getByRole("listitem").filter({ hasText: "Three-wheel, open" })).toContainText(/Ready\s*Ondrell/);
  await page.getByRole("combobox", { name: "People shown" }).selectOption("ready");
  await expect(table(page).getByRole("row", { name: /^Ondrell/ })).toBeVisible();
  await expect(table(page).getByRole("row", { name: /^Jorrel/ })).toHaveCount(0);
  await page.getByRole("combobox", { name: "People shown" }).selectOption("everyone");
  await page.getByRole("checkbox", { name: "Dial-encoder lock, open" }).uncheck();
  await expect(table(page).getByRole("columnheader")).toHaveText([
    "Person",
    "All skills",
    ...["change", "fitting", "handover", "find what is wrong", "open", "service visit", "trouble"].map(
      (exercise) => `Three-wheel, ${exercise}`,
    ),
  ]);

  const gauge = page.getByRole("region", { name: "How much stops vary" });
  await gauge.getByText("How this is worked out").click();
  await expect(gauge).toContainText(/Distinct categories: \d/);
  await expect(gauge.getByRole("row", { name: /\(repeatability\)/ })).toBeVisible();
  await gauge.getByRole("combobox", { name: "Number studied" }).selectOption("2");
  await expect(gauge).toContainText("Choose all numbers to count categories.");
  const rows = csvParse(await saved(page, "Save the study as CSV"));
  expect(rows.map(({ source, numbers }) => `${source} ${numbers}`)).toContain("equipment 2");

  await page.getByRole("button", { name: "Remove the demo class" }).click();
  await expect(table(page)).toHaveCount(0);
  await expect(page.getByRole("button", { name: "Load the demo class" })).toBeVisible();
});

test("what ready means is the instructor's to choose, is told with its errors, and is remembered", {
  tag: "@long",
}, async ({ page }) => {
  await page.goto("#/desk");
  await page.getByRole("button", { name: "Load the demo class" }).click();
  const trust = page.getByRole("region", { name: "How far readiness can be trusted" });
  const ready = page.getByRole("region", { name: "Who is ready", exact: true });
  const open = ready.getByRole("listitem").filter({ hasText: "Three-wheel, open" });
  await expect(trust).toContainText("by mistake also 41 of 100 who miss 3 in 10");
  await expect(open).toContainText("3 of 6 ready");
  await trust.getByText("Change what ready means").click();
  await trust.getByLabel("At least").fill("20");
  await expect(trust).toContainText("by mistake also 39 of 100");
  await trust.getByLabel("At least").fill("20.5");
  await expect(trust).toContainText("Enter a whole number of attempts from 1 to 500.");
  await trust.getByLabel("At least").fill("200");
  await expect(trust).toContainText("after at least 200 attempts");
  await expect(open).toContainText("0 of 6 ready");
  await page.reload();
  await page.getByRole("button", { name: "Load the demo class" }).click();
  await expect(trust).toContainText("after at least 200 attempts");
  await trust.getByText("Change what ready means").click();
  await trust.getByRole("button", { name: "Back to the usual rule" }).click();
  await expect(open).toContainText("3 of 6 ready");
});

test("reading can be stopped; dropped files are taken; the logbook takes the class only when asked", async ({
  page,
}) => {
  let letReaderCome = () => {};
  const isWanted = new Promise<void>((resolve) => {
    letReaderCome = resolve;
  });
  await page.route("**/logbookReader.worker*", async (route) => {
    await isWanted;
    await route.continue().catch(() => undefined);
  });
  await page.goto("#/desk");
  await add(page).setInputFiles([exported("Tavro"), exported("Mibsy")]);
  await expect(page.getByText("Reading Tavro.json, file 1 of 2: opening the file.")).toBeVisible();
  await page.getByRole("button", { name: "Stop reading" }).click();
  await expect(page.getByRole("progressbar")).toHaveCount(0);
  await expect(table(page)).toHaveCount(0);
  letReaderCome();

  const dropped = await page.evaluateHandle(
    (text) => {
      const data = new DataTransfer();
      data.items.add(new File([text], "dropped.json"));
      return data;
    },
    writeLogbookFile(logbookOf("Tavro"), NOON),
  );
  await page.dispatchEvent("main", "dragover", { dataTransfer: dropped });
  await page.dispatchEvent("main", "drop", { dataTransfer: dropped });
  await expect(table(page).getByRole("row", { name: /^Tavro/ })).toBeVisible();

  await page.getByRole("link", { name: "Logbook" }).click();
  await expect(page.getByText(/^No one is in this logbook yet/)).toBeVisible();
  await page.getByRole("link", { name: "Class desk" }).click();
  await page.getByRole("button", { name: "Add to this logbook" }).click();
  await page.getByRole("button", { name: "Add them" }).click();
  await expect(page.getByText(/^Your logbook: \d+ records added\./)).toBeVisible();
  await page.getByRole("link", { name: "Logbook" }).click();
  await expect(page.getByRole("button", { name: "Tavro", exact: true })).toBeVisible();
});

test("axe finds nothing wrong, light on a desk or dark on a phone, where only tables scroll sideways", {
  tag: "@long",
}, async ({ page }) => {
  const look = async (what: string) => {
    for (const [width, height, colorScheme] of [
      [1280, 800, "light"],
      [390, 844, "dark"],
    ] as const) {
      await page.setViewportSize({ width, height });
      await page.emulateMedia({ colorScheme });
      expect(await violations(page), `${what}, ${colorScheme}, ${width} by ${height}`).toEqual([]);
      const overflow = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      expect(overflow, `${what}: nothing lies beside the page`).toBeLessThanOrEqual(0);
    }
  };
  await page.goto("#/desk");
  await expect(page.getByRole("button", { name: "Load the demo class" })).toBeVisible();
  await look("empty");
  await page.getByRole("button", { name: "Load the demo class" }).click();
  await add(page).setInputFiles([file("bad.json", "{")]);
  await expect(page.getByRole("alert")).toBeVisible();
  await look("a class");
  await page.setViewportSize({ width: 1280, height: 800 });
  const overprinted = await table(page)
    .locator("th, td")
    .evaluateAll((cells) =>
      cells.filter((cell) => cell.scrollWidth > cell.clientWidth + 1).map((one) => one.textContent),
    );
  expect(overprinted, "no cell writes over its neighbor").toEqual([]);
  await page.setViewportSize({ width: 390, height: 844 });
  const scrolled = page.getByRole("region", { name: /^People by skills/ });
  await scrolled.focus();
  await scrolled.press("ArrowRight");
  await expect.poll(() => scrolled.evaluate((element) => element.scrollLeft)).toBeGreaterThan(0);
  await table(page).getByRole("button", { name: "Pelline", exact: true }).click();
  await expect(page.getByRole("dialog").getByRole("table", { name: "Zeroings, latest first" })).toBeVisible();
  await look("a person");
});
