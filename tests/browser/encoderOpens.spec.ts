import { idealMotion } from "../../src/dialing/idealMotion";
import { shippedProfile } from "../../src/lock/shippedProfiles";
import { committedImage, SimulatedBoard } from "../support/board/simulatedBoard";
import { expect, test } from "./page";
import { StubPort } from "./stubPort";

/*
 * The firmware's image in a simulated board, its bytes by way of a stub of the serial port: a hand at an encoder opens the
 * bench's lock. No real port, board or encoder was tried.
 */

test("the firmware's bytes open the lock on the bench", async ({ page, bench }) => {
  const port = await StubPort.on(page);
  await bench.open({ profile: "three-wheel", combination: "38-71-26" });
  const from = await bench.reading();
  await page.getByRole("button", { name: /^More/ }).click();
  await page.getByRole("button", { name: "Connect: Encoder on a serial line" }).click();
  const board = new SimulatedBoard(committedImage());
  board.rest(20);
  await port.sayBytes(board.take());
  await expect(page.getByText("Status: turns the dial in steps of 0.04 graduations")).toBeVisible();
  await page.keyboard.press("Escape");

  const path = idealMotion(shippedProfile("three-wheel"), [38, 71, 26], from);
  for (const [k, stop] of path.entries()) {
    const by = stop - (path[k - 1] ?? from);
    board.turn(Math.round(by * 24), 4 * 2400);
    board.rest(400);
    await port.sayBytes(board.take());
    await bench.expectReading(stop, 100);
  }
  await expect(bench.dial).toHaveClass(/dial-is-open/);
  await expect(bench.result).toContainText("Open");
});
