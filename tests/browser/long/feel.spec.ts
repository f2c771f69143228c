import { idealMotion } from "../../../src/dialing/idealMotion";
import { wrap } from "../../../src/lock/dial";
import { shippedProfile } from "../../../src/lock/shippedProfiles";
import { violations } from "../axe";
import type { Bench } from "../bench";
import { KeyHand } from "../hands";
import { expect, test } from "../page";

const TWO = shippedProfile("two-wheel");

/** Dials the two-wheel lock by keys. @param stopErrors - graduations past each number */
async function dial(bench: Bench, stopErrors: readonly number[]): Promise<void> {
  const hand = new KeyHand(bench, TWO.graduations);
  const path = idealMotion(TWO, TWO.asSet ?? [], await bench.reading(), stopErrors, 2);
  for (const [k, end] of path.slice(1).entries()) await hand.turnBy(end - (path[k] ?? 0));
}

test("a heavy dial, chosen under More, lags by key and says when it sticks; the address keeps it", async ({
  bench,
}) => {
  const { page } = bench;
  await page.goto("#/bench?profile=two-wheel&help=full");
  await bench.dial.waitFor();
  await page.getByRole("button", { name: "More" }).click();
  await page.getByRole("radio", { name: /^Heavy/ }).check();
  expect(await violations(page)).toEqual([]);
  await page.keyboard.press("Escape");
  await expect(page.getByRole("button", { name: "More heavy" })).toBeVisible();
  expect(page.url()).toContain("dial=heavy");
  const before = await bench.reading();
  await bench.dial.press("PageUp");
  await bench.expectReading(before + 9.5, TWO.graduations);
  await bench.dial.press("PageDown");
  await bench.expectReading(before + 0.5, TWO.graduations);
  // Within the breakaway nothing moves, and that is told.
  await bench.dial.press("ArrowLeft");
  for (let k = 0; k < 2; k++) await bench.dial.press(",");
  await bench.expectReading(before + 0.5, TWO.graduations);
  await expect(bench.dial).toHaveAttribute("aria-valuetext", /, the dial sticks$/);
  await page.reload();
  await expect(page.getByRole("button", { name: "More heavy" })).toBeVisible();
});

for (const { name, address } of [
  { name: "set zero", address: "zeroing" },
  { name: "a change", address: "handover?view=change" },
  { name: "a holdback", address: "handover?view=holdback" },
  { name: "a handover", address: "handover?view=run&profile=three-wheel&seed=5&hands=on" },
]) {
  test(`the dial of ${name} is made heavy by the same choice, and its address keeps it`, async ({ bench }) => {
    const { page } = bench;
    await page.goto(`#/${address}`);
    await bench.dial.waitFor();
    await page.getByRole("combobox", { name: "Dial", exact: true }).selectOption("heavy");
    await expect(page).toHaveURL(/dial=heavy/);
    const sticks = async () => {
      await expect(async () => {
        await bench.dial.press(",");
        await expect(bench.dial).toHaveAttribute("aria-valuetext", /, the dial sticks$/, { timeout: 300 });
      }).toPass();
    };
    await sticks();
    await page.reload();
    await bench.dial.waitFor();
    await sticks();
  });
}

test("however much is set, the settings keep to one line and the whole bench stays in view", async ({ bench }) => {
  const { page } = bench;
  await page.goto("#/bench?profile=four-wheel&help=silent&dial=heavy");
  await page.getByRole("button", { name: "More heavy" }).click();
  await page.getByRole("checkbox", { name: /^Ask me/ }).check();
  await page.keyboard.press("Escape");
  await expect(page.getByRole("button", { name: "More heavy, asks" })).toBeVisible();
  for (const button of await page.getByRole("group", { name: "Turn the dial" }).getByRole("button").all()) {
    await expect(button).toBeInViewport({ ratio: 1 });
  }
});

test("a light dial runs on after a key and after a hand that lets go; with less motion to the same place", async ({
  bench,
}) => {
  const { page } = bench;
  const ranOn = async () => {
    // A page of its own: the dial before must not be read for this one.
    await page.goto("about:blank");
    await page.goto("#/bench?profile=two-wheel&help=full&dial=light&seed=5");
    await bench.dial.waitFor();
    const before = await bench.reading();
    await bench.dial.press("PageUp");
    await bench.expectReading(before + 14.6, TWO.graduations, 0.1);
  };
  await ranOn();
  await page.emulateMedia({ reducedMotion: "reduce" });
  await ranOn();
  await page.emulateMedia({ reducedMotion: "no-preference" });
  const box = await bench.dial.boundingBox();
  if (box === null) throw new Error("the dial is not drawn");
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  const before = await bench.reading();
  await page.mouse.move(x, y - 150);
  await page.mouse.down();
  await page.mouse.move(x + 80, y - 130, { steps: 4 });
  await page.mouse.up();
  // The hand turned right, so the reading falls, and farther than the hand went. It is compared with the hand's own
  // angle: a reading taken under way may come when the dial has run on already.
  const handTurn = (Math.atan2(80, 130) / (2 * Math.PI)) * TWO.graduations;
  const turned = async () => wrap(before - (await bench.reading()), TWO.graduations);
  await expect.poll(turned).toBeGreaterThan(handTurn + 0.3);
});

test("the own estimate is asked before anything is shown, answered by key, told beside the truth and kept", async ({
  bench,
}) => {
  const { page } = bench;
  await bench.open({ profile: "two-wheel", help: "counts" });
  await page.getByRole("button", { name: "More" }).click();
  await page.getByRole("checkbox", { name: /^Ask me/ }).check();
  await page.keyboard.press("Escape");
  await dial(bench, [0, 3]);
  const asks = page.getByRole("heading", { name: "How far off was your worst stop?" });
  await expect(asks).toBeVisible();
  await expect(bench.result).toBeHidden();
  await expect(bench.chart).toBeHidden();
  await expect(bench.fault).toBeEmpty();
  expect(await violations(page)).toEqual([]);
  const size = page.getByRole("textbox", { name: /^Other/ });
  await expect(size).toBeFocused();
  await size.press("Enter");
  await expect(size).toHaveAccessibleDescription("Enter a number of graduations from 0 to 5.");
  await size.fill("1,5");
  await size.press("Enter");
  await expect(bench.dial).toBeFocused();
  await expect(bench.result).toContainText(
    "You entered 1.5 graduations. Your worst stop was 3.0 off, 1.5 more than you felt.",
  );
  // Kept: the choice for the next visit, and the estimate with the attempt.
  await page.reload();
  await dial(bench, [0, 2]);
  await page.getByRole("button", { name: "2 graduations off", exact: true }).click();
  await expect(bench.result).toContainText("as you felt");
  await page.goto("#/logbook?view=progress");
  await expect(page.getByText(/2 estimates: .*Your estimates vary by/)).toBeVisible();
});

test("the estimate can be skipped, and is not asked with full help", async ({ bench }) => {
  const { page } = bench;
  await page.addInitScript(() => localStorage.setItem("gatefall.estimate", "on"));
  await bench.open({ profile: "two-wheel", help: "silent" });
  await dial(bench, [0, 3]);
  await page.getByRole("textbox", { name: /^Other/ }).press("Escape");
  await expect(bench.result).toBeVisible();
  await expect(page.getByText("You entered")).toBeHidden();
  await bench.open({ profile: "two-wheel", help: "full" });
  await dial(bench, [0, 3]);
  await expect(bench.result).toContainText("Did not open");
});

test("a station takes a lock from a file whole, an id of its own told beside its field, and the sheet a source", async ({
  page,
}) => {
  await page.goto("#/sheets?sample=11");
  await page.getByRole("button", { name: "Copy and edit" }).click();
  await page.getByRole("textbox", { name: /^Source/ }).fill("Underbell Yard, bench 4");
  await page.locator("[data-act=toggle]").nth(0).click();
  const id = page.getByRole("textbox", { name: /^Short name/ });
  await id.fill("zero");
  await id.press("End");
  await page.keyboard.type("ing");
  await expect(id, "typing goes on in the same field").toHaveValue("zeroing");
  await id.fill("encoder");
  await page.locator("[data-act=toggle]").nth(1).click();
  const other = page.getByRole("textbox", { name: /^Short name/ }).nth(1);
  await other.fill("encoder");
  await expect(other).toHaveAccessibleDescription('The id "encoder" is there twice.');
  await other.fill("second");
  const load = (name: string, body: unknown) =>
    page
      .getByLabel("Load a lock profile")
      .first()
      .setInputFiles({ name, mimeType: "application/json", buffer: Buffer.from(JSON.stringify(body)) });
  await load("bad.json", { ...TWO, graduations: 3 });
  await expect(page.getByRole("alert")).toHaveText(/^bad\.json is not loaded: graduations /);
  await load("mine.json", { ...TWO, id: "my-lock", title: "Lock of bench 4" });
  await expect(page.getByRole("article")).toContainText("Lock of bench 4");
  await expect(page.getByRole("article")).toContainText("Source: Underbell Yard, bench 4");
  const [file] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("link", { name: "Save as a file" }).click(),
  ]);
  const text = await (await file.createReadStream()).toArray();
  const sheet = JSON.parse(Buffer.concat(text).toString());
  expect(sheet.stations[0]).toMatchObject({ id: "encoder", profile: { id: "my-lock", graduations: TWO.graduations } });
});
