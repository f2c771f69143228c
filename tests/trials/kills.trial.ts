import { join } from "node:path";
import { expect, type Page } from "@playwright/test";
import type { Sheet } from "../../src/drill/sheet/sheet";
import type { Chance } from "../../src/statistics/chance";
import { KillableBrowser } from "../browser/killableBrowser";
import { dialLast, start, verdict } from "../browser/sittingByKeys";
import { dialingStation, testSheet } from "../support/testSheet";
import type { Trial } from "./trial";

/*
 * A sitting of three tries, its browser killed at a random moment of it and once more after its end, with the text that
 * the page kept put back to any earlier one: a killed browser loses up to a minute of those. Whatever the database said
 * was over must stay as it was, and what comes of the sitting must follow from its tries.
 */

/** Letters of an error that are told. */
const LONGEST = 400;
const MOST_ROUNDS = 40;
const TRIES = 3;
/** A miss: past the second number by this much, graduations. */
const PAST = 4;

const SHEET: Sheet = testSheet({
  title: "To be killed",
  stations: [dialingStation({ repetitions: TRIES, passMarks: { firstTime: TRIES } })],
  sitting: { pauseAllowed: true, onReload: "resume", clockHideable: true },
});

interface Row {
  readonly id: string;
  readonly state?: string;
  readonly isUnfinished?: boolean;
}

/** Runs in the page: what its database holds of sittings and attempts. */
async function rowsOf(): Promise<Row[]> {
  const opening = indexedDB.open("gatefall-logbook");
  const database = await new Promise<IDBDatabase>((done) => {
    opening.onsuccess = () => done(opening.result);
  });
  const rows: Row[] = [];
  for (const table of ["sittings", "attempts"]) {
    if (!database.objectStoreNames.contains(table)) continue;
    const reading = database.transaction(table).objectStore(table).getAll();
    rows.push(
      ...(await new Promise<Row[]>((done) => {
        reading.onsuccess = () => done(reading.result);
      })),
    );
  }
  database.close();
  return rows;
}

const isRunning = ({ state }: Row) => state === "running";
const hasEnded = ({ state, isUnfinished }: Row) => state !== "running" && isUnfinished !== true;

/** Whatever had ended is there unchanged. @returns what is not, or null */
function changed(before: readonly Row[], after: readonly Row[], when: string): string | null {
  for (const row of before.filter(hasEnded)) {
    const now = after.find(({ id }) => id === row.id);
    if (JSON.stringify(now) !== JSON.stringify(row)) {
      return `${when}: ${JSON.stringify(row).slice(0, 300)} became ${JSON.stringify(now ?? null).slice(0, 300)}`;
    }
  }
  return null;
}

/** One sitting under attack. */
class KilledSitting {
  private readonly browser: KillableBrowser;
  private readonly chance: Chance;
  /** Texts that the page has kept so far, oldest first. */
  private readonly texts: string[] = [];
  private seen: readonly Row[] = [];

  constructor(browser: KillableBrowser, chance: Chance) {
    this.browser = browser;
    this.chance = chance;
  }

  /** @returns what did not hold, or null */
  async run(): Promise<string | null> {
    const page = await this.browser.open("#/bench");
    await start(page, SHEET);
    await this.sitUntilKilled(page);
    const again = await this.reopen();
    const atOnce = changed(this.seen, await again.evaluate(rowsOf), "after the first kill");
    if (atOnce !== null) return atOnce;
    const misfit = await this.sitToItsEnd(again);
    if (misfit !== null) return misfit;
    await expect.poll(async () => (await again.evaluate(rowsOf)).filter(isRunning), { timeout: 20_000 }).toEqual([]);
    await this.note(again);
    await this.browser.kill();
    const last = await this.reopen();
    await last.goto("#/sittings");
    await expect(last.getByRole("main")).toContainText(/Choose a sheet|passed\.|Passed\./, { timeout: 20_000 });
    if ((await last.getByRole("button", { name: /^Go on/ }).count()) > 0) return "an ended sitting is offered to go on";
    return changed(this.seen, await last.evaluate(rowsOf), "after the second kill");
  }

  /** Dials tries, right or wrong, until the moment of the kill comes in the middle of one. */
  private async sitUntilKilled(page: Page): Promise<void> {
    const fatal = Math.floor(this.chance() * TRIES);
    for (let index = 0; index < fatal; index++) {
      await this.dial(page);
      await this.note(page);
      await page.keyboard.press("Enter");
    }
    const dialing = this.dial(page).catch(() => undefined);
    await page.waitForTimeout(2500 * this.chance());
    await this.note(page).catch(() => undefined);
    await this.browser.kill();
    await dialing;
  }

  /** Goes on where it can, dials what is left, and judges what came of it. */
  private async sitToItsEnd(page: Page): Promise<string | null> {
    await page.goto("#/sittings");
    const main = page.getByRole("main");
    await expect(main).toContainText(/Choose a sheet|Go on|assed\./, { timeout: 20_000 });
    const revived = changed(this.seen, await page.evaluate(rowsOf), "after the sittings were asked for");
    if (revived !== null) return revived;
    await this.note(page);
    if (!(await main.textContent())?.includes("Go on")) return null;
    await page.getByRole("button", { name: /^Go on/ }).click();
    // The try that the kill took may have been the last.
    await expect(verdict(page).or(page.getByRole("slider", { name: "Dial" }))).toBeVisible({ timeout: 20_000 });
    for (let index = 0; index < TRIES && (await verdict(page).count()) === 0; index++) {
      await this.dial(page);
      if ((await verdict(page).count()) > 0) break;
      await this.note(page);
      await page.keyboard.press("Enter");
    }
    await expect(verdict(page)).toHaveText(/assed\.$/, { timeout: 20_000 });
    const told = await verdict(page).textContent();
    const opened = await page.getByRole("region", { name: "Tries" }).getByText("opened", { exact: true }).count();
    const wanted = opened === TRIES ? "Passed." : "Not passed.";
    return told === wanted ? null : `${opened} of ${TRIES} opened, and it says "${told}"`;
  }

  private async dial(page: Page): Promise<void> {
    await dialLast(page, this.chance() < 0.5 ? [0, PAST] : []);
  }

  /** Notes what is in the database and in the page's texts. */
  private async note(page: Page): Promise<void> {
    this.texts.push(await page.evaluate(() => localStorage.getItem("gatefall.sitting") ?? ""));
    this.seen = await page.evaluate(rowsOf);
  }

  /** Starts the browser on what the kill left, and lets it have lost some of its texts. */
  private async reopen(): Promise<Page> {
    const page = await this.browser.open("#/bench");
    const text = this.texts[Math.floor(this.chance() * (this.texts.length + 1))];
    if (text !== undefined && text !== "") {
      await page.evaluate((put) => localStorage.setItem("gatefall.sitting", put), text);
    }
    return page;
  }
}

export const trial: Trial = {
  name: "random kills during sittings",
  run: async ({ chance, address, folder, hasTime, pass, fail }) => {
    for (let round = 1; round <= MOST_ROUNDS && (round === 1 || hasTime()); round++) {
      const browser = new KillableBrowser(join(folder, String(round)), address);
      const misfit = await new KilledSitting(browser, chance).run().catch((error) => String(error).slice(0, LONGEST));
      await browser.close();
      if (misfit === null) pass();
      else fail(`round ${round}: ${misfit}`);
    }
  },
};
