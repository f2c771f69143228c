import { type BrowserContext, chromium, type Page } from "@playwright/test";
import { shippedProfile } from "../../src/lock/shippedProfiles";
import { handMotion } from "../../src/progress/demo/handMotion";
import { toBase64 } from "../../src/records/motion/base64";
import { encodeTrace } from "../../src/records/motion/traceCodec";
import { seededChance } from "../../src/statistics/chance";
import { attemptRow, DATABASE_NAME } from "../../src/store/logbookDatabase";
import { BROWSER_SWITCHES, wholeBrowserPath } from "../browser/browserPath";
import { serveBuilt } from "../browser/staticServer";
import { anAttempt, aPerson, NOON } from "../support/logbookRecords";

/*
 * How long a full logbook takes to open in a real browser: its database is filled with 50,000 attempts of five people,
 * motions and all, and the screen is opened until its first rows are drawn; then its list is leaped through.
 */

const ATTEMPTS = 50_000;
/** How many people they are of can be asked for: with one, all are in one list. */
const PEOPLE = Number(process.argv[2] ?? 5);
const OF_ONE = ATTEMPTS / PEOPLE;
const ROUNDS = 9;
const TARGET_MS = 300;

const profile = shippedProfile("three-wheel");
const chance = seededChance(1989);
const motion = handMotion(profile, [29, 92, 54], 12, { stopErrors: [0.2, -0.4, 0.1], speed: 21 }, chance);
const trace = toBase64(encodeTrace({ start: { dial: 12, slack: [0, 0, 0] }, ...motion }));

const given = {
  name: DATABASE_NAME,
  count: ATTEMPTS,
  from: NOON,
  people: Array.from({ length: PEOPLE }, (_, i) => aPerson(`p${i}`)),
  opened: attemptRow(anAttempt("a")),
  missed: attemptRow(anAttempt("a", { opened: false, faults: [{ code: "ran-past", number: 2, size: 1.75 }] })),
  trace,
};

/** Runs in the page: fills the database that the app has made. */
async function fill({ name, count, from, people, opened, missed, trace }: typeof given): Promise<void> {
  const bytes = Uint8Array.from(atob(trace), (letter) => letter.charCodeAt(0));
  const opening = indexedDB.open(name);
  const database = await new Promise<IDBDatabase>((done) => {
    opening.onsuccess = () => done(opening.result);
  });
  const batch = 5000;
  for (let start = 0; start < count; start += batch) {
    const writing = database.transaction(["people", "attempts", "traces"], "readwrite");
    for (const person of people) writing.objectStore("people").put(person);
    for (let i = start; i < start + batch; i++) {
      const row = i % 7 === 0 ? missed : opened;
      const id = crypto.randomUUID();
      const personId = people[i % people.length]?.id;
      const startedAt = from + 1000 * i;
      const tag = `part ${i % 3}`;
      const tagged = { tags: [tag], tagKeys: [[personId, tag, startedAt, id]] };
      writing.objectStore("attempts").put({ ...row, id, personId, startedAt, ...tagged });
      writing.objectStore("traces").put({ id, bytes });
    }
    await new Promise((done, fail) => {
      writing.oncomplete = done;
      writing.onerror = fail;
    });
  }
  database.close();
}

/** Runs in the page before anything of the app: notes the frame that shows the first row of the list. */
function watchRows(): void {
  new MutationObserver((_, observer) => {
    if (document.querySelector(".attempt-list tbody button") === null) return;
    observer.disconnect();
    requestAnimationFrame(() => performance.mark("rows"));
  }).observe(document, { subtree: true, childList: true });
}

/** Time at which the first rows were drawn, on the page's own clock, milliseconds. */
async function rowsDrawn(page: Page): Promise<number> {
  await page.waitForFunction(() => performance.getEntriesByName("rows").length > 0);
  return page.evaluate(() => performance.getEntriesByName("rows")[0]?.startTime ?? Number.NaN);
}

/** From the bench: from the click on the link to the rows. The database is closed before, as on any first visit. */
async function fromBench(context: BrowserContext): Promise<number> {
  const page = await context.newPage();
  await page.addInitScript(watchRows);
  await page.goto("#/bench");
  const link = page.getByRole("link", { name: "Logbook" });
  await link.evaluate((element) => element.addEventListener("click", () => performance.mark("asked")));
  await link.click();
  const drawn = await rowsDrawn(page);
  const asked = await page.evaluate(() => performance.getEntriesByName("asked")[0]?.startTime ?? Number.NaN);
  await page.close();
  return drawn - asked;
}

/** From nothing: from the navigation to the rows, with the app itself to be loaded. */
async function fromNothing(context: BrowserContext): Promise<number> {
  const page = await context.newPage();
  await page.addInitScript(watchRows);
  await page.goto("#/logbook");
  const drawn = await rowsDrawn(page);
  await page.close();
  return drawn;
}

/** From a filter to the rows it leaves: the misses alone, or those with a tag, of one person. */
const filtered = (by: "misses" | "tag") => async (context: BrowserContext) => {
  const page = await context.newPage();
  await page.goto("#/logbook");
  await page.getByText(`${OF_ONE} attempts, latest first`).waitFor();
  await page.getByLabel("Tag", { exact: true }).waitFor();
  const took = await page.evaluate(async (by) => {
    const told = document.querySelector(".logbook-filter p");
    const before = told?.textContent;
    const asked = performance.now();
    if (by === "misses") document.querySelector<HTMLInputElement>(".logbook-filter input[type=checkbox]")?.click();
    else {
      const tags = [...document.querySelectorAll("select")].find(({ options }) => options[1]?.value === "part 0");
      if (tags === undefined) throw new Error("there is no choice of a tag");
      tags.value = "part 0";
      tags.dispatchEvent(new Event("change", { bubbles: true }));
    }
    while (told?.textContent === before) await new Promise((done) => requestAnimationFrame(done));
    return performance.now() - asked;
  }, by);
  await page.close();
  return took;
};

/** The logbook with the focus on its first row. */
async function atFirstRow(context: BrowserContext): Promise<Page> {
  const page = await context.newPage();
  await page.goto("#/logbook");
  await page
    .getByRole("button", { name: /^Replay the attempt of/ })
    .first()
    .focus();
  return page;
}

/** Where a leap leads: to the end by its key, or to the middle as by the scroll bar. */
type Leap = "end" | "middle";

/** From a leap through the list to the frame that shows all its rows read. */
const leapt = (leap: Leap) => async (context: BrowserContext) => {
  const page = await atFirstRow(context);
  const took = await page.evaluate(async (leap) => {
    const list = document.querySelector(".attempt-scroll");
    const asked = performance.now();
    if (leap === "middle") list?.scrollTo(0, list.scrollHeight / 2);
    else document.activeElement?.dispatchEvent(new KeyboardEvent("keydown", { key: "End", bubbles: true }));
    for (let isRead = false; !isRead; ) {
      await new Promise((done) => requestAnimationFrame(done));
      const rows = [...document.querySelectorAll(".attempt-row")];
      const isFar = rows.some((row) => Number(row.getAttribute("aria-rowindex")) > 1000);
      isRead = isFar && !rows.some((row) => row.textContent?.includes("…"));
    }
    return performance.now() - asked;
  }, leap);
  await page.close();
  return took;
};

/**
 * Wait for a frame that 19 of 20 do not pass while the list is scrolled on and on, milliseconds.
 *
 * @param pixels - a frame; with 0 it is the machine that is measured
 */
const scrolledBy = (pixels: number) => async (context: BrowserContext) => {
  const page = await atFirstRow(context);
  const waits = await page.evaluate(async (pixels) => {
    const list = document.querySelector(".attempt-scroll");
    const waits: number[] = [];
    let before = await new Promise<number>(requestAnimationFrame);
    for (let frame = 0; frame < 120; frame++) {
      list?.scrollBy(0, pixels);
      const now = await new Promise<number>(requestAnimationFrame);
      waits.push(now - before);
      before = now;
    }
    return waits.sort((one, other) => one - other);
  }, pixels);
  await page.close();
  return waits[Math.floor(0.95 * waits.length)] ?? Number.NaN;
};

async function rounds(measure: (context: BrowserContext) => Promise<number>, context: BrowserContext) {
  const taken: number[] = [];
  for (let i = 0; i < ROUNDS; i++) taken.push(await measure(context));
  return taken.sort((one, other) => one - other);
}

const row = (what: string, sorted: readonly number[]) => {
  const [p50, max] = [sorted[Math.floor(sorted.length / 2)] ?? Number.NaN, sorted.at(-1) ?? Number.NaN];
  return `| ${what} | ${p50.toFixed(0)} ms | ${max.toFixed(0)} ms | ${max <= TARGET_MS ? "met" : "missed"} |`;
};

const server = await serveBuilt();
const browser = await chromium.launch({ executablePath: wholeBrowserPath() ?? "", args: BROWSER_SWITCHES });
try {
  const context = await browser.newContext({ baseURL: server.address, viewport: { width: 1280, height: 800 } });
  const page = await context.newPage();
  await page.goto("#/logbook");
  await page.getByText("Nobody is here yet.").waitFor();
  const begin = performance.now();
  await page.evaluate(fill, given);
  const seconds = ((performance.now() - begin) / 1000).toFixed(1);
  await page.close();
  const lines = [
    `${ATTEMPTS} attempts with motions, put into the browser's database in ${seconds} s; ${ROUNDS} rounds each; target ${TARGET_MS} ms.`,
    "",
    "| opening the logbook until its first rows | p50 | max | |",
    "|---|---:|---:|---|",
    row("by its link, from the bench", await rounds(fromBench, context)),
    row("by its address, the app loaded anew", await rounds(fromNothing, context)),
    row(`misses only, ${OF_ONE} attempts of one person`, await rounds(filtered("misses"), context)),
    row(`with a tag, of ${OF_ONE} attempts of one person`, await rounds(filtered("tag"), context)),
    row(`to the end of a list of ${OF_ONE}, by key`, await rounds(leapt("end"), context)),
    row(`to the middle of a list of ${OF_ONE}`, await rounds(leapt("middle"), context)),
    row("a frame that scrolls 200 pixels, 95 of 100", await rounds(scrolledBy(200), context)),
    row("a frame that scrolls nothing, 95 of 100", await rounds(scrolledBy(0), context)),
  ];
  process.stdout.write(`${lines.join("\n")}\n`);
} finally {
  await browser.close();
  await server.close();
}
