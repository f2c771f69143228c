import { expect, type Locator, type Page } from "@playwright/test";
import type { placesToTap } from "../support/film/ordinaryScene";

export const ORDINARY_TITLE = "Dial of a practice lock, by camera";

/** Where the marks belong, in parts of the picture. */
type Places = ReturnType<typeof placesToTap>;
type Place = Places["middle"];

/** How the keys move a mark at each press, in parts of the picture. */
const KEY_STEP = 0.005;

const keysTo = (to: Place, from: Place) => [
  ...Array<string>(Math.round(Math.abs(to.x - from.x) / KEY_STEP)).fill(to.x < from.x ? "ArrowLeft" : "ArrowRight"),
  ...Array<string>(Math.round(Math.abs(to.y - from.y) / KEY_STEP)).fill(to.y < from.y ? "ArrowUp" : "ArrowDown"),
];

/** The setup of an ordinary dial as a person finds it. */
export class OrdinarySetupPage {
  readonly page: Page;
  readonly question: Locator;
  readonly picture: Locator;

  constructor(page: Page) {
    this.page = page;
    this.question = page.getByRole("group", { name: /Is this a practice lock/ });
    this.picture = page.getByTestId("marks");
  }

  mark(name: "Middle of the knob" | "Tip of the index"): Locator {
    return this.page.getByRole("slider", { name });
  }

  /** To the question, from the page of the setup. */
  async choose(): Promise<void> {
    await this.page.goto("#/dial");
    await this.page.getByRole("button", { name: `Choose: ${ORDINARY_TITLE}` }).click();
    await this.page.getByRole("button", { name: "Connect", exact: true }).click();
    await this.question.waitFor();
  }

  async agree(): Promise<void> {
    await this.page.getByRole("button", { name: /^Yes, a practice lock/ }).click();
  }

  /** The two marks by taps, once the picture is there. @returns where a place of the picture is on the page */
  async tap({ middle, index }: Places): Promise<(place: Place) => readonly [number, number]> {
    const box = async () => (await this.picture.boundingBox()) ?? { x: 0, y: 0, width: 0, height: 0 };
    // The picture has its size once the first frame is there: higher than a video without one.
    await expect.poll(async () => (await box()).height).toBeGreaterThan(200);
    await this.picture.scrollIntoViewIfNeeded();
    const { x, y, width, height } = await box();
    const at = (place: Place) => [x + place.x * width, y + place.y * height] as const;
    for (const place of [middle, index]) await this.page.mouse.click(...at(place));
    return at;
  }

  /** One mark by the arrow keys. @param from - where it is now */
  async moveByKeys(mark: Locator, to: Place, from: Place): Promise<void> {
    await mark.focus();
    for (const key of keysTo(to, from)) await this.page.keyboard.press(key);
  }

  async find(): Promise<void> {
    await this.page.getByRole("button", { name: "Find the dial" }).click();
  }

  /** From the first page of the setup until the dial is followed. */
  async goThrough(places: Places): Promise<void> {
    await this.choose();
    await this.agree();
    await this.tap(places);
    await this.find();
    await this.learn();
  }

  /** The slow turn of the film is over, and the dial is followed. */
  async learn(): Promise<void> {
    await expect(this.page.getByText("Status: turns the dial in steps of 0.1 graduations")).toBeVisible({
      timeout: 60_000,
    });
  }
}
