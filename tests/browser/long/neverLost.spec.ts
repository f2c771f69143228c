import { expect, type Page, test } from "@playwright/test";
import { idealMotion } from "../../../src/dialing/idealMotion";
import { shippedProfile } from "../../../src/lock/shippedProfiles";
import { Bench } from "../bench";
import { KeyHand } from "../hands";
import { dialLast } from "../sittingByKeys";
import { storedRows } from "../storedRows";

const rows = (page: Page) => page.getByRole("table", { name: "Attempts, latest first" }).locator("tbody tr");
const saving = (page: Page) => page.getByRole("complementary", { name: "Saving" });

test("a clock that is set back in mid-attempt loses nothing: what was under way has its end", async ({ page }) => {
  await page.goto("#/bench?seed=5");
  const bench = new Bench(page);
  const profile = shippedProfile("three-wheel");
  const hand = new KeyHand(bench, profile.graduations);
  const path = idealMotion(profile, profile.asSet ?? [], await bench.reading(), [], 5);
  const turns = path.slice(1).map((position, i) => position - (path[i] ?? 0));
  const half = Math.ceil(turns.length / 2);
  for (const turn of turns.slice(0, half)) await hand.turnBy(turn);
  await expect.poll(() => storedRows(page, "attempts")).toMatchObject([{ isUnfinished: true }]);
  await page.evaluate(() => {
    const now = Date.now.bind(Date);
    Date.now = () => now() - 3_600_000;
  });
  for (const turn of turns.slice(half)) await hand.turnBy(turn);
  await expect(bench.state).toHaveText(/^Opened/);
  await expect.poll(() => storedRows(page, "attempts")).toMatchObject([{ opened: true }]);
  await page.goto("#/logbook");
  await page.reload();
  await expect(rows(page)).toHaveText([/Opened/]);
});

test("a database deleted in another tab is made anew, and the next attempt brings its person", async ({
  page,
  context,
}) => {
  await page.goto("#/bench?seed=5");
  await dialLast(page);
  await expect.poll(() => storedRows(page, "attempts")).toHaveLength(1);
  const other = await context.newPage();
  await other.goto("icon.svg").catch(() => undefined);
  await other.evaluate(
    () =>
      new Promise((done) => {
        indexedDB.deleteDatabase("gatefall-logbook").onsuccess = done;
      }),
  );
  await page.keyboard.press("r");
  await dialLast(page);
  await expect.poll(() => storedRows(page, "attempts")).toHaveLength(1);
  expect(await storedRows(page, "people")).toHaveLength(1);
  await expect(saving(page)).toHaveCount(0);
  await page.goto("#/logbook");
  await expect(rows(page)).toHaveText([/Opened/]);
});

test("two tabs that begin at once make one person, and both attempts are theirs", async ({ page, context }) => {
  const other = await context.newPage();
  await Promise.all([page.goto("#/bench?seed=5"), other.goto("#/bench?seed=6")]);
  // Neither has anybody yet; the one that is behind must not make somebody of the same name.
  await Promise.all([dialLast(page), dialLast(other)]);
  await expect.poll(() => storedRows(page, "attempts")).toHaveLength(2);
  const people = await storedRows(page, "people");
  expect(people.map(({ name }) => name)).toEqual(["Trainee"]);
});

test("a page that is reloaded while an opening is on its way to the database leaves it to the next one", async ({
  page,
}) => {
  await page.goto("#/bench?seed=5");
  await page.evaluate(() => {
    const put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = function (...asked) {
      const request = put.apply(this, asked);
      // What has opened is asked for over and over: its transaction does not end before the page does, and is dropped.
      const holdOpen = () => {
        this.get("nothing").onsuccess = holdOpen;
      };
      if (this.name === "attempts" && asked[0].isUnfinished !== true) holdOpen();
      return request;
    };
  });
  await dialLast(page);
  await expect(new Bench(page).state).toHaveText(/^Opened/);
  await page.waitForTimeout(300);
  expect(await saving(page).count(), "nothing was said yet").toBe(0);
  await page.reload();
  await expect.poll(() => storedRows(page, "attempts")).toMatchObject([{ opened: true }]);
  await page.goto("#/logbook");
  await expect(rows(page)).toHaveText([/Opened/]);
  expect(await page.evaluate(() => Object.keys(localStorage).filter((key) => /notes|waiting/.test(key)))).toEqual([]);
});

test("an opening that the page has not even handed on when it goes is left to the next one", async ({ page }) => {
  await page.goto("#/bench?seed=5");
  await expect(new Bench(page).dial).toBeVisible();
  await page.evaluate(() => {
    // No timer comes to its turn any more once the page is about to go.
    const { setTimeout: later } = globalThis;
    Object.assign(globalThis, {
      setTimeout: (act: () => void, wait = 0) => (wait === 0 ? 0 : later(act, wait)),
    });
  });
  await dialLast(page);
  await expect(new Bench(page).state).toHaveText(/^Opened/);
  await page.reload();
  await expect.poll(() => storedRows(page, "attempts")).toMatchObject([{ opened: true }]);
});

test("a full storage is said on the bench at once; a copy outlives the page and is stored by the next one", async ({
  page,
}) => {
  await page.goto("#/bench?seed=5");
  await page.evaluate(() => {
    const put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = function (...asked) {
      if (this.name === "attempts") throw new DOMException("The quota has been exceeded.", "QuotaExceededError");
      return put.apply(this, asked);
    };
  });
  await dialLast(page);
  await expect(saving(page).getByRole("alert")).toHaveText(
    /^Not saved \(\d records?\): The browser has no room left for records\..* A copy is in this browser until then\.$/,
  );
  expect(await storedRows(page, "attempts")).toEqual([]);
  await page.reload();
  await expect.poll(() => storedRows(page, "attempts")).toMatchObject([{ opened: true }]);
  await expect(saving(page)).toHaveCount(0);
});

test("a database that never answers is said on the bench, and what waits is stored once it does", async ({ page }) => {
  await page.addInitScript(() => {
    const open = IDBFactory.prototype.open;
    const held: (() => void)[] = [];
    Object.assign(globalThis, {
      letGo: () => {
        for (const answer of held) answer();
      },
    });
    IDBFactory.prototype.open = function (...asked) {
      if (held.length > 0 || sessionStorage.getItem("held") !== null) return open.apply(this, asked);
      sessionStorage.setItem("held", "once");
      const silent = new EventTarget() as IDBOpenDBRequest;
      held.push(() => {
        const real = open.apply(this, asked);
        real.onupgradeneeded = () => real.transaction?.abort();
        real.onerror = (event) => {
          event.preventDefault();
          Object.defineProperty(silent, "error", { value: real.error });
          silent.onerror?.(event);
        };
        real.onsuccess = (event) => {
          Object.defineProperty(silent, "result", { value: real.result });
          silent.onsuccess?.(event);
        };
      });
      return silent;
    };
  });
  await page.goto("#/bench?seed=5");
  await expect(saving(page)).toContainText("The browser’s database does not answer.", { timeout: 15_000 });
  await dialLast(page);
  await page.evaluate(() => (globalThis as unknown as { letGo: () => void }).letGo());
  await expect(saving(page)).toHaveCount(0);
  await expect.poll(() => storedRows(page, "attempts")).toMatchObject([{ opened: true }]);
});
