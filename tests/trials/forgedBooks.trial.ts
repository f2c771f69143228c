import type { Page } from "@playwright/test";
import type { Chance } from "../../src/statistics/chance";
import { exportedBook } from "./exportedBook";
import { copyOf, type Json, type Place, pick, putAt, valueAt } from "./tamper";
import type { Trial } from "./trial";
import { TrialBrowser } from "./trialPage";

/*
 * One field beside a record of a genuine export is changed, and the export is brought to the class desk and imported into
 * a logbook on the page. The desk must say that something does not fit, and the logbook shows of the sitting what its
 * record says, as if nothing had been changed.
 */

interface Forgery {
  readonly at: Place;
  /** Another value that somebody would gain by; undefined where there is none. */
  readonly put: (before: Json) => Json | undefined;
  /** Whether it is a field that the list of sittings shows. */
  readonly isListed: boolean;
}

const OTHER_NAME = "Quibble";
const OTHER_TITLE = "The hard sheet";
const DAYS = 3 * 86_400_000;

const ofSitting = (key: string, put: Forgery["put"]): Forgery => ({ at: ["sittings", 0, key], put, isListed: true });
const ofAttempt = (k: number, key: string, put: Forgery["put"]): Forgery => ({
  at: ["attempts", k, key],
  put,
  isListed: false,
});

const FORGERIES: readonly Forgery[] = [
  ofSitting("verdict", (is) => (is === "passed" ? "failed" : "passed")),
  ofSitting("title", () => OTHER_TITLE),
  ofSitting("startedAt", (is) => Number(is) + DAYS),
  { at: ["people", 0, "name"], put: () => OTHER_NAME, isListed: false },
  ...[0, 1, 2, 3].map((k) => ofAttempt(k, "opened", (is) => (is === false ? true : undefined))),
  ...[0, 1, 2, 3].map((k) => ofAttempt(k, "duration_ms", (is) => Math.round(Number(is) / 2))),
];

const fileOf = (book: Json) => ({
  name: "class.json",
  mimeType: "application/json",
  buffer: Buffer.from(JSON.stringify(book)),
});

/** What the desk says of an export, all of it. */
async function atTheDesk(page: Page, book: Json): Promise<string> {
  await page.goto("#/desk");
  await page.locator("input[type=file]").setInputFiles(fileOf(book));
  await page.getByRole("table", { name: "People by skills" }).waitFor();
  await page
    .getByText(/; record \w/)
    .first()
    .waitFor();
  return (await page.getByRole("main").allTextContents()).join();
}

/** What the logbook lists of the sitting once the export is in it. */
async function inTheLogbook(page: Page, book: Json): Promise<string> {
  await page.goto("#/logbook?view=files");
  await page.locator("main input[type=file]").setInputFiles(fileOf(book));
  await page
    .getByText(/records added/)
    .first()
    .waitFor();
  await page.goto("#/logbook?view=sittings");
  const rows = page.getByRole("table", { name: "Sittings, latest first" }).locator("tbody tr");
  await rows.first().waitFor();
  return (await rows.allTextContents()).join(" | ");
}

/** What the desk says where something does not fit. */
const NAMED = /differs from its file|fails its check|attempts? of [^:]* left out:/;

/** @returns what went unnoticed, or null */
async function round(browser: TrialBrowser, chance: Chance): Promise<string | null> {
  const genuine = await exportedBook(chance);
  const sound = await atTheDesk(await browser.fresh("#/desk"), genuine);
  if (NAMED.test(sound)) return `a genuine export does not fit: ${NAMED.exec(sound)?.[0]}`;
  const forged = copyOf(genuine);
  const { at, put, isListed } = pick(
    chance,
    FORGERIES.filter((one) => one.put(valueAt(genuine, one.at)) !== undefined),
  );
  const [before, after] = [valueAt(genuine, at), put(valueAt(genuine, at))];
  // Of a miss no time counts.
  if (at[2] === "duration_ms" && valueAt(genuine, ["attempts", at[1] ?? 0, "opened"]) === false) return null;
  putAt(forged, at, after);
  const change = `${at.join(".")}: ${JSON.stringify(before)} -> ${JSON.stringify(after)}`;
  const told = await atTheDesk(await browser.fresh("#/desk"), forged);
  if (!NAMED.test(told)) return `${change} is not named at the desk: ${told.slice(0, 600)}`;
  if (!isListed) return browser.uncaught[0] ?? null;
  const listed = await inTheLogbook(await browser.fresh("#/logbook"), genuine);
  const listedForged = await inTheLogbook(await browser.fresh("#/logbook"), forged);
  if (listed !== listedForged) return `${change} shows in the logbook: ${listed} became ${listedForged}`;
  return browser.uncaught[0] ?? null;
}

export const trial: Trial = {
  name: "exports forged beside their records, at the desk and in the logbook",
  run: async ({ chance, address, hasTime, pass, fail }) => {
    const browser = await TrialBrowser.launch(address);
    for (let number = 1; number === 1 || hasTime(); number++) {
      const unnoticed = await round(browser, chance).catch((error) => String(error).slice(0, 600));
      if (unnoticed === null) pass();
      else fail(`round ${number}: ${unnoticed}`);
    }
    await browser.close();
  },
};
