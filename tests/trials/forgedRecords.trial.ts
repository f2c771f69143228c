import type { Page } from "@playwright/test";
import { canonicalJson } from "../../src/drill/canonicalJson";
import type { Chance } from "../../src/statistics/chance";
import { sha256 } from "../support/keptRecord";
import { satRecord } from "../support/satRecord";
import { fileOf, forge, isLetThrough, someErrors } from "./forgery";
import { copyOf, pick, placesIn } from "./tamper";
import type { Trial } from "./trial";
import { TrialBrowser } from "./trialPage";

/*
 * One field of a genuine record of a sitting is changed, and the record is checked on the page. Under its old hash every
 * change must be named. Under a hash that was made anew, every change must be named but those below.
 */

interface Told {
  /** What an alert says; empty where there is none. */
  readonly alert: string;
  /** What the page says of a record that is not wrong. */
  readonly status: string;
  /** What it shows as the record's own words. */
  readonly says: string;
}

/** Puts texts into the page's check of records. */
class Checker {
  private readonly page: Page;

  constructor(page: Page) {
    this.page = page;
  }

  async check(text: string): Promise<Told> {
    await this.put("x");
    await this.page.getByText("Not checked: this is not a record").waitFor();
    await this.put(text);
    await this.page.waitForFunction(() => {
      const box = document.querySelector("section.record-check");
      return (
        box?.querySelector("[role=alert],[role=status]") !== null &&
        !box?.textContent?.includes("this is not a record:")
      );
    });
    const [alert, status, says] = await Promise.all(
      ["[role=alert]", "[role=status]", "dl"].map((what) => this.textOf(what)),
    );
    return { alert: alert ?? "", status: status ?? "", says: says ?? "" };
  }

  private async textOf(what: string): Promise<string> {
    return (await this.page.locator(`section.record-check ${what}`).allTextContents()).join(" | ");
  }

  private async put(text: string): Promise<void> {
    await this.page.getByRole("textbox", { name: "A saved record" }).fill(text);
    await this.page.getByRole("button", { name: "Check it" }).click();
  }
}

const FORGERIES_A_RECORD = 25;

/** Forges one genuine record over and over. @returns what went unnoticed */
async function forgeRecord(checker: Checker, chance: Chance): Promise<string | null> {
  const genuine = copyOf(satRecord(someErrors(chance), Math.floor(1000 * chance())));
  const hash = sha256(canonicalJson(genuine));
  const sound = await checker.check(fileOf(genuine));
  if (!sound.status.startsWith("The record is sound")) return `a genuine record is not sound: ${JSON.stringify(sound)}`;
  for (let k = 0; k < FORGERIES_A_RECORD; k++) {
    const forged = copyOf(genuine);
    const at = pick(chance, placesIn(genuine));
    const change = forge(forged, at, chance);
    if (change === null) continue;
    const under = await checker.check(fileOf(forged, hash));
    if (under.alert === "") return `${change} under its old hash is not named: ${JSON.stringify(under)}`;
    const anew = await checker.check(fileOf(forged));
    const isSound = anew.status.startsWith("The record is sound");
    if (isSound && !isLetThrough(genuine, forged, at))
      return `${change}, hashed anew, is sound: ${JSON.stringify(anew)}`;
  }
  return null;
}

export const trial: Trial = {
  name: "one field of a sitting's record forged, and checked on the page",
  run: async ({ chance, address, hasTime, pass, fail }) => {
    const browser = await TrialBrowser.launch(address);
    const checker = new Checker(await browser.fresh("#/sittings"));
    for (let round = 1; round === 1 || hasTime(); round++) {
      const unnoticed = (await forgeRecord(checker, chance)) ?? browser.uncaught[0] ?? null;
      browser.uncaught = [];
      if (unnoticed === null) pass();
      else fail(`round ${round}: ${unnoticed}`);
    }
    await browser.close();
  },
};
