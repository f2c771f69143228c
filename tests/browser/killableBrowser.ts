import { type BrowserContext, chromium, type Page } from "@playwright/test";
import { BROWSER_SWITCHES, browserPath } from "./browserPath";

/** A browser of its own with a profile on disk, so that it can be killed and started again on what it left. */
export class KillableBrowser {
  private readonly folder: string;
  private readonly baseURL: string;
  private context: BrowserContext | null = null;

  /** @param folder - an empty one, for the profile */
  constructor(folder: string, baseURL: string) {
    this.folder = folder;
    this.baseURL = baseURL;
  }

  /** Starts the browser at an address of the app. */
  async open(address: string): Promise<Page> {
    this.context = await chromium.launchPersistentContext(this.folder, {
      executablePath: browserPath() ?? "",
      args: BROWSER_SWITCHES,
      baseURL: this.baseURL,
      serviceWorkers: "block",
      viewport: { width: 1280, height: 800 },
    });
    const page = this.context.pages()[0] ?? (await this.context.newPage());
    await page.goto(address);
    return page;
  }

  /** Ends the browser as a power switch would: no process of it gets to write another byte. */
  async kill(): Promise<void> {
    const { context } = this;
    if (context === null) return;
    const gone = context.waitForEvent("close");
    process.kill(await processOf(context), "SIGKILL");
    await gone;
    this.context = null;
  }

  /** Ends the browser in peace; it writes what it holds. */
  async close(): Promise<void> {
    await this.context?.close();
    this.context = null;
  }
}

/** The number of a browser's own process, as it tells it. */
async function processOf(context: BrowserContext): Promise<number> {
  const session = await context.browser()?.newBrowserCDPSession();
  const told = await session?.send("SystemInfo.getProcessInfo");
  const own = told?.processInfo.find(({ type }) => type === "browser");
  if (own === undefined) throw new Error("the browser does not tell its process");
  return own.id;
}
