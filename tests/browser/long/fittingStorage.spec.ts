import type { Page } from "@playwright/test";
import { expect, test } from "../page";

/* The storage that fitting, finding, service visits and handovers have is full, forbidden or spoiled, and the clock is set: nothing is lost unsaid. */

/** Each exercise: its address, two acts, what shows that both were made, and its stored text. */
const EXERCISES = [
  {
    name: "fitting",
    address: "#/fitting?profile=three-wheel&seed=3",
    acts: ["Hang it by one screw", "Put it on over the bushing"],
    shown: (page: Page) => page.getByRole("group", { name: "Ring: on, screws loose" }),
    key: "gatefall.fitting.three-wheel",
  },
  {
    name: "inspection",
    address: "#/fitting?view=find&profile=three-wheel&seed=3",
    acts: [/^Turn the wheels/, /^Try every screw/],
    shown: (page: Page) => page.getByText(", made").nth(1),
    key: "gatefall.inspection",
  },
  {
    name: "service visit",
    address: "#/fitting?view=service&profile=three-wheel&seed=12",
    acts: ["Have the door opened", "Hold the door open"],
    shown: (page: Page) => page.getByText("Hold the door open: done.").first(),
    key: "gatefall.service-visit",
  },
] as const;

/** Runs in the page before it: its texts are full, or refused altogether; so is its database. */
const spoil = ({ texts, database }: { readonly texts: "full" | "forbidden"; readonly database: boolean }) => {
  const refuse = () => {
    throw new DOMException("refused", texts === "full" ? "QuotaExceededError" : "SecurityError");
  };
  if (texts === "full") Storage.prototype.setItem = refuse;
  else Object.defineProperty(window, "localStorage", { get: refuse });
  if (database) Object.defineProperty(window, "indexedDB", { get: refuse });
};

const act = async (page: Page, name: string | RegExp) =>
  page
    .getByRole("button", { name, exact: typeof name === "string" })
    .first()
    .press("Enter");

for (const { name, address, acts, shown, key } of EXERCISES) {
  for (const texts of ["full", "forbidden"] as const) {
    test(`${name}: where the page's texts are ${texts}, the database has it`, async ({ page }) => {
      await page.addInitScript(spoil, { texts, database: false });
      await page.goto(address);
      for (const one of acts) {
        await act(page, one);
        // Reloaded after every act.
        await page.waitForTimeout(300);
        await page.reload();
      }
      await expect(shown(page)).toBeAttached();
      expect(await page.getByText(/does not store your/).count()).toBe(0);
    });

    test(`${name}: where texts are ${texts} and there is no database, that is said, and the work goes on`, async ({
      page,
    }) => {
      await page.addInitScript(spoil, { texts, database: true });
      await page.goto(address);
      for (const one of acts) await act(page, one);
      await expect(shown(page)).toBeAttached();
      await expect(
        page.getByText(`This browser does not store your ${name}. It lasts as long as this page.`),
      ).toBeVisible();
      // To another page of ours and back: this page has it still.
      await page.goto("#/words");
      await page.goto(address);
      await expect(shown(page)).toBeAttached();
    });
  }

  test(`${name}: a spoiled text is set aside and told, whatever is wrong with it`, async ({ page }) => {
    await page.goto("#/words");
    for (const text of ["", "{", "null", "[]", '{"version":1}', "\u0000", `{"version":1,"acts":${"[".repeat(5000)}`]) {
      await page.evaluate(([at, spoiled]) => localStorage.setItem(at, spoiled), [key, text] as const);
      await page.goto(address);
      await page.reload();
      await expect(page.getByText(`The ${name} that this browser saved cannot be read.`)).toBeVisible();
      await expect(
        page.getByRole("button", { name: acts[0], exact: typeof acts[0] === "string" }).first(),
      ).toBeEnabled();
    }
    const aside = await page.evaluate(
      (at) => Object.keys(localStorage).filter((one) => one.startsWith(at)).length,
      key,
    );
    expect(aside).toBeGreaterThan(6);
  });

  test(`${name}: the clock set forward and back by a year, quick presses, no network: nothing is lost`, async ({
    page,
    context,
  }) => {
    await page.clock.install();
    await page.goto(address);
    await act(page, acts[0]);
    // What the page fetches ahead is there first: that it cannot be had later is another test's matter.
    await page.clock.runFor(20_000);
    await page.waitForLoadState("networkidle");
    await context.setOffline(true);
    await page.clock.setSystemTime(new Date("2030-01-01"));
    await act(page, acts[1]);
    await page.clock.setSystemTime(new Date("2020-01-01"));
    for (let k = 0; k < 30; k++) void act(page, acts[1]).catch(() => undefined);
    await page.waitForTimeout(1000);
    await context.setOffline(false);
    await page.reload();
    await expect(shown(page)).toBeAttached();
    expect(await page.getByText(/cannot be read/).count()).toBe(0);
    await page.goto("#/words");
    await page.goBack();
    await expect(shown(page)).toBeAttached();
  });
}

/** A handover that begins in the tray: its record has a person, so the logbook's database has it beside the page's text. */
const HANDOVER = {
  address: "#/handover?view=run&profile=three-wheel&seed=3&fit=first",
  acts: ["Hang it by one screw", "Put it on over the bushing"],
  shown: (page: Page) => page.getByRole("group", { name: "Ring: on, screws loose" }),
} as const;

for (const texts of ["full", "forbidden"] as const) {
  test(`handover: where the page's texts are ${texts}, the database has it`, async ({ page }) => {
    await page.addInitScript(spoil, { texts, database: false });
    await page.goto(HANDOVER.address);
    for (const one of HANDOVER.acts) {
      await act(page, one);
      await page.waitForTimeout(1000);
      await page.reload();
    }
    await expect(HANDOVER.shown(page)).toBeAttached();
    expect(await page.getByText(/This handover is not stored/).count()).toBe(0);
  });

  test(`handover: where texts are ${texts} and there is no database, that is said, and the work goes on`, async ({
    page,
  }) => {
    await page.addInitScript(spoil, { texts, database: true });
    await page.goto(HANDOVER.address);
    for (const one of HANDOVER.acts) await act(page, one);
    await expect(HANDOVER.shown(page)).toBeAttached();
    await expect(page.getByText(/^This handover is not stored\./)).toBeVisible();
    await page.goto("#/words");
    await page.goto(HANDOVER.address);
    await expect(HANDOVER.shown(page)).toBeAttached();
  });
}
