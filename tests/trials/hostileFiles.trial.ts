import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "@playwright/test";
import { deflateSync, strToU8 } from "fflate";
import clean from "../../shared/handovers/clean.json" with { type: "json" };
import { canonicalJson } from "../../src/drill/canonicalJson";
import { SHIPPED_SHEETS } from "../../src/drill/sheet/shippedSheets";
import { writeLogbookFile } from "../../src/records/file/logbookFile";
import type { Chance } from "../../src/statistics/chance";
import { Handover } from "../browser/handover";
import { storedRows } from "../browser/storedRows";
import { sha256 } from "../support/keptRecord";
import { aJob, anAttempt, aPerson, contents, NOON } from "../support/logbookRecords";
import { satRecord } from "../support/satRecord";
import { copyOf, type Json, pick, spoiledText } from "./tamper";
import type { Trial } from "./trial";
import { TrialBrowser } from "./trialPage";

/*
 * Links and files that were good once, brought to the built page: it answers all the while, it never goes blank or
 * fails, it says something, and what was stored before is stored after.
 */

/** Longest that a page may not answer, milliseconds. */
const BUSY = 5000;
/** Longest until it says something, milliseconds. */
const PATIENCE = 30_000;

const whole = contents([aPerson("tavro")], [anAttempt("a1"), anAttempt("a2", { opened: false })]);
const LOGBOOK: Json = copyOf(
  JSON.parse(writeLogbookFile({ ...whole, records: { ...whole.records, jobs: [aJob("j1")] } }, NOON)),
);
const HANDOVER_RECORD: Json = copyOf(
  JSON.parse(readFileSync(join(import.meta.dirname, "../fixtures/0.2.0/handover.json"), "utf8")),
);
const SITTING = copyOf(satRecord());
/** A record whose hash was made anew after every change: it gets past the first look. */
const sittingFile = (chance: Chance) => {
  const text = spoiledText(SITTING, chance);
  try {
    return `{"sha256":"${sha256(canonicalJson(JSON.parse(text)))}","record":${text}}`;
  } catch {
    return text;
  }
};

/** Where a file is taken, and one that was good once. */
const FILES: readonly (readonly [address: string, make: (chance: Chance) => string])[] = [
  ["#/logbook?view=files", (chance) => spoiledText(LOGBOOK, chance)],
  ["#/desk", (chance) => spoiledText(LOGBOOK, chance)],
  ["#/sheets", (chance) => spoiledText(copyOf(pick(chance, SHIPPED_SHEETS)), chance)],
  ["#/sittings", sittingFile],
  ["#/handover?view=record", (chance) => spoiledText(HANDOVER_RECORD, chance)],
  ["#/handover?view=run", (chance) => spoiledText(copyOf(clean), chance)],
];

const linkText = (json: string) => `s1.${Buffer.from(deflateSync(strToU8(json))).toString("base64url")}`;

/** An address with something in it that was good once. */
function hostileAddress(chance: Chance): string {
  const link = linkText(spoiledText(copyOf(pick(chance, SHIPPED_SHEETS)), chance));
  const at = Math.floor(chance() * link.length);
  const odd = pick(chance, ["-1", "1e99", "NaN", "%00", "%F0%9F%94%92", "__proto__", "", "9".repeat(3000)]);
  return pick(chance, [
    `#/sheets?sheet=${link}`,
    `#/sittings?sheet=${link}`,
    `#/${pick(chance, ["sheets", "sittings"])}?sheet=${link.slice(0, at)}`,
    `#/sittings?sheet=${link.slice(0, at)}A${link.slice(at + 1)}`,
    `#/bench?profile=${odd}&combination=${odd}-${odd}&seed=${odd}&help=${odd}`,
    `#/handover?view=${pick(chance, ["run", "change", "trouble", "holdback"])}&profile=${odd}&seed=${odd}&condition=${odd}`,
    `#/logbook?view=${odd}&person=${odd}&attempt=${odd}`,
    `#/words?word=${odd}`,
  ]);
}

/** Whether the page answers within its time. */
async function answers(page: Page): Promise<boolean> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<false>((resolve) => {
    timer = setTimeout(() => resolve(false), BUSY);
  });
  const asked = page.evaluate(() => true).catch(() => false);
  const isInTime = await Promise.race([asked, late]);
  clearTimeout(timer);
  return isInTime;
}

const textOf = async (page: Page) => (await page.locator("main").allTextContents()).join(" ");

/** What is wrong with the page until it says something else than before; null where nothing is. */
async function misfitUntil(page: Page, before: string): Promise<string | null> {
  const began = performance.now();
  for (;;) {
    if (!(await answers(page))) return `it does not answer for ${BUSY} ms`;
    const now = await textOf(page);
    if (now.includes("This page has failed.")) return "the page has failed";
    if (now.length > 20 && now !== before) return null;
    if (performance.now() - began > PATIENCE) return `it says nothing, or is blank: "${now.slice(0, 100)}"`;
    await page.waitForTimeout(50);
  }
}

async function bringFile(page: Page, chance: Chance): Promise<string | null> {
  const [address, make] = pick(chance, FILES);
  await page.goto("about:blank");
  await page.goto(`./${address}`);
  // A handover has its files beside its debrief.
  if (address.endsWith("view=run")) await new Handover(page).does("Measure the height", "Look back");
  const input = page.locator("main input[type=file]").last();
  const isThere = await input.waitFor({ state: "attached" }).then(
    () => true,
    () => false,
  );
  const before = await textOf(page);
  if (!isThere) return `${address} takes no file; it says: ${before.slice(0, 400)}`;
  const text = make(chance);
  await input.setInputFiles({ name: "it.json", mimeType: "application/json", buffer: Buffer.from(text) });
  const misfit = await misfitUntil(page, before);
  return misfit === null ? null : `${address}: ${misfit}, with ${text.slice(0, 3000)}`;
}

async function followLink(page: Page, chance: Chance): Promise<string | null> {
  const address = hostileAddress(chance);
  await page.goto("about:blank");
  await page.goto(`./${address}`);
  const misfit = await misfitUntil(page, "");
  return misfit === null ? null : `${misfit}, at ${address.slice(0, 3000)}`;
}

const guard = contents([aPerson("guard")], [anAttempt("guarded", { personId: "guard" })]);

/** Stores a record that no hostile file names. */
async function storeGuard(page: Page): Promise<void> {
  const buffer = Buffer.from(writeLogbookFile(guard, NOON));
  await page.locator("input[type=file]").setInputFiles({ name: "g.json", mimeType: "application/json", buffer });
  await page.getByText(/records added/).waitFor();
}

const guarded = async (page: Page) =>
  JSON.stringify((await storedRows(page, "attempts")).filter(({ id }) => id === "guarded"));

const A_ROUND = 12;

async function round(browser: TrialBrowser, page: Page, stored: string, chance: Chance): Promise<string | null> {
  for (let k = 0; k < A_ROUND; k++) {
    const misfit = await pick(chance, [bringFile, followLink])(page, chance);
    if (misfit !== null) return misfit;
    if (browser.uncaught.length > 0) return `an error that no one caught: ${browser.uncaught[0]}`;
  }
  const now = await guarded(page);
  return now === stored ? null : `what was stored is now ${now.slice(0, 200)}`;
}

export const trial: Trial = {
  name: "hostile links and files on the page",
  run: async ({ chance, address, hasTime, pass, fail }) => {
    const browser = await TrialBrowser.launch(address);
    for (let number = 1; number === 1 || hasTime(); number++) {
      const page = await browser.fresh("#/logbook?view=files");
      await storeGuard(page);
      const stored = await guarded(page);
      const misfit = await round(browser, page, stored, chance).catch((error) => String(error).slice(0, 600));
      if (misfit === null) pass();
      else fail(`round ${number}: ${misfit}`);
    }
    await browser.close();
  },
};
