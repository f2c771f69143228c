import { expect, test } from "../page";

/** Every screen, and the words that it explains where they are met. */
const SCREENS = [
  ["bench?seed=5", ["gate", "fence", "arrival", "spin off"]],
  ["bench?profile=dial-encoder&seed=5", ["encoder lock", "arrival"]],
  ["zeroing", ["zero", "lost motion"]],
  ["handover", ["holdback", "egress", "change key"]],
  ["fitting", ["keyway", "lead", "thread locker", "end play", "off center", "parallax"]],
  ["fitting?view=find&seed=3", ["end play", "off center", "parallax"]],
  ["fitting?view=service&seed=5", ["service visit", "torque", "key seat"]],
  ["sheets", ["drill sheet"]],
  ["sittings", ["sitting", "not shown"]],
  ["logbook", ["stop error"]],
  ["desk", ["stop error", "sitting"]],
  ["start", ["arrival", "gate", "spin off"]],
] as const;

for (const [path, words] of SCREENS) {
  test(`the words of a screen explain themselves there: ${path}`, async ({ page }) => {
    await page.goto(`#/${path}`);
    const main = page.getByRole("main");
    for (const word of words) {
      const link = main.getByRole("link", { name: word, exact: true }).first();
      await link.click();
      const dialog = page.getByRole("dialog", { name: "What it means" });
      await expect(dialog.getByRole("heading", { level: 3 })).toBeVisible();
      await expect(dialog).not.toContainText("This word is not explained yet.");
      await page.keyboard.press("Escape");
      await expect(dialog).toBeHidden();
      await expect(link).toBeFocused();
    }
  });
}

test("a misspelled setting of the bench's address is named, and can be closed", async ({ page }) => {
  await page.goto("#/bench?profil=two-wheel&seed=5");
  const told = page.getByRole("alert").filter({ hasText: "profil" });
  await expect(told).toHaveText(
    "The address has “profil”, which is not a setting of the bench. Use profile, combination, help, dial, index, play, keyed, round, catch or seed.",
  );
  await page.getByRole("button", { name: "Close this message" }).click();
  await expect(told).toHaveCount(0);
});

test("on another page every problem of the address is named, and each can be closed", async ({ page }) => {
  await page.goto("#/handover?profile=nonsense&combination=1-2-999");
  const told = page.getByRole("alert").filter({ hasText: "The address asks for" });
  await expect(told).toHaveCount(2);
  await page.getByRole("button", { name: "Close this message" }).first().click();
  await expect(told).toHaveCount(1);
  await page.getByRole("button", { name: "Close this message" }).click();
  await expect(told).toHaveCount(0);
});
