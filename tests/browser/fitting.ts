import { expect, type Locator, type Page } from "@playwright/test";
import { byPointer, type Press } from "./press";

/** Someone who fits a lock on the page: by the names of buttons, and what gauges and checks show. */
export class Fitter {
  private readonly page: Page;
  private readonly press: Press;
  /** What the last check showed. */
  readonly seen: Locator;

  constructor(page: Page, press: Press = byPointer) {
    this.page = page;
    this.press = press;
    this.seen = page.getByRole("region", { name: "Checks" }).getByRole("status");
  }

  async does(...names: readonly string[]): Promise<void> {
    for (const name of names) await this.press(this.page.getByRole("button", { name, exact: true }));
  }

  gauge(name: string): Locator {
    return this.page.getByRole("term").filter({ hasText: name }).locator("+ dd");
  }

  async begin(): Promise<void> {
    await this.page.getByLabel("Washers, from the cam out").selectOption("flat, flat, spring");
    await this.does("Hang it by one screw", "Tighten all screws");
  }

  async cut(length: string): Promise<void> {
    await this.page.getByLabel("Cut to, mm from the dial's back").fill(length);
    await this.does("Saw off");
  }

  /** Screws the dial out until a keyway lines up, one graduation at a time. @param from - graduations out before the search */
  async toKeyway(from: number): Promise<void> {
    for (let tens = 0; tens < from / 10; tens++) await this.does("Out 10 graduations");
    const slot = this.gauge("Slot of the spindle");
    for (let k = 0; k < 30 && (await slot.textContent()) !== "one lines up"; k++) await this.does("Out 1 graduation");
    await expect(slot).toHaveText("one lines up");
  }

  /** Tries one keyway after the other until the dial reads near 0 with the gate under the nose, or far from it. */
  async fitKey(isWanted = (off: number) => off < 10): Promise<void> {
    for (let keyway = 0; keyway < 8; keyway++) {
      await this.toKeyway(keyway === 0 ? 30 : 20);
      await this.does("Insert the key", "Drive it home");
      await this.check("Read the dial, (gate under the nose|cam at its mark)");
      const reads = Number((await this.seen.textContent())?.replace("−", "-").match(/[-+]?\d+\.\d/)?.[0]);
      if (isWanted(Math.abs(reads))) break;
      await this.does("Remove the key");
    }
    await this.does("Screw firmly, 0.6 Nm");
  }

  /** Moves the strike until the bolt goes in freely. */
  async trueStrike(): Promise<void> {
    const drags = async () => {
      await this.check("Work the bolt in the strike");
      return ((await this.seen.textContent()) ?? "").startsWith("The bolt drags on the strike");
    };
    for (let k = 0; k < 10 && (await drags()); k++) await this.does("Strike down 0.5 mm");
    for (let k = 0; k < 20 && (await drags()); k++) await this.does("Strike up 0.5 mm");
    await this.does("Tighten the strike");
  }

  /** Makes checks by their names, made before or not; with its instrument where a check has one. */
  async check(...names: readonly string[]): Promise<void> {
    for (const name of names) {
      await this.press(this.page.getByRole("button", { name: new RegExp(`^${name.replace("?", "\\?")}( |,|$)`) }));
      if (name.startsWith("Depth gauge")) await this.readDepth();
      if (name.startsWith("Feeler gauge")) await this.findGap();
    }
  }

  /** Reads the vernier of the depth gauge, and enters what it tells. @param off_mm - misread by as much */
  async readDepth(off_mm = 0): Promise<void> {
    const gauge = this.page.getByRole("region", { name: "Depth gauge" });
    const scale = (await gauge.getByRole("img").getAttribute("aria-label")) ?? "";
    const block = Number(((await gauge.textContent()) ?? "").match(/block of (\d+) mm/)?.[1]);
    const depth = Number(scale.match(/(\d+) mm/)?.[1]) + Number(scale.match(/Line (\d)/)?.[1] ?? 0) / 10;
    await gauge.getByLabel("Out of the cam, mm").fill((block - depth + off_mm).toFixed(1));
    await this.press(gauge.getByRole("button", { name: "Enter this reading" }));
  }

  /** Tries leaves at each place until the gap there is found: halves what is left with every leaf. */
  async findGap(): Promise<void> {
    const gauge = this.page.getByRole("region", { name: "Feeler gauge" });
    const leaves = await gauge.getByLabel("Leaf").locator("option").allTextContents();
    for (const place of ["top", "right", "bottom", "left"]) {
      let [least, most] = [-1, leaves.length];
      // Found at the last place, it is put away.
      while (most - least > 1 && (await gauge.count()) > 0) {
        const middle = Math.floor((least + most) / 2);
        if (await this.goesIn(place, leaves[middle] ?? "")) least = middle;
        else most = middle;
      }
    }
  }

  /** Tries a leaf. @returns whether it goes in; false too where the gauge was put away with it */
  private async goesIn(place: string, leaf: string): Promise<boolean> {
    const gauge = this.page.getByRole("region", { name: "Feeler gauge" });
    await gauge.getByLabel("Leaf").selectOption(leaf);
    await this.press(gauge.getByRole("button", { name: new RegExp(`^Try at the ${place}`) }));
    const felt = gauge.getByText(`At the ${place}, the ${leaf} leaf`);
    await expect(felt.or(this.seen.filter({ hasText: "Thickest leaf" }))).not.toHaveCount(0);
    return (await felt.count()) > 0 && !((await felt.textContent()) ?? "").includes("does not go in");
  }
}
