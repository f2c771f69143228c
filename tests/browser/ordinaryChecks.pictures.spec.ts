import { join } from "node:path";
import { cameraPlaying, shootInto } from "../support/film/fakeCamera";
import { slowTurnLegs } from "../support/film/ordinaryLesson";
import { placesToTap, smallOrdinaryFilm } from "../support/film/ordinaryScene";
import { expectAccepted, NOW, skipWhereDrawnOtherwise } from "./accepted";
import { OrdinarySetupPage } from "./ordinarySetup";
import { expect, test } from "./page";

/*
 * The three checks of an ordinary dial as they were accepted last (`npm run pictures`), made by a film. No real camera was
 * tried.
 */

const FILM = join(import.meta.dirname, "../../test-results/films/ordinary-checked.y4m");
const SHOOTING = smallOrdinaryFilm(
  [
    ...slowTurnLegs(100, 8000),
    // So far that it is seen which way the numbers go; then the three stops that are asked for, each a little off. Slowly, and with
    // long rests, for a busy machine that shows few frames.
    { by: 12, speed: 20, restMs: 8000 },
    { by: 13.2, speed: 20, restMs: 6000 },
    { by: -50.5, speed: 20, restMs: 6000 },
    { by: 25.55, speed: 20, restMs: 45_000 },
  ],
  8000,
);

// A busy machine may show too few frames to learn the dial or to count turns by: then the page says so.
test.describe.configure({ retries: 2 });
test.use({ launchOptions: cameraPlaying(FILM), permissions: ["camera"], timezoneId: "UTC", locale: "en-US" });
test.use({ contextOptions: { reducedMotion: "reduce" } });

test.beforeAll(() => {
  test.setTimeout(300_000);
  shootInto(FILM, SHOOTING);
});

test("looks as it was accepted: checks of an ordinary dial", async ({ page }, { config }) => {
  test.setTimeout(180_000);
  skipWhereDrawnOtherwise(page, config);
  const press = (name: string) => page.getByRole("button", { name, exact: true }).click();
  await page.clock.setFixedTime(NOW);
  await new OrdinarySetupPage(page).goThrough(placesToTap(SHOOTING));
  await press("Go on to zero");
  await page.getByText("The numbers went up.").waitFor();
  await press("Go on to the checks");
  await page.getByRole("button", { name: "Finish the setup" }).waitFor();
  // Where frames were missed on the way, that is said, and read.
  await page
    .getByRole("button", { name: "I have read it" })
    .click({ timeout: 2000 })
    .catch(() => undefined);
  await expect(page.getByRole("alert")).toHaveCount(0);
  // What is measured anew each time; the errors of the stops are the film's.
  await expectAccepted(page, "setup-ordinary-checks", { masked: "[aria-label='Your device'] p" });
});
