import type { Page } from "@playwright/test";
import { LOOKS, look, violations } from "./axe";
import { expect, test } from "./page";

const does = async (page: Page, ...names: readonly string[]) => {
  for (const name of names) await page.getByRole("button", { name, exact: true }).click();
};

/** Puts dial and cam together, however badly. */
async function couple(page: Page): Promise<void> {
  await does(page, "Hang it by one screw", "Put it on over the bushing");
  await page.getByLabel("Cut to, mm from the dial's back").fill("88.5");
  await does(page, "Saw off", "File and chamfer the end", "In until it touches");
  const slot = page.getByRole("term").filter({ hasText: "Slot of the spindle" }).locator("+ dd");
  for (let k = 0; k < 30 && (await slot.textContent()) !== "one lines up"; k++) await does(page, "Out 1 graduation");
  await does(page, "Insert the key");
}

test("an electronic lock: order, polarity and cover show in its checks, and without power there is no zero to set", async ({
  page,
}) => {
  await page.goto("#/fitting?profile=dial-encoder&seed=3");
  const parts = page.getByRole("region", { name: "Parts" });
  const seen = page.getByRole("region", { name: "Checks" }).getByRole("status");
  await expect(page.getByRole("button", { name: /wheels/i })).toHaveCount(0);
  await expect(page.getByText("This profile gives no sizes of its own")).toBeVisible();
  await expect(page.getByText("Door hardware may be at")).toContainText(
    "34 to 48 in (865 to 1219 mm; 2010 ADA Standards",
  );
  await couple(page);
  await does(page, "Put the wrist strap on", "Battery: red lead to plus", "Plug the encoder's cable in");
  await does(page, "Run the self-check");
  await expect(seen).toHaveText("The training lock shows: NO DIAL FOUND.");
  await does(page, "Disconnect the battery", "Battery: red lead to minus", "Look at the wires and the fuse");
  await expect(seen).toHaveText(/other way round.*plugged in\. The fuse is black inside\./);
  await does(page, "The dial is fitted: show the debrief");
  const debrief = page.getByRole("region", { name: "Debrief" });
  await expect(debrief).toContainText("leads are the wrong way round");
  await expect(debrief).toContainText("no zero to set until the self-check passes");
  await expect(debrief.getByRole("link", { name: "Set this lock's zero" })).toHaveCount(0);

  await does(page, "Go on fitting", "Disconnect the battery", "Battery: red lead to plus", "Replace the fuse");
  await does(page, "Run the self-check");
  await expect(seen).toHaveText("The training lock shows: DIAL FOUND, READING AT REST.");
  await does(page, "Put the cover on", "Replace the fuse");
  await expect(parts.getByRole("status")).toHaveText("The cover is in the way. Take it off first.");
  await does(page, "The dial is fitted: show the debrief");
  await expect(debrief).toContainText("The self-check passes");
  await debrief.getByRole("link", { name: "Set this lock's zero" }).click();
  await expect(page.getByRole("slider", { name: "Dial" })).toBeVisible();

  await page.goto("#/zeroing?index=nonsense&play=0.5");
  await expect(page.getByText('The address asks for index "nonsense"')).toContainText("This page uses 0.");
});

for (const one of LOOKS) {
  test(`axe finds nothing wrong with an electronic lock that is fitted, ${one.name}`, { tag: "@long" }, async ({
    page,
  }) => {
    await look(page, one);
    await page.goto("#/fitting?profile=dial-encoder&seed=3");
    await couple(page);
    await does(page, "Battery: red lead to plus", "The dial is fitted: show the debrief");
    await expect(page.getByRole("region", { name: "Debrief" })).toContainText("without the wrist strap");
    expect(await violations(page)).toEqual([]);
  });
}
