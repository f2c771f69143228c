import { Fitter } from "./fitting";
import { expect, test } from "./page";

test("the dial is turned in the section by keys and by pointer: it comes closer, its zero goes round, and the key lifts the lever", async ({
  page,
}) => {
  const fitter = new Fitter(page);
  await page.goto("#/fitting?seed=3&help=counts");
  const section = page.getByRole("slider", { name: "Dial, seen from the side" });
  await expect(section).toHaveAttribute("aria-valuetext", "The dial is in the tray.");
  await fitter.begin();
  await fitter.does("Put it on over the bushing");
  await fitter.cut("88.5");
  await fitter.does("File and chamfer the end");
  await section.press("Shift+PageDown");
  await expect(page.getByRole("group", { name: "Dial: screwed into the cam" })).toBeVisible();
  await expect(section).toHaveAttribute("aria-valuetext", /zero is .* It is some \d mm from the ring/);
  const gap = fitter.gauge("Gap between dial and ring");
  const before = Number.parseFloat((await gap.textContent()) ?? "");
  // Down by the dial's radius turns it by one radian, 100/(2 pi) graduations of 0.635 mm a turn.
  const grip = page.locator("[data-grip]").first();
  const { x, y, width, height } = (await grip.boundingBox()) ?? { x: 0, y: 0, width: 0, height: 0 };
  await page.mouse.move(x + width / 2, y + height / 4);
  await page.mouse.down();
  await page.mouse.move(x + width / 2, y + (3 * height) / 4, { steps: 8 });
  await page.mouse.up();
  const after = Number.parseFloat((await gap.textContent()) ?? "");
  expect(Math.abs(before - after - 0.635 / (2 * Math.PI))).toBeLessThan(0.015);

  await fitter.toKeyway(0);
  await fitter.does("Insert the key");
  const checks = page.getByRole("region", { name: "Checks" });
  await expect(section).toHaveAttribute("aria-valuetext", /The nose is in the gate/);
  const seen: string[] = [];
  for (let k = 0; k < 10; k++) {
    await section.press("PageUp");
    seen.push((await section.getAttribute("aria-valuetext")) ?? "");
  }
  expect(seen.some((text) => /The key lifts the lever \d\.\d mm/.test(text))).toBe(true);
  expect(seen.some((text) => text.includes("The nose rides on the cam"))).toBe(true);
  expect(seen.at(-1)).toContain("The nose is in the gate");
  // It was turned all round: that is the check.
  await expect(checks.getByRole("status")).toHaveText(/catches once in each turn/);
  await expect(checks.getByRole("button", { name: "Turn it all round , made" })).toBeVisible();
});
