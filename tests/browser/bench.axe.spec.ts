import type { Page } from "@playwright/test";
import { idealMotion } from "../../src/dialing/idealMotion";
import { shippedProfile } from "../../src/lock/shippedProfiles";
import { LOOKS, look, violations } from "./axe";
import type { Bench } from "./bench";
import { KeyHand } from "./hands";
import { expect, test } from "./page";

/** Dials the three-wheel lock's combination as far as asked: so many stops, then perhaps the draw. */
async function dial(bench: Bench, count: number, stopErrors: readonly number[] = []): Promise<void> {
  const profile = shippedProfile("three-wheel");
  const hand = new KeyHand(bench, profile.graduations);
  const path = idealMotion(profile, profile.asSet ?? [], await bench.reading(), stopErrors, 5).slice(0, count + 1);
  for (const [i, position] of path.slice(1).entries()) await hand.turnBy(position - (path[i] ?? 0));
}

/** Moments in which a person meets the bench, and how one comes there. */
const MOMENTS: readonly { readonly name: string; readonly reach: (bench: Bench) => Promise<void> }[] = [
  { name: "fresh", reach: async (bench) => bench.open() },
  {
    name: "in the midst of an attempt, with a fault",
    reach: async (bench) => {
      await bench.open();
      await dial(bench, 3, [0, 3]);
    },
  },
  {
    name: "opened",
    reach: async (bench) => {
      await bench.open();
      await dial(bench, 4);
      await expect(bench.state).toHaveText(/^Opened/);
    },
  },
  {
    name: "failed, with a ghost, in the replay",
    reach: async (bench) => {
      await bench.open();
      await dial(bench, 4, [0, 3]);
      await expect(bench.state).toHaveText(/^Did not open/);
      await bench.page.getByRole("combobox", { name: "Compare on the turn chart" }).selectOption("ideal");
      await bench.page.getByRole("slider", { name: "Time in the replay" }).press("PageUp");
      await expect(bench.say).toHaveText(/^Replay/);
    },
  },
  {
    name: "an encoder lock in the midst of an attempt",
    reach: async (bench) => {
      await bench.open({ profile: "dial-encoder" });
      await new KeyHand(bench, 100).turnBy(250);
    },
  },
  {
    name: "silent",
    reach: async (bench) => {
      await bench.open({ help: "silent" });
      await dial(bench, 2);
    },
  },
  {
    name: "counts",
    reach: async (bench) => {
      await bench.open({ help: "counts" });
      await dial(bench, 2);
    },
  },
  {
    name: "the sheet for the combination",
    reach: async (bench) => {
      await bench.open();
      await bench.page.getByRole("button", { name: /^Combination/ }).click();
      await bench.page.getByRole("radio", { name: "My own" }).check();
      await bench.page.getByRole("textbox", { name: "second number" }).fill("39");
    },
  },
  {
    name: "the sheet for the combination, with a number that is none",
    reach: async (bench) => {
      await bench.open();
      await bench.page.getByRole("button", { name: /^Combination/ }).click();
      await bench.page.getByRole("radio", { name: "My own" }).check();
      await bench.page.getByRole("textbox", { name: "second number" }).fill("abc");
    },
  },
  {
    name: "the sheet for sharing, with text that is none",
    reach: async (bench) => {
      await bench.open();
      await dial(bench, 1);
      await bench.button("Share").click();
      await bench.page.getByRole("textbox", { name: "A recorded attempt to load" }).fill("{");
      await bench.button("Load and replay").click();
    },
  },
  { name: "a problem with the address", reach: async (bench) => bench.open({ profile: "no-such-lock" }) },
];

/** What `npm test` looks at; `npm run trials` looks at all the others. */
const AT_ONCE = ["fresh", "in the midst of an attempt, with a fault"];

for (const { name, reach } of MOMENTS) {
  const tag = AT_ONCE.includes(name) ? [] : ["@long"];
  test(`axe finds nothing wrong, light or dark, on a desk or a phone: ${name}`, { tag }, async ({ bench, page }) => {
    await reach(bench);
    for (const one of LOOKS) {
      await look(page, one);
      expect(await violations(page), one.name).toEqual([]);
    }
  });
}

/** Name and role of what has the focus, as the browser tells them to assistive technology. */
async function focused(page: Page): Promise<string> {
  const [line = ""] = (await page.locator(":focus").ariaSnapshot()).split("\n");
  return line.replace(/^- '?/, "").replace(/ \[active\]|'?:?$/g, "");
}

/** What Tab comes to, in order, until it leaves the page or comes round. */
async function tabOrder(page: Page): Promise<string[]> {
  const order: string[] = [];
  for (let i = 0; i < 60; i++) {
    await page.keyboard.press("Tab");
    if ((await page.locator(":focus").count()) === 0) break;
    const next = await focused(page);
    if (order.length > 0 && next === order[0]) break;
    order.push(next);
  }
  return order;
}

test.describe("the keyboard", () => {
  test("comes to everything in the order in which it is read", async ({ bench, page }) => {
    await bench.open();
    await dial(bench, 4);
    await expect(bench.state).toHaveText(/^Opened/);
    // A click on plain text: Tab goes on from there.
    await page.getByText("Gatefall", { exact: true }).click();
    const order = await tabOrder(page);
    process.stdout.write(`Tab order on the bench:\n${order.map((one) => `  ${one}`).join("\n")}\n`);
    const expected = [
      /^link "Start"/,
      /^link "Bench"/,
      /^link "Fitting"/,
      /^link "Zeroing"/,
      /^link "Handover"/,
      /^link "Drill sheets"/,
      /^link "Sittings"/,
      /^link "Logbook"/,
      /^link "Class desk"/,
      /^link "Words"/,
      /^button "Sound/,
      /^button "Theme/,
      /^combobox "Lock"/,
      /^button "Load a lock profile file|^.*Load a lock profile file/,
      /^button "Combination/,
      /^button "Full"/,
      /^button "Counts"/,
      /^button "Silent"/,
      /^button "More/,
      /^slider "Dial"/,
      /^button "Hide digits/,
      /^button "Again/,
      /^button "New numbers/,
      /^button "Left by 1 turn"/,
      /^button "Left by 10"/,
      /^button "Left by 1"/,
      /^button "Left by 0\.1"/,
      /^button "Right by 0\.1"/,
      /^button "Right by 1"/,
      /^button "Right by 10"/,
      /^button "Right by 1 turn"/,
    ];
    for (const [i, name] of expected.entries()) expect(order[i]).toMatch(name);
    const rest = order.slice(expected.length).join("\n");
    expect(rest).toMatch(
      /option "Arrival 1 of 4[\s\S]*button "Play"[\s\S]*slider "Time in the replay"[\s\S]*combobox "Compare on the turn chart"[\s\S]*button "Share"/,
    );
  });

  test("finds the whole plate before the dial: nothing that is not there takes the focus", async ({ bench, page }) => {
    await bench.open({ help: "silent" });
    const order = await tabOrder(page);
    expect(order.filter((one) => /Play|Time in the replay|What happened/.test(one))).toEqual([]);
    expect(order.length).toBeGreaterThan(20);
  });

  for (const { name, opener } of [
    { name: "combination", opener: /^Combination/ },
    { name: "sharing", opener: "Share" },
    { name: "more settings", opener: "More" },
  ]) {
    for (const way of ["Escape", "the Close button"] as const) {
      test(`comes back to the button that opened the sheet for ${name}, closed by ${way}`, async ({ bench, page }) => {
        await bench.open();
        const button = page.getByRole("button", { name: opener });
        await button.focus();
        await page.keyboard.press("Enter");
        const sheet = page.getByRole("dialog");
        await expect(sheet).toBeVisible();
        await expect(sheet.locator(":focus")).toHaveCount(1);
        // Tab stays within the sheet (the browser's own buttons aside).
        for (let i = 0; i < 12; i++) {
          await page.keyboard.press("Tab");
          const outside = await page.evaluate(
            () => document.activeElement !== document.body && document.activeElement?.closest("[role=dialog]") === null,
          );
          expect(outside).toBe(false);
        }
        if (way === "Escape") await page.keyboard.press("Escape");
        else await sheet.getByRole("button", { name: "Close" }).press("Enter");
        await expect(sheet).toHaveCount(0);
        await expect(button).toBeFocused();
      });
    }
  }

  test("comes back to the button when a combination has been set", async ({ bench, page }) => {
    await bench.open();
    const button = page.getByRole("button", { name: /^Combination/ });
    await button.click();
    await page.getByRole("button", { name: "Set the lock" }).press("Enter");
    await expect(button).toBeFocused();
  });

  test("shows where it is: every stop of Tab has an outline", async ({ bench, page }) => {
    await bench.open();
    await dial(bench, 4);
    const without: string[] = [];
    for (let i = 0; i < 24; i++) {
      await page.keyboard.press("Tab");
      // A file input is hidden inside its label, which shows the focus for it.
      const shown = page.locator("label:has(input[type=file]:focus), :focus:not(input[type=file])");
      if ((await shown.count()) === 0) continue;
      const outline = await shown.evaluate((element) => {
        const { outlineStyle, outlineWidth } = getComputedStyle(element);
        return outlineStyle === "none" ? 0 : Number.parseFloat(outlineWidth);
      });
      if (outline < 2) without.push(await focused(page));
    }
    expect(without).toEqual([]);
  });
});

test.describe("everything to press", () => {
  for (const { width, height } of LOOKS) {
    const viewport = { width, height };
    test(`is 24 pixels or more each way in a window of ${viewport.width} by ${viewport.height}`, async ({
      bench,
      page,
    }) => {
      await page.setViewportSize(viewport);
      await bench.open();
      await dial(bench, 4);
      const small = async () =>
        page.locator("button, select, input, textarea, a, label.button").evaluateAll((elements) =>
          elements
            .filter((element) => {
              const { width, height } = element.getBoundingClientRect();
              // An input within a label is pressed through the label, which is listed itself.
              const isLabeled =
                element.matches("input[type=file], input[type=radio]") && element.closest("label") !== null;
              return element.checkVisibility() && !isLabeled && (width < 24 || height < 24);
            })
            .map((element) => {
              const { width, height } = element.getBoundingClientRect();
              return `${element.tagName} ${element.textContent || element.getAttribute("aria-label")}: ${width} by ${height}`;
            }),
        );
      expect(await small()).toEqual([]);
      for (const name of [/^Combination/, "Share"]) {
        await page.getByRole("button", { name }).click();
        await expect(page.getByRole("dialog")).toBeVisible();
        expect(await small()).toEqual([]);
        await page.keyboard.press("Escape");
      }
    });
  }
});
