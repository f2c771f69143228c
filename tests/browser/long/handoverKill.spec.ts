import { test as base, expect, type Page } from "@playwright/test";
import { seededChance } from "../../../src/statistics/chance";
import { doorWith, Handover } from "../handover";
import { KillableBrowser } from "../killableBrowser";

/* The browser is killed outright in a handover; what the database had said is stored is there when it is opened again. */

const test = base.extend<{ readonly browserToKill: KillableBrowser }>({
  browserToKill: async ({ baseURL }, use, info) => {
    const browser = new KillableBrowser(info.outputPath("profile"), baseURL ?? "");
    await use(browser);
    await browser.close();
  },
});

const ACTS = ["Measure the height", "Align the ring", "Dial the combination", "Spin off", "Test the inside release"];

/** Runs in the page: how many steps the database has of each handover. */
async function storedSteps(): Promise<number[]> {
  const opening = indexedDB.open("gatefall-logbook");
  const database = await new Promise<IDBDatabase>((done) => {
    opening.onsuccess = () => done(opening.result);
  });
  const reading = database.transaction("handoverRuns").objectStore("handoverRuns").getAll();
  const rows = await new Promise<{ isRunning: boolean; body: { run: { events: unknown[] } } }[]>((done) => {
    reading.onsuccess = () => done(reading.result);
  });
  database.close();
  return rows.filter(({ isRunning }) => isRunning).map(({ body }) => body.run.events.length);
}

const textOfRun = () => localStorage.getItem("gatefall.handover-run") ?? "";
const putText = (text: string) => localStorage.setItem("gatefall.handover-run", text);

const expectStored = (page: Page, steps: number) =>
  expect.poll(() => page.evaluate(storedSteps), { message: "the database has the step" }).toEqual([steps]);

for (const round of [1, 2, 3]) {
  test(`a handover killed at a moment of chance has every act that was stored, round ${round}`, async ({
    browserToKill,
  }) => {
    const chance = seededChance(round);
    const setup = doorWith({});
    const address = `#/handover?view=run&profile=${setup.profile.id}&seed=${setup.seed}&hands=off`;
    let page = await browserToKill.open(address);
    let [steps, stale] = [0, ""];
    for (let kill = 0; kill < 2; kill++) {
      const door = new Handover(page);
      await door.told.waitFor();
      const acts = 1 + Math.floor(chance() * 3);
      for (let k = 0; k < acts; k++) {
        await door.does(ACTS[steps % ACTS.length] ?? "Spin off");
        steps += 1;
        if (k === 0) stale = await page.evaluate(textOfRun);
      }
      await expectStored(page, steps);
      await browserToKill.kill();
      // A killed browser may lose the last minute of its texts; how much is chance, so the test sees to it.
      page = await browserToKill.open("#/bench");
      await page.evaluate(putText, stale);
      await page.goto(address);
      await page.reload();
      await new Handover(page).told.waitFor();
      await new Handover(page).does("Look back");
      await expect(page.getByRole("list", { name: "Step by step" }).getByRole("listitem")).toHaveCount(steps);
    }
  });
}
