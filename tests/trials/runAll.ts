import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { seededChance } from "../../src/statistics/chance";
import { serveBuilt } from "../browser/staticServer";
import { ALL_DRAWS } from "../support/draws";
import { browserCount, unitCount } from "../support/testCounts";
import type { Trial } from "./trial";

/*
 * Long trials: first the long browser tests (playwright.config.ts says which they are) and the unit tests that make draws,
 * all of them (tests/support/draws.ts), to their end; then every `*.trial.ts` of this folder, one after the other, within a budget of time that they share. `--only` takes trials alone.
 *
 *   npm run trials -- --minutes 5 --seed 7 --only kills
 */

const { values: options } = parseArgs({
  options: {
    minutes: { type: "string", default: "10" },
    seed: { type: "string", default: String(Date.now() % 1_000_000) },
    only: { type: "string", default: "" },
  },
});
const seed = Number(options.seed);
const minutes = Number(options.minutes);
if (!Number.isInteger(seed) || !(minutes > 0)) throw new Error("--seed takes a whole number, --minutes one above 0");

const say = (line: string) => process.stdout.write(`${line}\n`);
const total = { passed: 0, failed: 0 };

/** Runs one trial within its time, and tells what came of it. */
async function make({ name, run }: Trial, address: string, time_ms: number): Promise<void> {
  say(`\n== ${name} (seed ${seed}, at most ${Math.round(time_ms / 1000)} s)`);
  const started = performance.now();
  const folder = mkdtempSync(join(tmpdir(), "gatefall-trial-"));
  const count = { passed: 0, failed: 0 };
  const fail = (what: string) => {
    count.failed += 1;
    say(`FAILED: ${what}`);
  };
  try {
    await run({
      chance: seededChance(seed),
      address,
      folder,
      hasTime: () => performance.now() - started < time_ms,
      pass: () => {
        count.passed += 1;
      },
      fail,
    });
  } catch (error) {
    fail(error instanceof Error ? (error.stack ?? error.message) : String(error));
  }
  rmSync(folder, { recursive: true, force: true });
  say(`${name}: ${count.passed} rounds held, ${count.failed} did not`);
  total.passed += count.passed;
  total.failed += count.failed;
}

/** Makes the long browser tests. */
function testBrowser(): void {
  say("\n== long browser tests");
  rmSync("test-results/browser.json", { force: true });
  const { status } = spawnSync("npx playwright test --project=trials", { shell: true, stdio: "inherit" });
  const { passed, failed } = browserCount();
  total.passed += passed;
  total.failed += status === 0 ? failed : Math.max(1, failed);
}

/** Makes the unit tests that have draws, with all of them. */
function testAllDraws(): void {
  say("\n== unit tests with all their draws");
  const report = "test-results/draws.json";
  rmSync(report, { force: true });
  const tests = readdirSync("tests", { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".test.ts"))
    .map((name) => join("tests", name))
    .filter((file) => readFileSync(file, "utf8").includes("support/draws"));
  const { status } = spawnSync(
    "npx",
    ["vitest", "run", ...tests, "--reporter=default", "--reporter=json", `--outputFile.json=${report}`],
    {
      stdio: "inherit",
      env: { ...process.env, [ALL_DRAWS]: "yes" },
    },
  );
  const { passed, failed } = unitCount(report);
  total.passed += passed;
  total.failed += status === 0 ? failed : Math.max(1, failed);
}

if (options.only === "") {
  testBrowser();
  testAllDraws();
}
const names = readdirSync(import.meta.dirname).filter(
  (name) => name.endsWith(".trial.ts") && name.includes(options.only),
);
const trials = await Promise.all(
  names.map(async (name) => ((await import(join(import.meta.dirname, name))) as { readonly trial: Trial }).trial),
);
const ends = performance.now() + 60_000 * minutes;
const server = await serveBuilt();
for (const [k, trial] of trials.entries()) {
  // What one trial leaves of its share goes to those after it.
  await make(trial, server.address, Math.max(0, ends - performance.now()) / (trials.length - k));
}
await server.close();
say(`\n${total.passed} passed, ${total.failed} failed`);
process.exitCode = total.failed > 0 || total.passed === 0 ? 1 : 0;
