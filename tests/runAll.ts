import { spawnSync } from "node:child_process";
import { mkdirSync, rmSync } from "node:fs";
import { browserCount, type Count, count, readJson, skipReasons } from "./support/testCounts";

/** Runs every check of the project, one after the other, and closes with a count of the tests. */
const UNIT_RESULTS = "test-results/unit.json";

const STAGES: readonly { readonly name: string; readonly command: string }[] = [
  { name: "types", command: "npm run typecheck" },
  { name: "lint", command: "npm run lint" },
  { name: "unused exports and dependencies", command: "npm run unused" },
  {
    name: "layers, unit, property, reference and model tests",
    command: `npx vitest run --reporter=default --reporter=json --outputFile.json=${UNIT_RESULTS}`,
  },
  { name: "browser tests", command: "npm run browser" },
];

const unitCount = (): Count => {
  const { numPassedTests, numFailedTests, numPendingTests } = readJson(UNIT_RESULTS);
  return { passed: count(numPassedTests), failed: count(numFailedTests), skipped: count(numPendingTests) };
};

rmSync("test-results", { recursive: true, force: true });
mkdirSync("test-results", { recursive: true });

const failed = STAGES.filter(({ name, command }) => {
  process.stdout.write(`\n== ${name}\n`);
  return spawnSync(command, { shell: true, stdio: "inherit" }).status !== 0;
});

const counts = [unitCount(), browserCount()];
const sum = (key: keyof Count) => counts.reduce((total, one) => total + one[key], 0);
const failures = Math.max(sum("failed"), failed.length > 0 ? 1 : 0);
for (const { name } of failed) process.stdout.write(`\nFAILED: ${name}`);
// A machine that draws otherwise compares no pictures.
for (const why of skipReasons()) process.stdout.write(`skipped: ${why}\n`);
process.stdout.write(`\n${sum("passed")} passed, ${failures} failed, ${sum("skipped")} skipped\n`);
process.exitCode = failed.length > 0 || sum("passed") === 0 ? 1 : 0;
