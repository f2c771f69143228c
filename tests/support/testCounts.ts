import { existsSync, readFileSync } from "node:fs";

/** Where Playwright leaves what came of its tests (playwright.config.ts). */
const BROWSER_RESULTS = "test-results/browser.json";

/** How many tests ended how. */
export interface Count {
  readonly passed: number;
  readonly failed: number;
  readonly skipped: number;
}

/** A report of tests; empty where there is none. */
const readJson = (file: string): Record<string, unknown> =>
  existsSync(file) ? (JSON.parse(readFileSync(file, "utf8")) as Record<string, unknown>) : {};

/** A count of a report; 0 where it has none. */
const count = (value: unknown) => (typeof value === "number" ? value : 0);

/** What came of unit tests. @param file - their report */
export const unitCount = (file: string): Count => {
  const { numPassedTests, numFailedTests, numPendingTests } = readJson(file);
  return { passed: count(numPassedTests), failed: count(numFailedTests), skipped: count(numPendingTests) };
};

/** What came of the browser tests that ran last. */
export const browserCount = (): Count => {
  const stats = (readJson(BROWSER_RESULTS).stats ?? {}) as Record<string, unknown>;
  return {
    passed: count(stats.expected) + count(stats.flaky),
    failed: count(stats.unexpected),
    skipped: count(stats.skipped),
  };
};

/** Why browser tests were skipped, each reason once. */
export function skipReasons(): readonly string[] {
  const reasons = new Set<string>();
  const isSkip = (value: unknown): value is { readonly description: string } =>
    typeof value === "object" && value !== null && "type" in value && value.type === "skip" && "description" in value;
  const text = existsSync(BROWSER_RESULTS) ? readFileSync(BROWSER_RESULTS, "utf8") : "{}";
  JSON.parse(text, (_, value: unknown) => {
    if (isSkip(value)) reasons.add(value.description);
    return value;
  });
  return [...reasons];
}
