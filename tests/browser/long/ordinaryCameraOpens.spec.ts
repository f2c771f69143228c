import { join } from "node:path";
import { idealMotion } from "../../../src/dialing/idealMotion";
import { shippedProfile } from "../../../src/lock/shippedProfiles";
import { cameraPlaying, shootInto } from "../../support/film/fakeCamera";
import { slowTurnLegs } from "../../support/film/ordinaryLesson";
import { placesToTap, smallOrdinaryFilm } from "../../support/film/ordinaryScene";
import { KeyHand } from "../hands";
import { ORDINARY_TITLE, OrdinarySetupPage } from "../ordinarySetup";
import { expect, test } from "../page";

/*
 * A film of an ordinary dial, played by the browser's fake camera: the question, two taps, one slow turn, and it opens the
 * bench's lock. No real camera was tried.
 */

const FILM = join(import.meta.dirname, "../../../test-results/films/ordinary-opens.y4m");
const PER_TURN = 100;

// A lock of two wheels, and numbers that are soon come to: the fewer turns, the fewer frames a busy machine has to show.
const path = idealMotion(shippedProfile("two-wheel"), [91, 26], 0);
// Drawn as a hand does it, until it is held: a reading may fall a few hundredths short of where the bench's lock stops.
const end = (path.at(-1) ?? 0) - 1;
const dialed = [...path.slice(0, -1), end];
const SHOOTING = smallOrdinaryFilm(
  [
    ...slowTurnLegs(PER_TURN, 14_000),
    ...dialed.slice(1).map((stop, k) => ({ by: stop - (dialed[k] ?? 0), speed: 60, restMs: 600 })),
    // Back onto 0, from where the film goes round again.
    { by: PER_TURN * Math.ceil(end / PER_TURN) - end, speed: 60, restMs: 500 },
  ],
  12_000,
);

// A busy machine may show too few frames to learn the dial or count turns by: then the page says so, and this attempt is lost.
test.describe.configure({ retries: 2 });
test.use({ launchOptions: cameraPlaying(FILM), permissions: ["camera"] });

test.beforeAll(() => {
  test.setTimeout(600_000);
  shootInto(FILM, SHOOTING);
});

test("a filmed ordinary dial opens the lock on the bench", async ({ page, bench }) => {
  test.setTimeout(360_000);
  await new OrdinarySetupPage(page).goThrough(placesToTap(SHOOTING));
  await bench.open({ profile: "two-wheel", combination: "91-26" });
  // To 0 by the right, where the real dial rests: the first number is dialed that way, and may be passed once more.
  await new KeyHand(bench, PER_TURN).turnBy(-(await bench.reading()));
  await expect(page.getByText(`${ORDINARY_TITLE}: turns the dial`)).toBeVisible();
  await expect(bench.dial).toHaveClass(/dial-is-open/, { timeout: 120_000 });
  await expect(bench.result).toContainText("Open");
});
