import type { Page } from "@playwright/test";
import { violations } from "./axe";
import { expect, test } from "./page";
import { StubPort } from "./stubPort";

/*
 * An encoder turns the dial on the bench. The browser's serial ports are a stub: no real port, board or encoder was tried.
 */

const row = (page: Page) => page.getByRole("listitem").filter({ hasText: "Encoder on a serial line" });

async function openPanel(page: Page) {
  await page.getByRole("button", { name: /^More/ }).click();
  await page.getByRole("button", { name: "Connect: Encoder on a serial line" }).waitFor();
}

test("an encoder turns the bench's dial, step for step, and the page says when it is unplugged", async ({
  page,
  bench,
}) => {
  const port = await StubPort.on(page);
  await bench.open({ profile: "three-wheel" });
  const before = await bench.reading();
  await openPanel(page);
  await page.getByRole("button", { name: "Connect: Encoder on a serial line" }).click();
  await expect(row(page).getByRole("status")).toHaveText("Status: waiting for it to answer");
  // What was pressed is gone: the keys stay with the device.
  await expect(row(page).getByRole("heading", { name: "Encoder on a serial line" })).toBeFocused();
  await port.start();
  await expect(row(page).getByRole("status")).toHaveText("Status: turns the dial in steps of 0.04 graduations");
  expect(await violations(page)).toEqual([]);
  await page.keyboard.press("Escape");

  // 33.5 graduations left, 12.25 right.
  await port.turn(33.5 * 24);
  await bench.expectReading(before + 33.5, 100);
  await port.turn(-12.25 * 24);
  await bench.expectReading(before + 21.25, 100);
  await expect(page.getByText("Encoder on a serial line: turns the dial in steps of 0.04 graduations")).toBeVisible();

  // A damaged line turns nothing; the next one says it all.
  await port.sayDamaged(24);
  await bench.expectReading(before + 21.25, 100);
  await port.turn(0);
  await bench.expectReading(before + 22.25, 100);

  await port.startAnew();
  await expect(page.getByRole("alert").filter({ hasText: "The board restarted" })).toBeVisible();
  await page.getByRole("button", { name: "I go on" }).click();
  await expect(bench.dial).toBeFocused();
  await port.turn(-24);
  await bench.expectReading(before + 21.25, 100);

  await port.pull();
  await expect(page.getByRole("alert").filter({ hasText: "The encoder was unplugged" })).toBeVisible();
  await expect(page.getByRole("button", { name: "Connect again" })).toBeVisible();
  await port.plugIn();
  await expect(page.getByText("Encoder on a serial line: waiting for it to answer")).toBeVisible();
  await port.startAnew();
  await expect(page.getByRole("alert").filter({ hasText: "connected again" })).toBeVisible();
  await port.turn(24);
  await bench.expectReading(before + 22.25, 100);
});

test("a second page does not take the dial from the first", async ({ page, bench, context }) => {
  const port = await StubPort.on(page);
  await bench.open();
  await openPanel(page);
  await page.getByRole("button", { name: "Connect: Encoder on a serial line" }).click();
  await port.start();
  await expect(row(page).getByRole("status")).toContainText("turns the dial");
  const other = await context.newPage();
  await StubPort.on(other);
  await other.goto("#/bench?seed=5");
  await openPanel(other);
  await other.getByRole("button", { name: "Connect: Encoder on a serial line" }).click();
  await expect(row(other).getByRole("alert")).toContainText("Another page of Gatefall holds the dial");
  // Let go of here, it can be had there.
  await page.getByRole("button", { name: "Disconnect" }).click();
  await other.getByRole("button", { name: "Connect: Encoder on a serial line" }).click();
  await expect(row(other).getByRole("status")).toHaveText("Status: waiting for it to answer");
});

test("a device stays in the hand on other screens, and says how long a move takes to the screen", async ({
  page,
  bench,
}) => {
  const port = await StubPort.on(page);
  await bench.open();
  await openPanel(page);
  await page.getByRole("button", { name: "Connect: Encoder on a serial line" }).click();
  await port.start();
  await port.turnSteadily(2, 100, 40);
  await expect(row(page)).toContainText(/Hand to screen: \d+ ms, 95 of 100 moves within \d+ ms\./);
  await page.keyboard.press("Escape");
  await page.goto("#/zeroing?seed=5");
  await page.getByRole("button", { name: "Clamp the ring" }).click();
  // A board that rests says where it is, or else it has gone silent.
  await port.turn(0);
  await expect(page.getByText("Encoder on a serial line: turns the dial")).toBeVisible();
  const before = await bench.reading();
  await port.turn(240);
  await bench.expectReading(before + 10, 100);
});

test("nothing of a device is fetched before one is wanted", async ({ page, bench }) => {
  const asked: string[] = [];
  page.on("request", (request) => asked.push(request.url()));
  await bench.open();
  await bench.cutaway.waitFor();
  expect(asked.filter((url) => /DevicePanel|devicesHere/.test(url))).toEqual([]);
  await openPanel(page);
  expect(asked.filter((url) => /DevicePanel/.test(url))).toHaveLength(1);
});
