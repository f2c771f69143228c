import { type Browser, chromium, type Page } from "@playwright/test";
import { BROWSER_SWITCHES, browserPath } from "../browser/browserPath";

/** A browser for a trial: pages of the built app, each with a storage of its own, and what went wrong in them. */
export class TrialBrowser {
  private readonly browser: Browser;
  private readonly address: string;
  /** Errors that no code of a page caught, since the last page was opened. */
  uncaught: string[] = [];

  private constructor(browser: Browser, address: string) {
    this.browser = browser;
    this.address = address;
  }

  static async launch(address: string): Promise<TrialBrowser> {
    const launched = await chromium.launch({ executablePath: browserPath() ?? "", args: BROWSER_SWITCHES });
    return new TrialBrowser(launched, address);
  }

  /** Closes the page before, with all it stored, and opens an address of the app on an empty storage. */
  async fresh(at: string): Promise<Page> {
    for (const context of this.browser.contexts()) await context.close();
    this.uncaught = [];
    const context = await this.browser.newContext({
      baseURL: this.address,
      serviceWorkers: "block",
      viewport: { width: 1280, height: 800 },
    });
    context.on("weberror", (error) => this.uncaught.push(String(error.error())));
    const page = await context.newPage();
    await page.goto(at);
    return page;
  }

  close(): Promise<void> {
    return this.browser.close();
  }
}
