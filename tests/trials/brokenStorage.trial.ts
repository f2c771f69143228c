import type { Page } from "@playwright/test";
import type { Chance } from "../../src/statistics/chance";
import { Bench } from "../browser/bench";
import { dialLast } from "../browser/sittingByKeys";
import { storedRows } from "../browser/storedRows";
import { pick } from "./tamper";
import type { Trial } from "./trial";
import { TrialBrowser } from "./trialPage";

/*
 * The storage breaks while somebody practices. After every attempt the database has it, or the bench says that it is
 * not saved; and once the storage is well again, the next page stores what waited.
 */

/** How a storage breaks, run in the page. */
type Break = (page: Page, chance: Chance) => Promise<void>;

/** Some writes find no room. */
const fullAtTimes: Break = async (page, chance) => {
  const often = chance();
  const fails = Array.from({ length: 97 }, () => chance() < often);
  await page.evaluate((willFail) => {
    const put = IDBObjectStore.prototype.put;
    let count = 0;
    IDBObjectStore.prototype.put = function (...asked) {
      count += 1;
      if (willFail[count % willFail.length] === true)
        throw new DOMException("The quota has been exceeded.", "QuotaExceededError");
      return put.apply(this, asked);
    };
  }, fails);
};

/** Another tab empties the storage. */
const deleted: Break = async (page) => {
  await page.evaluate(
    () =>
      new Promise<void>((done) => {
        const asked = indexedDB.deleteDatabase("gatefall-logbook");
        asked.onsuccess = () => done();
        asked.onblocked = () => done();
        localStorage.clear();
      }),
  );
};

/** A later version in another tab takes the database to a higher number. */
const upgraded: Break = async (page) => {
  await page.evaluate(
    () =>
      new Promise<void>((done) => {
        const asked = indexedDB.open("gatefall-logbook", 9999);
        asked.onsuccess = () => {
          asked.result.close();
          done();
        };
        asked.onblocked = () => done();
      }),
  );
};

/** Transactions never begin. */
const silent: Break = async (page) => {
  await page.evaluate(() => {
    const put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = function (...asked) {
      const request = put.apply(this, asked);
      request.addEventListener("success", (event) => event.stopImmediatePropagation(), { capture: true });
      Object.defineProperty(request, "onsuccess", { set: () => undefined });
      return request;
    };
  });
};

/** Somebody sets the clock. */
const clockSet: Break = async (page, chance) => {
  await page.evaluate(
    (by) => {
      const now = Date.now.bind(Date);
      Date.now = () => now() + by;
    },
    Math.round(7_200_000 * (chance() - 0.5)),
  );
};

const BREAKS: Readonly<Record<string, Break>> = { fullAtTimes, deleted, upgraded, silent, clockSet };

const openings = async (page: Page) =>
  (await storedRows(page, "attempts")).filter(({ isUnfinished }) => isUnfinished !== true).length;

/** Longest until it is stored or said, milliseconds. */
const AT_ONCE = 12_000;

/** Waits until there are as many attempts as were made, or the bench says what is not saved. */
async function isStoredOrSaid(page: Page, made: number): Promise<boolean> {
  const saving = page.getByRole("complementary", { name: "Saving" });
  const began = performance.now();
  while (performance.now() - began < AT_ONCE) {
    const told = await saving.allTextContents();
    if (/Not saved|does not answer|another tab|later version/.test(told.join())) return true;
    if ((await openings(page)) >= made) return true;
    await page.waitForTimeout(100);
  }
  return false;
}

async function round(browser: TrialBrowser, kind: string, chance: Chance): Promise<string | null> {
  const page = await browser.fresh("#/bench?seed=5");
  const bench = new Bench(page);
  const before = Math.floor(2 * chance());
  for (let k = 0; k < before; k++) {
    await dialLast(page);
    await page.keyboard.press("r");
  }
  if (!(await isStoredOrSaid(page, before))) return `${before} attempts before are not stored`;
  await BREAKS[kind]?.(page, chance);
  // An emptied storage has none of those before.
  const still = await openings(page);
  await dialLast(page);
  if (!/^Opened/.test((await bench.state.textContent()) ?? "")) return "the bench did not open";
  if (!(await isStoredOrSaid(page, still + 1))) return "an attempt is not stored, and nothing says so";
  if (kind === "upgraded") return null;
  await page.reload();
  const began = performance.now();
  while ((await openings(page)) < still + 1) {
    if (performance.now() - began > AT_ONCE)
      return `the storage is well again, and what waited is not stored: ${(await page.getByRole("complementary", { name: "Saving" }).allTextContents()).join()} ${JSON.stringify(await storedRows(page, "attempts")).slice(0, 300)}`;
    await page.waitForTimeout(100);
  }
  return browser.uncaught[0] ?? null;
}

export const trial: Trial = {
  name: "storage that breaks",
  run: async ({ chance, address, hasTime, pass, fail }) => {
    const browser = await TrialBrowser.launch(address);
    const kinds = Object.keys(BREAKS);
    for (let number = 0; number === 0 || hasTime(); number++) {
      const kind = number < kinds.length ? (kinds[number] ?? "") : pick(chance, kinds);
      const misfit = await round(browser, kind, chance).catch((error) => String(error).slice(0, 400));
      if (misfit === null) pass();
      else fail(`round ${number + 1}, ${kind}: ${misfit}`);
    }
    await browser.close();
  },
};
