import { expect, test } from "../page";
import { startHere } from "../sittingByKeys";
import { serveBuilt } from "../staticServer";

test.use({ serviceWorkers: "allow" });

test.describe("after the first visit", () => {
  test("the app works without a network, every page of it", async ({ bench, page, context }) => {
    const server = await serveBuilt();
    try {
      await page.goto(`${server.address}#/bench?seed=5`);
      // First the worker stores the whole app, which a busy machine does slowly.
      await expect(page.getByText("Gatefall now works offline.")).toBeVisible({ timeout: 20_000 });
      await server.close();
      await context.setOffline(true);
      await page.reload();
      await bench.dial.focus();
      const before = await bench.reading();
      await page.keyboard.press("ArrowLeft");
      expect(await bench.reading()).toBe((before + 1) % 100);
      await page.getByRole("link", { name: "Zeroing" }).click();
      await expect(page.getByText("Turn the ring until its index is under the line")).toBeVisible();
    } finally {
      await server.close();
    }
  });

  test("a new version is told, waits, and starts where it is asked to and in no other tab", async ({
    bench,
    page,
    context,
  }) => {
    const server = await serveBuilt();
    try {
      await page.goto(`${server.address}#/bench?seed=5`);
      await page.getByRole("button", { name: "Close" }).click();
      await bench.dial.focus();
      await page.keyboard.press("ArrowLeft");
      const dialed = await bench.reading();
      const other = await context.newPage();
      await other.goto(`${server.address}#/bench?seed=6`);
      await expect(other.getByRole("slider")).toBeVisible();
      server.renew();
      await page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.update());
      await expect(page.getByText("A new version is ready. It starts when you say so.")).toBeVisible();
      expect(await bench.reading(), "nothing reloads during an attempt").toBe(dialed);
      await expect(other.getByText("A new version is ready. It starts when you say so.")).toBeVisible();
      // A mark that a reload would wipe off.
      await other.evaluate(() => document.body.setAttribute("data-mark", "kept"));
      const taken = other.evaluate(
        () => new Promise((done) => navigator.serviceWorker.addEventListener("controllerchange", () => done(true))),
      );
      const reloaded = page.waitForEvent("load");
      await page.getByRole("button", { name: "Start it now" }).click();
      await reloaded;
      await expect(bench.dial).toBeVisible();
      expect(await taken, "the new version serves the other tab too").toBe(true);
      await expect(other.locator("body")).toHaveAttribute("data-mark", "kept");
    } finally {
      await server.close();
    }
  });

  test("the start of a new version says first what becomes of an attempt or a handover", async ({ page }) => {
    const server = await serveBuilt();
    try {
      await page.goto(`${server.address}#/bench?seed=5`);
      await page.getByRole("button", { name: "Close" }).click();
      await page.getByRole("button", { name: "Left by 1 turn" }).click();
      await page.getByRole("button", { name: "Left by 1 turn" }).click();
      server.renew();
      await page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.update());
      await page.getByRole("button", { name: "Start it now" }).click();
      const asked = page.getByRole("dialog", { name: "Start the new version now?" });
      await expect(asked).toContainText("The attempt you are dialing ends. It stays in your logbook as unfinished.");
      await asked.getByRole("button", { name: "Not now" }).click();
      await page.getByRole("link", { name: "Handover" }).click();
      await page.getByRole("button", { name: "Measure the height" }).click();
      await page.getByRole("button", { name: "Start it now" }).click();
      await expect(asked).toContainText("The handover you are in is saved. Open Handover again");
    } finally {
      await server.close();
    }
  });

  test("the start of a new version says first what it would end of a sitting, and can be put off", async ({ page }) => {
    const server = await serveBuilt();
    try {
      await page.goto(`${server.address}#/bench`);
      await page.getByRole("button", { name: "Close" }).click();
      await page.goto(`${server.address}#/sittings?sheet=round-and-round`);
      await startHere(page);
      await page.keyboard.press("ArrowLeft");
      server.renew();
      await page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.update());
      await page.getByRole("button", { name: "Start it now" }).click();
      const asked = page.getByRole("dialog", { name: "Start the new version now?" });
      await expect(asked).toContainText('The try you are in is lost, and the sitting "Round and round" waits');
      await asked.getByRole("button", { name: "Not now" }).click();
      await expect(page.getByRole("slider", { name: "Dial" })).toBeVisible();
      const reloaded = page.waitForEvent("load");
      await page.getByRole("button", { name: "Start it now" }).click();
      await asked.getByRole("button", { name: "Reload and start it" }).click();
      await reloaded;
      await expect(page.getByRole("main")).toContainText("1 of 10 tries done, 1 of them lost");
    } finally {
      await server.close();
    }
  });
});
