import type { Page } from "@playwright/test";
import { idealMotion } from "../../src/dialing/idealMotion";
import { signOf } from "../../src/lock/dial";
import { shippedProfile } from "../../src/lock/shippedProfiles";
import { violations } from "./axe";
import { Bench } from "./bench";
import { KeyHand } from "./hands";
import { expect, test } from "./page";

const open = async (page: Page, query: string) => {
  await page.goto(`#/handover?view=trouble&${query}`);
  await page.getByRole("slider", { name: "Dial" }).waitFor();
};

const press = (page: Page, name: string) => page.getByRole("button", { name, exact: true }).press("Enter");

/** The last thing that an instrument showed, as it is spoken. */
const lastOf = (page: Page) => page.locator(".trouble-last[role=status]");

const gauge = (words: string) => Number(/: ([+−]?[\d.]+)\.$/.exec(words)?.[1]?.replace("−", "-"));

test("by keyboard alone: dialed by hand, measured, named right, and shown from the inside", async ({ page }) => {
  await open(page, "profile=two-wheel&pool=index-slipped&seed=2");
  const profile = shippedProfile("two-wheel");
  const plate = page.getByRole("list", { name: "Combination and turns" }).getByRole("listitem");
  const written = (await plate.locator("b").allInnerTexts()).map(Number);
  const bench = new Bench(page);
  const keys = new KeyHand(bench, profile.graduations);
  // A hand that stops on every written number does not open this one.
  const path = idealMotion(profile, written, await bench.reading(), [], 8);
  for (const [k, position] of path.slice(1).entries()) await keys.turnBy(position - (path[k] ?? 0));
  const seen = page.getByRole("region", { name: "Seen so far" }).locator("tbody tr");
  await expect(seen.first()).toContainText(/Own hand: .*did not open/);
  await expect(seen.first()).not.toContainText("turns were wrong");
  const cams: number[] = [];
  for (const side of ["left", "right", "left", "right"] as const) {
    await press(page, `Cam after a ${side} turn`);
    cams.push(gauge((await lastOf(page).textContent()) ?? ""));
  }
  const size = cams.reduce((sum, value) => sum + value, 0) / cams.length;
  expect(Math.abs(size)).toBeGreaterThan(0.6);

  await page.getByRole("radio", { name: "Index slipped" }).press("Space");
  const sizeField = page.getByLabel("The index is off by");
  await press(page, "Name it");
  await expect(sizeField).toBeFocused();
  await expect(sizeField).toHaveAttribute("aria-invalid", "true");
  await expect(sizeField).toHaveAccessibleDescription("Say how much, a number from 0 to 100.");
  await page.keyboard.type(Math.abs(size).toFixed(2));
  await expect(sizeField).not.toHaveAttribute("aria-invalid");
  await press(page, "Name it");
  await expect(page.getByRole("alert").filter({ hasText: "Say which way" })).toBeVisible();
  await expect(page.getByLabel("Which way")).toBeFocused();
  await page.getByLabel("Which way").selectOption(signOf("left") * size > 0 ? "left" : "right");
  await press(page, "Name it");
  await press(page, "Show the answer");
  const debrief = page.getByRole("region", { name: "What it was" });
  await expect(debrief.getByRole("heading", { name: "What it was" })).toBeFocused();
  await expect(debrief.getByRole("status")).toHaveText(
    /^Right: index slipped\. .*within the 0\.3 graduations allowed\.$/,
  );
  await expect(debrief).toContainText("2 of 2 points, 1 try, 4 measurements");
  await expect(debrief.getByRole("region", { name: "Cutaway" })).toBeVisible();
  await expect(debrief.locator("tbody tr")).toHaveCount(1);
  await expect(debrief.locator("tbody td").first()).toContainText("✕");
});

test("a wrong diagnosis is told with what it was; taken back it costs nothing; the same lock begins again", async ({
  page,
}) => {
  await open(page, "profile=three-wheel&pool=gates-tight&seed=6");
  const instruments = page.getByRole("region", { name: "Instruments" });
  await instruments.getByRole("button", { name: "Dial and draw" }).click();
  await expect(lastOf(page)).toHaveText(/opened\.$/);
  await expect(page.locator(".dial-open-ring")).toHaveCount(1);
  await instruments.getByRole("slider").first().fill("0.9");
  await instruments.getByRole("button", { name: "Dial and draw" }).click();
  await expect(lastOf(page)).toHaveText(/\(\+0\.9\).*did not open\.$/);
  await expect(page.locator(".dial-open-ring")).toHaveCount(0);
  const numbers = await page.getByRole("list", { name: "Combination and turns" }).locator("b").allInnerTexts();

  await page.getByRole("radio", { name: "Dial heavy" }).check();
  await page.getByLabel("The hand goes ahead by").fill("2");
  await page.getByRole("button", { name: "Name it" }).click();
  await page.getByRole("button", { name: "Take it back" }).click();
  await expect(page.getByLabel("The hand goes ahead by")).toHaveValue("2");
  await page.getByRole("button", { name: "Name it" }).click();
  await page.getByRole("button", { name: "Show the answer" }).click();
  const debrief = page.getByRole("region", { name: "What it was" });
  await expect(debrief.getByRole("status")).toHaveText(
    /^That is not it\. You named: Dial heavy: 2\.0 graduations\. It is: Draw reached only with care: 0\.\d\d graduations\.$/,
  );
  await expect(debrief).toContainText("0 of 2 points, 2 tries, 0 measurements");
  await expect(debrief).toContainText("The maker's written instructions decide.");
  await debrief.getByRole("button", { name: "Same again" }).click();
  await expect(page.getByRole("region", { name: "Seen so far" })).toContainText("Nothing yet");
  expect(await page.getByRole("list", { name: "Combination and turns" }).locator("b").allInnerTexts()).toEqual(numbers);
  await page.getByRole("radio", { name: "Dial heavy" }).check();
  await open(page, "profile=three-wheel&pool=gates-tight&seed=7");
  await expect(page.getByRole("radio", { name: "Dial heavy" })).not.toBeChecked();
});

/** Two looks that cover both schemes and both widths. */
const LOOKS = [
  { colorScheme: "light", width: 1280, height: 800 },
  { colorScheme: "dark", width: 390, height: 844 },
] as const;

async function expectSound(page: Page, moment: string): Promise<void> {
  for (const { colorScheme, ...window } of LOOKS) {
    const look = `${moment}, ${colorScheme}, ${window.width}`;
    await page.setViewportSize(window);
    await page.emulateMedia({ colorScheme });
    expect.soft(await violations(page), look).toEqual([]);
    const sticksOut = await page.locator("main *").evaluateAll((elements) =>
      elements
        // The line of parts scrolls across by design.
        .filter(
          (element) =>
            element.closest(".visually-hidden, svg, [hidden], details:not([open]), .handover-views") === null,
        )
        .filter((element) => element.getBoundingClientRect().right > innerWidth + 1)
        .map((element) => `${element.tagName} ${element.className}`),
    );
    expect.soft(sticksOut, `nothing sticks out: ${look}`).toEqual([]);
  }
}

test("axe finds nothing, light or dark, on a desk or a phone, and nothing sticks out", { tag: "@long" }, async ({
  page,
}) => {
  await open(page, "profile=dial-encoder&pool=zero-one-side&seed=4");
  for (const name of ["Compare numbers with the rules", "Pull left", "Cam after a right turn", "Dial and draw"]) {
    await page.getByRole("button", { name }).click();
  }
  await page.getByRole("radio", { name: "Zero set in one direction only" }).check();
  await expectSound(page, "measuring");
  await page.getByLabel("Which side").selectOption("left");
  await page.getByLabel("The other direction is off by").fill("1");
  await page.getByRole("button", { name: "Name it" }).click();
  await page.getByRole("button", { name: "Show the answer" }).click();
  await expectSound(page, "told");
});
