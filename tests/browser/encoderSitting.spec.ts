import { dialingStation, testSheet } from "../support/testSheet";
import { violations } from "./axe";
import { expect, test } from "./page";
import { openSheet, startHere } from "./sittingByKeys";
import { StubPort } from "./stubPort";

/*
 * A sitting whose dial an encoder turns: what its sheet admits, and what comes of a device that loses the hand. The browser's
 * serial ports are a stub: no real port, board or encoder was tried.
 */

const SHEET = testSheet({
  title: "With a real dial",
  stations: [
    dialingStation({ id: "hand", repetitions: 1, turnedBy: "real-dial", lostSight: "try-again" }),
    dialingStation({ id: "screen", repetitions: 1, turnedBy: "screen" }),
  ],
  sitting: { pauseAllowed: true, onReload: "resume", clockHideable: true },
});

test("a sitting lets only what it admits turn the dial, and begins a try again in which the hand was lost", async ({
  page,
  bench,
}) => {
  test.setTimeout(60_000);
  const port = await StubPort.onBench(page);
  await openSheet(page, SHEET);
  await expect(page.getByText(/the try is broken off and begun again, at most 2 times/)).toBeVisible();
  await startHere(page);
  const panel = page.getByRole("region", { name: "Sitting", exact: true });
  const before = await bench.reading();
  await bench.dial.press("ArrowLeft");
  await expect(panel.getByRole("alert")).toContainText("does not turn the dial here. Turn a real dial");
  await bench.expectReading(before, 100);
  await expect(page.getByRole("button", { name: "End this try" })).toBeDisabled();

  await port.turn(240);
  await bench.expectReading(before + 10, 100);
  await expect(panel.getByRole("alert")).toBeHidden();
  await port.startAnew();
  await expect(page.getByTestId("begun-again")).toContainText("begins again: 1 of 2 times");
  await expect(page.getByRole("button", { name: "End this try" })).toBeDisabled();
  expect(await violations(page)).toEqual([]);
  const again = await bench.reading();
  await page.getByRole("button", { name: "I go on" }).click();
  await port.turn(48);
  await bench.expectReading(again + 2, 100);
  await page.getByRole("button", { name: "End this try" }).click();

  await page.getByRole("button", { name: "Next try" }).click();
  const there = await bench.reading();
  await port.turn(240);
  await expect(panel.getByRole("alert")).toContainText("an encoder does not turn the dial here");
  await bench.expectReading(there, 100);
  await bench.dial.press("ArrowLeft");
  await page.getByRole("button", { name: "End this try" }).click();
  await expect(page.getByText(/begun again 1 time/).first()).toBeVisible();
});
