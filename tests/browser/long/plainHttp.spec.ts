import { test as base, chromium, expect, type Page } from "@playwright/test";
import { dialingStation, testSheet } from "../../support/testSheet";
import { Bench } from "../bench";
import { BROWSER_SWITCHES, browserPath } from "../browserPath";
import { dialLast, start, verdict } from "../sittingByKeys";
import { serveBuilt } from "../staticServer";

/*
 * The built app on plain http under a host name of its own, as a training room serves it to its tablets. Such a page is not
 * secure: there is no crypto.subtle, no crypto.randomUUID, no clipboard, no service worker and no storage manager.
 */

const test = base.extend<{ readonly plainPage: Page }>({
  // biome-ignore lint/correctness/noEmptyPattern: a fixture names what it needs
  plainPage: async ({}, use) => {
    const server = await serveBuilt();
    const browser = await chromium.launch({
      executablePath: browserPath() ?? "",
      args: [...BROWSER_SWITCHES, "--host-resolver-rules=MAP bench.example 127.0.0.1"],
    });
    const { port } = new URL(server.address);
    const page = await browser.newPage({
      baseURL: `http://bench.example:${port}/`,
      viewport: { width: 1280, height: 800 },
    });
    const errors: string[] = [];
    page.on("pageerror", (error) => errors.push(String(error)));
    await use(page);
    await browser.close();
    await server.close();
    expect(errors, "the page reports no error").toEqual([]);
  },
});

test("an attempt is in the logbook after a reload, and a line for the command line can be copied", async ({
  plainPage: page,
}) => {
  await page.goto("#/bench?seed=5");
  expect(await page.evaluate(() => [isSecureContext, "randomUUID" in crypto, "clipboard" in navigator])).toEqual([
    false,
    false,
    false,
  ]);
  const bench = new Bench(page);
  await dialLast(page);
  await expect(bench.state).toHaveText(/^Opened/);
  await page.goto("#/logbook");
  await expect(page.getByRole("row", { name: /Opened/ })).toHaveCount(1);
  await page.reload();
  await expect(page.getByRole("row", { name: /Opened/ })).toHaveCount(1);
  await expect(page.getByText("All records are saved in this browser, on this device only.")).toBeVisible();
});

test("a sitting comes to a record with its hash, which is there after a reload and can be checked", async ({
  plainPage: page,
}) => {
  await page.goto("#/bench");
  await start(
    page,
    testSheet({ title: "One try", stations: [dialingStation({ repetitions: 1, passMarks: { firstTime: 1 } })] }),
  );
  await dialLast(page);
  await expect(verdict(page)).toHaveText(/^(Passed|Not shown)/);
  await page.goto("#/logbook?view=sittings");
  await page.reload();
  await expect(page.getByRole("table", { name: "Sittings, latest first" }).locator("tbody tr")).toHaveText([/One try/]);
});
