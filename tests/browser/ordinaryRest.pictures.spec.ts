import { join } from "node:path";
import { cameraPlaying, shootInto } from "../support/film/fakeCamera";
import { placesToTap, smallOrdinaryFilm } from "../support/film/ordinaryScene";
import { expectAccepted, NOW, skipWhereDrawnOtherwise } from "./accepted";
import { OrdinarySetupPage } from "./ordinarySetup";
import { test } from "./page";

/*
 * The setup of an ordinary dial as it was accepted last (`npm run pictures`), before a film of a dial at rest. No real camera
 * was tried.
 */

const FILM = join(import.meta.dirname, "../../test-results/films/ordinary-pictured.y4m");
const RESTING = smallOrdinaryFilm([], 4000);

test.use({ launchOptions: cameraPlaying(FILM), permissions: ["camera"], timezoneId: "UTC", locale: "en-US" });
test.use({ contextOptions: { reducedMotion: "reduce" } });

test.beforeAll(() => {
  test.setTimeout(180_000);
  shootInto(FILM, RESTING);
});

test("looks as it was accepted: setup of an ordinary dial, its question, marks and slow turn", async ({ page }, {
  config,
}) => {
  test.setTimeout(180_000);
  skipWhereDrawnOtherwise(page, config);
  await page.clock.setFixedTime(NOW);
  const setup = new OrdinarySetupPage(page);
  const accepted = (name: string) => expectAccepted(page, `setup-ordinary-${name}`, { masked: "[role=timer]" });
  await setup.choose();
  await accepted("question");
  await setup.agree();
  await setup.tap(placesToTap(RESTING));
  await accepted("marks");
  await setup.find();
  await page.getByText("Start turning.").waitFor();
  await accepted("turn");
});
