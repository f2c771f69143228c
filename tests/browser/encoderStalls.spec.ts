import { KeyHand } from "./hands";
import { expect, test } from "./page";
import { StubPort } from "./stubPort";

/*
 * An encoder's board that falls silent for a while, or floods the page. The browser's serial ports are a stub: no real port
 * or board was tried.
 */

test("a board that sends nothing for a while is missed by a sentence, and goes on where it is heard again", async ({
  page,
  bench,
}) => {
  const port = await StubPort.onBench(page);
  const before = await bench.reading();
  const silent = page.getByRole("alert").filter({ hasText: "The board has stopped sending." });
  await expect(silent).toBeVisible();
  await expect(page.getByText("Encoder on a serial line: not turning the dial")).toBeVisible();
  port.beUnheard(2000);
  // It was turned meanwhile, which is known, and how it came there is not.
  await port.turn(10 * 24);
  await expect(silent).toHaveCount(0);
  await bench.expectReading(before + 10, 100);
  await expect(page.getByRole("alert").filter({ hasText: "Nothing was heard of the encoder" })).toBeVisible();
});

test("a board that floods the page with 100,000 lines is let go with a sentence, and the page goes on", async ({
  page,
  bench,
}) => {
  const port = await StubPort.onBench(page);
  await port.flood(100_000);
  const said = page.getByRole("alert").filter({ hasText: "The board sent far more than an encoder does" });
  await expect(said).toBeVisible();
  await expect(page.getByText("Encoder on a serial line: not connected")).toBeVisible();
  const before = await bench.reading();
  await new KeyHand(bench, 100).turnBy(12);
  await bench.expectReading(before + 12, 100);
  // Put right, it is had again.
  await page.getByRole("button", { name: "Connect again" }).click();
  await port.startAnew();
  await expect(said).toHaveCount(0);
  await port.turn(24);
  await bench.expectReading(before + 13, 100);
});
