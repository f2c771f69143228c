import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { chromium, type Page } from "@playwright/test";
import { EVENT_MEASURE } from "../../src/app/exercises/bench/eventCost";
import { idealMotion } from "../../src/dialing/idealMotion";
import { shippedProfile } from "../../src/lock/shippedProfiles";
import { Bench } from "../browser/bench";
import { BROWSER_SWITCHES, wholeBrowserPath } from "../browser/browserPath";
import { placeOf } from "../browser/hands";
import { serveBuilt } from "../browser/staticServer";

/*
 * What one event of the dial costs the page, and what the page weighs before its screen. The page measures itself: from the
 * input to the redrawn page, before paint, with cutaway, turn chart and ghost in view.
 */

const EVENTS = 2000;
/** Way of the mouse from one event to the next, graduations. */
const STRIDE = 2.5;
const TARGET_MS = 4;
const TARGET_KB = 180;

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

async function eventCosts(): Promise<number[]> {
  const server = await serveBuilt();
  const browser = await chromium.launch({ executablePath: wholeBrowserPath() ?? "", args: BROWSER_SWITCHES });
  try {
    const page = await browser.newPage({ viewport: { width: 1280, height: 800 }, baseURL: server.address });
    const bench = new Bench(page);
    await bench.open({ profile: profile.id, combination: combination.join("-"), help: "full", measure: "on" });
    await page.getByRole("combobox", { name: "Compare on the turn chart" }).selectOption("ideal");
    await dialByMouse(bench, page);
    return await measured(page);
  } finally {
    await browser.close();
    await server.close();
  }
}

const DIST = join(import.meta.dirname, "../../dist");

/** Sizes of what the page loads ahead of any screen (each screen is fetched apart), kilobytes of 1000 bytes: code and style as a server sends them, and the type. */
function weights(): { readonly code_kB: number; readonly type_kB: number } {
  const page = readFileSync(join(DIST, "index.html"), "utf8");
  const linked = [...page.matchAll(/(?:src|href)="\.\/(assets\/[^"]+)"/g)].map(([, path = ""]) => path);
  const code = linked.reduce((sum, path) => sum + gzipSync(readFileSync(join(DIST, path)), { level: 9 }).length, 0);
  const type = readdirSync(join(DIST, "assets"))
    .filter((name) => name.endsWith(".woff2"))
    .reduce((sum, name) => sum + readFileSync(join(DIST, "assets", name)).length, 0);
  return { code_kB: code / 1000, type_kB: type / 1000 };
}

const verdict = (value: number, target: number) => (value <= target ? "met" : "missed");

const costs = await eventCosts();
const { code_kB, type_kB } = weights();
const p95 = quantile(costs, 0.95);
const ms = (value: number) => value.toFixed(2);
process.stdout.write(
  `${[
    `${costs.length} dial events by mouse; main-thread time from input to redrawn page, cutaway, chart and ghost in view.`,
    "",
    "| what | measured | target | |",
    "|---|---:|---:|---|",
    `| dial event, p50 | ${ms(quantile(costs, 0.5))} ms | | |`,
    `| dial event, p95 | ${ms(p95)} ms | ${TARGET_MS} ms | ${verdict(p95, TARGET_MS)} |`,
    `| dial event, max | ${ms(costs.at(-1) ?? Number.NaN)} ms | | |`,
    `| what the page itself names, js and css without its screen, gzip | ${code_kB.toFixed(1)} kB | ${TARGET_KB} kB | ${verdict(code_kB, TARGET_KB)} |`,
    `| first screen, type (woff2) | ${type_kB.toFixed(1)} kB | | |`,
  ].join("\n")}\n`,
);
