import { join } from "node:path";
import { expect, type Page } from "@playwright/test";
import { DEMO_SEED, demoLogbook } from "../../src/progress/demo/demoLogbook";
import { writeLogbookFile } from "../../src/records/file/logbookFile";
import type { Chance } from "../../src/statistics/chance";
import { ChangePage } from "../browser/change";
import { doorWith, Handover } from "../browser/handover";
import { KillableBrowser } from "../browser/killableBrowser";
import { dialLast } from "../browser/sittingByKeys";
import { storedRows } from "../browser/storedRows";
import { REST, Zeroing, ZeroingHand } from "../browser/zeroing";
import { NOON } from "../support/logbookRecords";
import { pick } from "./tamper";
import type { Trial } from "./trial";

/*
 * The browser killed at a random moment of other work than a sitting: a free attempt, a handover, a change of
 * combination, a zeroing, a logbook being imported. What the database had is there when it is opened again, and an import is whole or not there.
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

/** Kills the browser a moment later, while the hand may still be at work. @returns the rows of a table then and afterwards */
async function killDuring(
  browser: KillableBrowser,
  page: Page,
  { table, work, after_ms }: { table: string; work: Promise<unknown>; after_ms: number },
): Promise<{ before: Rows; after: Rows }> {
  const ended = work.catch(() => undefined);
  await page.waitForTimeout(after_ms);
  const before = await storedRows(page, table);
  await browser.kill();
  await ended;
  const again = await browser.open("#/logbook");
  await again.getByRole("main").waitFor();
  return { before, after: await storedRows(again, table) };
}

/** Attempts at the bench, killed in the middle of the last. */
const attempts: Work = async (browser, chance) => {
  const page = await browser.open("#/bench?seed=5");
  const whole = Math.floor(2 * chance());
  for (let k = 0; k < whole; k++) {
    await dialLast(page);
    await page.keyboard.press("r");
  }
  const work = dialLast(page);
  const { before, after } = await killDuring(browser, page, { table: "attempts", work, after_ms: 3000 * chance() });
  return lost(before, after);
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

/** Waits until a table has a record: the work has ended, and is kept. */
const untilKept = (page: Page, table: string) =>
  expect.poll(async () => (await storedRows(page, table)).length, { timeout: 10_000 }).toBe(1);

/** Dials the way of a change on a two-wheel lock, to its shut door. */
async function changeAll(change: ChangePage): Promise<void> {
  await change.dialTo(change.present, change.index);
  for (const act of ["Insert the key", "Turn the key"]) await change.press(act);
  await change.dialTo(change.wanted, change.index);
  for (const act of ["Turn the key back", "Remove the key"]) await change.press(act);
  await change.draw(change.wanted);
  await change.press("Shut the door");
  await untilKept(change.page, "jobs");
}

/** A change of a combination, killed in its midst or after its end. */
const changing: Work = async (browser, chance) => {
  const page = await browser.open("#/start");
  const change = new ChangePage(page, "two-wheel");
  await change.open();
  const work = changeAll(change);
  const isToItsEnd = chance() < 0.4;
  if (isToItsEnd) await work;
  const { before, after } = await killDuring(browser, page, { table: "jobs", work, after_ms: 4000 * chance() });
  if (isToItsEnd && before.length !== 1) return "a change that ended was not kept";
  if (after.length > 1) return `one change is there ${after.length} times`;
  return lost(before, after);
};

/** Sets a zero with three good readings from each side. */
async function zeroAll(zeroing: Zeroing): Promise<void> {
  const hand = new ZeroingHand(zeroing);
  await hand.clamp();
  for (const side of ["right", "left"] as const) {
    for (const deviation of [0, 0.1, -0.1]) {
      await hand.turnOnto(side, deviation);
      await zeroing.page.waitForTimeout(REST);
      await zeroing.dial.press(" ");
    }
  }
  await untilKept(zeroing.page, "zeroings");
}

/** A zeroing, killed in its midst or after its end. */
const settingZero: Work = async (browser, chance) => {
  const page = await browser.open("#/start");
  const zeroing = new Zeroing(page);
  await zeroing.open();
  const work = zeroAll(zeroing);
  const isToItsEnd = chance() < 0.4;
  if (isToItsEnd) await work;
  const { before, after } = await killDuring(browser, page, { table: "zeroings", work, after_ms: 6000 * chance() });
  if (isToItsEnd && before.length !== 1) return "a zeroing that ended was not kept";
  if (after.length > 1) return `one zeroing is there ${after.length} times`;
  return lost(before, after);
};

const WORKS: Readonly<Record<string, Work>> = { attempts, handover, importing, changing, settingZero };

export const trial: Trial = {
  name: "random kills during other work",
  run: async ({ chance, address, folder, hasTime, pass, fail }) => {
    for (let round = 1; round === 1 || hasTime(); round++) {
      // Each kind once, then by chance.
      const kinds = Object.keys(WORKS);
      const kind = kinds[round - 1] ?? pick(chance, kinds);
      const browser = new KillableBrowser(join(folder, String(round)), address);
      const misfit = await WORKS[kind]?.(browser, chance).catch((error) => String(error).slice(0, 400));
      await browser.close();
      if (misfit === null) pass();
      else fail(`round ${round}, ${kind}: ${misfit}`);
    }
  },
};
