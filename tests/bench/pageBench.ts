import { availableParallelism, loadavg } from "node:os";
import { join } from "node:path";
import { type Browser, chromium, type Page } from "@playwright/test";
import { EVENT_MEASURE } from "../../src/app/exercises/bench/eventCost";
import { idealMotion } from "../../src/dialing/idealMotion";
import { shippedProfile } from "../../src/lock/shippedProfiles";
import { Bench } from "../browser/bench";
import { BROWSER_SWITCHES, wholeBrowserPath } from "../browser/browserPath";
import { placeOf } from "../browser/hands";
import { serveBuilt } from "../browser/staticServer";
import { StubPort } from "../browser/stubPort";
import { cameraPlaying, filmInto } from "../support/film/fakeCamera";
import { pageWeight } from "./pageWeight";

/*
 * What one event of the dial costs the page, and what a first visit fetches. The page measures itself: from the
 * input to the redrawn page, before paint, with cutaway, turn chart and ghost in view.
 */

const EVENTS = 2000;
/** Way of the mouse from one event to the next, graduations. */
const STRIDE = 2.5;
const TARGET_MS = 4;
const TARGET_KB = 150;
const TARGET_ENCODER_MS = 60;
const TARGET_CAMERA_MS = 100;
const CAMERA_FRAMES = 30;
const TARGET_SHIFT = 0.02;

const profile = shippedProfile("three-wheel");
const combination = profile.asSet ?? [];

/** Hand positions of attempts at a lock, one after the other, a stride apart. */
function* handPositions(from: number): Generator<number> {
  let position = from;
  for (let attempt = 0; ; attempt++) {
    // Every other attempt is spoiled: a failed one and an opened one both belong to a session.
    const path = idealMotion(profile, combination, position, attempt % 2 === 0 ? [] : [0, 4], 10);
    for (const goal of path.slice(1)) {
      const way = Math.sign(goal - position);
      while ((goal - position) * way > STRIDE) {
        position += way * STRIDE;
        yield position;
      }
      position = goal;
      yield position;
    }
  }
}

async function dialByMouse(bench: Bench, page: Page): Promise<void> {
  const { x, y, radius } = await placeOf(bench);
  const start = await bench.reading();
  const moveTo = (position: number) => {
    const radians = ((position - start) / profile.graduations) * 2 * Math.PI;
    return page.mouse.move(x - radius * 0.8 * Math.sin(radians), y - radius * 0.8 * Math.cos(radians));
  };
  await moveTo(start);
  await page.mouse.down();
  let made = 0;
  for (const position of handPositions(start)) {
    await moveTo(position);
    made += 1;
    if (made === EVENTS) break;
  }
  await page.mouse.up();
}

/** Durations that the page measured, in order of size, milliseconds. */
const measured = async (page: Page): Promise<number[]> =>
  (
    await page.evaluate((name) => performance.getEntriesByName(name).map(({ duration }) => duration), EVENT_MEASURE)
  ).sort((one, other) => one - other);

const quantile = (sorted: readonly number[], part: number) =>
  sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))] ?? Number.NaN;

async function eventCosts(browser: Browser, baseURL: string): Promise<number[]> {
  const page = await browser.newPage({ viewport: { width: 1280, height: 800 }, baseURL });
  const bench = new Bench(page);
  await bench.open({ profile: profile.id, combination: combination.join("-"), help: "full", measure: "on" });
  await page.getByRole("combobox", { name: "Compare on the turn chart" }).selectOption("ideal");
  await dialByMouse(bench, page);
  return measured(page);
}

/** An encoder turned for a while, half a turn a second: hand to screen as the app itself tells it, milliseconds. */
async function encoderDelays(browser: Browser, baseURL: string): Promise<readonly number[]> {
  const page = await browser.newPage({ viewport: { width: 1280, height: 800 }, baseURL });
  const port = await StubPort.on(page);
  await new Bench(page).open({ profile: profile.id, combination: combination.join("-"), help: "full" });
  await page.getByRole("button", { name: /^More/ }).click();
  await page.getByRole("button", { name: "Connect: Encoder on a serial line" }).click();
  await port.start();
  await page.getByText("Hand to screen: turn the dial").waitFor();
  // Nobody dials behind a dialog, which a browser without a graphics card blends with the page in every frame; nor while a
  // first visit still stores some 190 files for a day without a net.
  await page.keyboard.press("Escape");
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await port.turnSteadily(10, 500, 8);
  await page.getByRole("button", { name: /^More/ }).click();
  return toldDelays(page);
}

/** What the page says of hand to screen, the middle one and the 95th of 100, ms. */
async function toldDelays(page: Page): Promise<readonly number[]> {
  const told = await page.getByText(/Hand to screen: \d+ ms/).textContent();
  return (told ?? "").match(/\d+(?= ms)/g)?.map(Number) ?? [];
}

/** A film of a printed dial turned for a while, played by the browser's camera: as the app itself tells it, milliseconds. */
async function cameraDelays(baseURL: string): Promise<readonly number[]> {
  const file = join(import.meta.dirname, "../../test-results/films/delay.y4m");
  const legs = [
    { by: 160, speed: 40, restMs: 300 },
    { by: -160, speed: 40, restMs: 300 },
  ];
  filmInto(file, { restMs: 1000, legs }, 5, CAMERA_FRAMES);
  const browser = await chromium.launch(cameraPlaying(file));
  try {
    const page = await browser.newPage({ viewport: { width: 1280, height: 800 }, baseURL, permissions: ["camera"] });
    await page.goto("#/dial");
    await page.getByRole("button", { name: "Choose: Printed dial and camera" }).click();
    await page.getByRole("button", { name: "Connect", exact: true }).click();
    await page.getByText(/Hand to screen: \d+ ms/).waitFor({ timeout: 120_000 });
    // A whole round of the film.
    await page.waitForTimeout(10_000);
    return await toldDelays(page);
  } finally {
    await browser.close();
  }
}

const verdict = (value: number, target: number) => (value <= target ? "met" : "missed");
const ms = (value: number) => value.toFixed(2);

/** Rows of the table: what a first visit fetches for a page. */
async function weightRows(browser: Browser, address: string, name: string, hash: string, drawn: string) {
  const { untilDrawn_kB, inAll_kB, type_kB, shift } = await pageWeight(browser, address, hash, drawn);
  return [
    `| ${name}: script and style until its screen is drawn, gzip | ${untilDrawn_kB.toFixed(1)} kB | ${TARGET_KB} kB | ${verdict(untilDrawn_kB, TARGET_KB)} |`,
    `| ${name}: script and style in all, gzip | ${inAll_kB.toFixed(1)} kB | | |`,
    `| ${name}: layout shift | ${shift.toFixed(3)} | ${TARGET_SHIFT} | ${verdict(shift, TARGET_SHIFT)} |`,
    `| ${name}: type (woff2) | ${type_kB.toFixed(1)} kB | | |`,
  ];
}

const [loadBefore = 0] = loadavg();
const server = await serveBuilt();
const browser = await chromium.launch({ executablePath: wholeBrowserPath() ?? "", args: BROWSER_SWITCHES });
try {
  const costs = await eventCosts(browser, server.address);
  const p95 = quantile(costs, 0.95);
  const [middle = Number.NaN, most = Number.NaN] = await encoderDelays(browser, server.address);
  const [cameraMiddle = Number.NaN, cameraMost = Number.NaN] = await cameraDelays(server.address);
  const weights = [
    ...(await weightRows(browser, server.address, "start page", "#/start", "#root > main .start-go")),
    ...(await weightRows(browser, server.address, "bench by its link", "#/bench", "#root > main [role=slider]")),
  ];
  process.stdout.write(
    `${[
      `${costs.length} dial events by mouse; main-thread time from input to redrawn page, cutaway, chart and ghost in view.`,
      // Frames are made by some 18 ms of several threads: beside other work the figures are the machine's, not the page's.
      `${availableParallelism()} processors, load ${loadBefore.toFixed(1)} as it began.`,
      "",
      "| what | measured | target | |",
      "|---|---:|---:|---|",
      `| dial event, p50 | ${ms(quantile(costs, 0.5))} ms | | |`,
      `| dial event, p95 | ${ms(p95)} ms | ${TARGET_MS} ms | ${verdict(p95, TARGET_MS)} |`,
      `| dial event, max | ${ms(costs.at(-1) ?? Number.NaN)} ms | | |`,
      `| encoder (a stub of its port), hand to screen, p50 | ${middle} ms | ${TARGET_ENCODER_MS} ms | ${verdict(middle, TARGET_ENCODER_MS)} |`,
      `| encoder, hand to screen, p95 | ${most} ms | ${TARGET_ENCODER_MS} ms | ${verdict(most, TARGET_ENCODER_MS)} |`,
      `| camera of ${CAMERA_FRAMES} frames a second (a film of a printed dial), hand to screen, p50 | ${cameraMiddle} ms | ${TARGET_CAMERA_MS} ms | ${verdict(cameraMiddle, TARGET_CAMERA_MS)} |`,
      `| camera, hand to screen, p95 | ${cameraMost} ms | ${TARGET_CAMERA_MS} ms | ${verdict(cameraMost, TARGET_CAMERA_MS)} |`,
      ...weights,
    ].join("\n")}\n`,
  );
} finally {
  await browser.close();
  await server.close();
}
