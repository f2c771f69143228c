import { join } from "node:path";
import { cameraPlaying, shootInto } from "../../support/film/fakeCamera";
import { slowTurnLegs } from "../../support/film/ordinaryLesson";
import { placesToTap, smallOrdinaryFilm } from "../../support/film/ordinaryScene";
import { OrdinarySetupPage } from "../ordinarySetup";
import { expect, test } from "../page";
import { Zeroing } from "../zeroing";

/*
 * A film of an ordinary dial, played by the browser's fake camera: the question, two marks by keys, one slow turn, and its
 * rests set the zero of a lock. No real camera was tried.
 */

const FILM = join(import.meta.dirname, "../../../test-results/films/ordinary-zeroes.y4m");
const PER_TURN = 100;

const SHOOTING = smallOrdinaryFilm(
  [
    ...slowTurnLegs(PER_TURN, 6000),
    // Onto 0 by whole turns: two to the right, in which it takes over, then one at a time; the same to the left. One more each
    // way than is asked for, where sight is lost once.
    ...[-200, -100, -100, -100, 200, 100, 100, 100].map((by) => ({ by, speed: 60, restMs: 2500 })),
  ],
  15_000,
);
const PLACES = placesToTap(SHOOTING);

// A busy machine may show too few frames to learn the dial or count turns by: then the page says so, and the film goes round again.
test.describe.configure({ retries: 2 });
test.use({ launchOptions: cameraPlaying(FILM), permissions: ["camera"] });

test.beforeAll(() => {
  test.setTimeout(600_000);
  shootInto(FILM, SHOOTING);
});

test("a filmed ordinary dial sets a zero from both sides, to its verdict", async ({ page }) => {
  test.setTimeout(360_000);
  const setup = new OrdinarySetupPage(page);
  await setup.choose();
  await setup.agree();
  await setup.moveByKeys(setup.mark("Middle of the knob"), PLACES.middle, { x: 0.5, y: 0.5 });
  await setup.moveByKeys(setup.mark("Tip of the index"), PLACES.index, { x: 0.5, y: 0.15 });
  await setup.find();
  await setup.learn();
  await page.goto("#/zeroing?seed=5");
  const zeroing = new Zeroing(page);
  await page.getByRole("button", { name: "Clamp the ring" }).click();
  await page.getByLabel("What records a stop").selectOption("rest");
  await expect(zeroing.steps.nth(1)).toContainText("3 of 3 stops", { timeout: 150_000 });
  await expect(zeroing.steps.nth(2)).toContainText("3 of 3 stops", { timeout: 120_000 });
  await expect(zeroing.headline).not.toBeEmpty();
});
