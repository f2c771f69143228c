import { mkdirSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "@playwright/test";
import { look } from "./axe";

/** Light and dark, on a desk and on a phone; the desk in light comes last, so that a walk goes on in it. */
const LOOKS = [
  { name: "light-phone", colorScheme: "light", width: 390, height: 844 },
  { name: "dark-phone", colorScheme: "dark", width: 390, height: 844 },
  { name: "dark-desk", colorScheme: "dark", width: 1280, height: 800 },
  { name: "light-desk", colorScheme: "light", width: 1280, height: 800 },
] as const;

/** Where the pictures of a walk go: a folder that the variable SHOTS names. Without it none are taken. */
const FOLDER = process.env.SHOTS;

/** Takes pictures of the whole page at the steps of a walk, in four looks, numbered in their order. */
export class Shots {
  private readonly page: Page;
  private readonly walk: string;
  private count = 0;

  constructor(page: Page, walk: string) {
    this.page = page;
    this.walk = walk;
  }

  /** One step in all looks. @param step - its name, a part of the files' names */
  async take(step: string): Promise<void> {
    if (FOLDER === undefined) return;
    mkdirSync(FOLDER, { recursive: true });
    this.count += 1;
    const number = `${this.count}`.padStart(2, "0");
    for (const one of LOOKS) {
      await look(this.page, one);
      // What sticks to an edge is drawn where it lies, and not in the middle of a long page.
      await this.page.evaluate(() => scrollTo(0, 0));
      const file = join(FOLDER, `${this.walk}-${number}-${step}-${one.name}.png`);
      await this.page.screenshot({ path: file, fullPage: true, animations: "disabled" });
    }
  }
}
