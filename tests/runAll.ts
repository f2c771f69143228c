import { spawn, spawnSync } from "node:child_process";
import { mkdirSync, rmSync } from "node:fs";
import { browserCount, type Count, skipReasons, unitCount } from "./support/testCounts";

/** Runs every check of the project, and closes with a count of the tests. */
const UNIT_RESULTS = "test-results/unit.json";

interface Stage {
  readonly name: string;
  readonly command: string;
}

/** Side by side: each leaves a processor idle for a part of its time. */
const CHECKS: readonly Stage[] = [
  { name: "types", command: "npm run typecheck" },
  { name: "lint", command: "npm run lint" },
  { name: "unused exports and dependencies", command: "npm run unused" },
  { name: "the app that the browser tests open", command: "npx vite build --logLevel warn" },
];

/** One after the other: each takes all processors. */
const TESTS: readonly Stage[] = [
  {
    name: "layers, unit, property, reference and model tests",
    command: `npx vitest run --reporter=default --reporter=json --outputFile.json=${UNIT_RESULTS}`,
  },
  {
    name: "browser tests",
    command: "npx tsx tests/browser/ensureBrowser.ts && npx playwright test --project=quick",
  },
];

const say = (text: string) => process.stdout.write(text);

/** Runs a check, and shows what it said once it has ended. @returns whether it held */
const check = ({ name, command }: Stage) =>
  new Promise<boolean>((resolve) => {
    const said: string[] = [];
    const child = spawn(command, { shell: true, stdio: ["ignore", "pipe", "pipe"] });
    for (const output of [child.stdout, child.stderr]) {
      output.setEncoding("utf8").on("data", (text: string) => said.push(text));
    }
    child.on("close", (status) => {
      say(`\n== ${name}\n${said.join("")}`);
      resolve(status === 0);
    });
  });

/** @returns whether its tests held */
function test({ name, command }: Stage): boolean {
  say(`\n== ${name}\n`);
  return spawnSync(command, { shell: true, stdio: "inherit" }).status === 0;
}

rmSync("test-results", { recursive: true, force: true });
mkdirSync("test-results", { recursive: true });
// An app of an earlier build would be tested in place of one that cannot be built.
rmSync("dist", { recursive: true, force: true });

const checked = await Promise.all(CHECKS.map(check));
const failed = [...CHECKS.filter((_, k) => checked[k] !== true), ...TESTS.filter((stage) => !test(stage))];

const counts = [unitCount(UNIT_RESULTS), browserCount()];
const sum = (key: keyof Count) => counts.reduce((total, one) => total + one[key], 0);
const failures = Math.max(sum("failed"), failed.length > 0 ? 1 : 0);
for (const { name } of failed) say(`\nFAILED: ${name}`);
// A machine that draws otherwise compares no pictures.
for (const why of skipReasons()) say(`skipped: ${why}\n`);
say(`\n${sum("passed")} passed, ${failures} failed, ${sum("skipped")} skipped\n`);
process.exitCode = failed.length > 0 || sum("passed") === 0 ? 1 : 0;
