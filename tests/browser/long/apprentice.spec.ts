import type { Page } from "@playwright/test";
import { idealMotion } from "../../../src/dialing/idealMotion";
import { wrap } from "../../../src/lock/dial";
import { Fitter } from "../fitting";
import { expect, test } from "../page";
import { Shots } from "../shots";
import { LOCK, PER_TURN, Zeroing, ZeroingHand } from "../zeroing";

const combination = LOCK.asSet ?? [];
/** How far this hand runs past each number, graduations: a good lock takes it. */
const PAST = 0.7;
const FITTED = "The dial is fitted: show the debrief";

/** Sets the zero of the lock that was fitted, every stop on it, and dials the lock with it. */
async function zeroAndProve(page: Page, shots: Shots): Promise<Zeroing> {
  await page.getByRole("link", { name: "Set this lock's zero" }).click();
  const zeroing = new Zeroing(page);
  await zeroing.dial.waitFor();
  const hand = new ZeroingHand(zeroing);
  await hand.clamp();
  await hand.takeAll("right", [0, 0, 0]);
  await hand.takeAll("left", [0, 0, 0]);
  await expect(zeroing.headline).toHaveText(/^(Both sides are shown to be good|Set, but not shown to be good yet)\.$/);
  await shots.take("zero-set");
  await page.getByRole("tab", { name: "Prove it" }).click();
  const path = idealMotion(LOCK, combination, await zeroing.seen(), [], 10);
  for (const [k, end] of path.slice(1).entries()) {
    const way = end - (path[k] ?? 0);
    const number = combination[k];
    if (number === undefined) {
      await hand.keys.turnBy(way);
    } else {
      // Almost there, and then on until the index shows what the hand takes for the number.
      await hand.keys.turnBy(way - 3 * Math.sign(way));
      const left = wrap(number + PAST * Math.sign(way) - (await zeroing.seen()), PER_TURN);
      await hand.keys.turnBy(Math.round(10 * left) / 10);
    }
  }
  await shots.take("proved");
  return zeroing;
}

test("an apprentice fits a dial badly, sees why its zero does not hold, takes it apart, fits it right, and proves it", async ({
  page,
}) => {
  test.slow();
  await page.clock.install();
  await page.goto("#/fitting?profile=dial-encoder&seed=3666&help=counts");
  const fitter = new Fitter(page);
  const shots = new Shots(page, "apprentice");
  const debrief = page.getByRole("region", { name: "Debrief" });
  const proof = page.getByRole("region", { name: "Prove it" });

  await shots.take("tray");
  await fitter.does("Put the wrist strap on", "Plug the encoder's cable in", "Battery: red lead to plus");
  await fitter.begin();
  await fitter.does("Put it on over the bushing", "Tighten the ring");
  await fitter.cut("88.5");
  await fitter.does("File and chamfer the end", "In until it touches");
  await fitter.toKeyway(20);
  await shots.take("dial-in");
  await fitter.does("Insert the key", "Drive it home", "Screw firmly, 0.6 Nm", FITTED);
  await expect(debrief).toContainText("The spindle is bent.");
  await expect(debrief).toContainText("No zero compensates for that");
  await shots.take("bad-fit");

  let zeroing = await zeroAndProve(page, shots);
  await expect(zeroing.headline).toHaveText("It did not open. The table shows what was off.");
  const cells = await proof.locator("tbody tr").first().getByRole("cell").allTextContents();
  expect(Number(cells[2]), "what the fit adds to the first number").toBeGreaterThanOrEqual(0.5);
  await expect(proof).toContainText("A straight spindle fixes it");

  await proof.getByRole("link", { name: "take the lock apart again" }).click();
  await fitter.does("Go on fitting", "Remove the key", "Take the dial out", "Loosen the ring", "Take the ring off");
  await fitter.does("Take the spare spindle");
  await shots.take("apart-again");
  await fitter.cut("88.5");
  await fitter.does(
    "File and chamfer the end",
    "Put it on over the bushing",
    "Tighten the ring",
    "In until it touches",
  );
  await fitter.fitKey();
  await fitter.does("Drop on the key's screw");
  await fitter.does("Hang the strike by one screw");
  await fitter.trueStrike();
  await fitter.does("Put the cover on", FITTED);
  await expect(debrief).toContainText("Nothing is wrong with this fit.");
  await shots.take("good-fit");

  zeroing = await zeroAndProve(page, shots);
  await expect(zeroing.headline).toHaveText("Opened: the zero you set holds.");
  await expect(proof.getByRole("columnheader", { name: "from the fit" })).toHaveCount(0);
});
