import { test as base, expect } from "@playwright/test";
import { Bench } from "./bench";

interface Fixtures {
  /** The bench of the test's page. */
  readonly bench: Bench;
  /** Fails the test when any of its pages reports an error or a warning. */
  readonly cleanConsole: undefined;
}

/** A test with a page that must stay without errors. */
export const test = base.extend<Fixtures>({
  cleanConsole: [
    async ({ context }, use) => {
      const trouble: string[] = [];
      context.on("weberror", (error) => trouble.push(`uncaught: ${error.error()}`));
      context.on("console", (message) => {
        const isTrouble = message.type() === "error" || message.type() === "warning";
        // The tests keep the worker out on purpose (playwright.config.ts).
        if (isTrouble && !message.text().includes("Service Worker registration blocked")) trouble.push(message.text());
      });
      await use(undefined);
      expect(trouble, "the page reports no error").toEqual([]);
    },
    { auto: true },
  ],
  bench: async ({ page }, use) => {
    await use(new Bench(page));
  },
});

export { expect };
