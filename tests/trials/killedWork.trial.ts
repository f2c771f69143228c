import { join } from "node:path";
import type { Page } from "@playwright/test";
import { DEMO_SEED, demoLogbook } from "../../src/progress/demo/demoLogbook";
import { writeLogbookFile } from "../../src/records/file/logbookFile";
import type { Chance } from "../../src/statistics/chance";
import { doorWith, Handover } from "../browser/handover";
import { KillableBrowser } from "../browser/killableBrowser";
import { dialLast } from "../browser/sittingByKeys";
import { storedRows } from "../browser/storedRows";
import { NOON } from "../support/logbookRecords";
import { pick } from "./tamper";
import type { Trial } from "./trial";

/*
 * The browser killed at a random moment of other work than a sitting: a free attempt, a handover, a logbook being
 * imported. What the database had is there when it is opened again, and an import is whole or not there.
 */

type Rows = readonly Record<string, unknown>[];

/** Whatever was stored and over is there unchanged. @returns what is not, or null */
function lost(before: Rows, after: Rows): string | null {
  const gone = before.find(
    (row) => row.isUnfinished !== true && JSON.stringify(after.find(({ id }) => id === row.id)) !== JSON.stringify(row),
  );
  return gone === undefined ? null : `${JSON.stringify(gone).slice(0, 300)} is gone or changed`;
}

type Work = (browser: KillableBrowser, chance: Chance) => Promise<string | null>;

/** Attempts at the bench, killed in the middle of the last. */
const attempts: Work = async (browser, chance) => {
  const page = await browser.open("#/bench?seed=5");
  const whole = Math.floor(2 * chance());
  for (let k = 0; k < whole; k++) {
    await dialLast(page);
    await page.keyboard.press("r");
  }
  const dialing = dialLast(page).catch(() => undefined);
  await page.waitForTimeout(3000 * chance());
  const before = await storedRows(page, "attempts");
  await browser.kill();
  await dialing;
  const again = await browser.open("#/logbook");
  await again.getByRole("main").waitFor();
  return lost(before, await storedRows(again, "attempts"));
};

const stepsOf = (rows: Rows): number =>
  Math.max(
    0,
    ...rows
      .filter(({ isRunning }) => isRunning === true)
      .map(({ body }) => (body as { readonly run: { readonly events: readonly unknown[] } }).run.events.length),
  );

const ACTS = ["Measure the height", "Align the ring", "Dial the combination", "Spin off", "Test the inside release"];

/** A handover with some acts done, killed after the last at once or later. */
const handover: Work = async (browser, chance) => {
  const { profile, seed } = doorWith({});
  const address = `#/handover?view=run&profile=${profile.id}&seed=${seed}&hands=off`;
  const page = await browser.open(address);
  const door = new Handover(page);
  await door.told.waitFor();
  const acts = 1 + Math.floor(chance() * ACTS.length);
  for (const act of ACTS.slice(0, acts)) await door.does(act);
  await page.waitForTimeout(200 * chance());
  const stored = stepsOf(await storedRows(page, "handoverRuns"));
  await browser.kill();
  const again = await browser.open(address);
  await new Handover(again).told.waitFor();
  await new Handover(again).does("Look back");
  const list = again.getByRole("list", { name: "Step by step" });
  if (stored > 0) await list.waitFor();
  const shown = await list.getByRole("listitem").count();
  return shown >= stored && shown <= acts ? null : `${acts} acts, ${stored} stored, and ${shown} there afterwards`;
};

/** Tables that an import writes to, in its order. */
const TABLES = ["people", "attempts", "zeroings", "jobs", "sittings", "declarations"];

async function counts(page: Page): Promise<number[]> {
  const all: number[] = [];
  for (const table of TABLES) all.push((await storedRows(page, table)).length);
  return all;
}

const demo = demoLogbook(DEMO_SEED, NOON);
const FILE = { name: "class.json", mimeType: "application/json", buffer: Buffer.from(writeLogbookFile(demo, NOON)) };

/** A logbook of a class on its way into the database. */
const importing: Work = async (browser, chance) => {
  const page = await browser.open("#/logbook?view=files");
  const people = await counts(page);
  await page.locator("main input[type=file]").setInputFiles(FILE);
  await page
    .getByText(/Storing the records|records added/)
    .first()
    .waitFor();
  await page.waitForTimeout(600 * chance());
  await browser.kill();
  const again = await browser.open("#/logbook?view=files");
  await again.getByRole("heading", { name: "Import" }).waitFor();
  const there = await counts(again);
  const all = [demo.records.people.length + (people[0] ?? 0), demo.records.attempts.length];
  const isWhole = there[0] === all[0] && there[1] === all[1] && there[3] === demo.records.jobs.length;
  const isNothing = there.every((count, k) => count === people[k]);
  return isWhole || isNothing ? null : `of the import there is a part: ${there} in ${TABLES}`;
};

const WORKS: Readonly<Record<string, Work>> = { attempts, handover, importing };

export const trial: Trial = {
  name: "random kills during other work",
  run: async ({ chance, address, folder, hasTime, pass, fail }) => {
    for (let round = 1; round === 1 || hasTime(); round++) {
      const kind = pick(chance, Object.keys(WORKS));
      const browser = new KillableBrowser(join(folder, String(round)), address);
      const misfit = await WORKS[kind]?.(browser, chance).catch((error) => String(error).slice(0, 400));
      await browser.close();
      if (misfit === null) pass();
      else fail(`round ${round}, ${kind}: ${misfit}`);
    }
  },
};
