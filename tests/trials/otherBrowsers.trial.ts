import { mkdir } from "node:fs/promises";
import { join } from "node:path";
import type { RemoteBrowser } from "./remote/driver";
import { startFirefox } from "./remote/firefox";
import { installed } from "./remote/installed";
import { JOURNEYS } from "./remote/journeys";
import { RemotePage } from "./remote/remotePage";
import { startWebKit } from "./remote/webKit";
import type { Trial, TrialContext } from "./trial";

/*
 * The main journeys in Firefox and in WebKit, as Debian has them. Where one of them is not there, a line says so and how to
 * get it, and the trial goes on without it: they are large, so nobody gets them unasked. `test-results/browsers` has a picture of each end.
 */

const PICTURES = "test-results/browsers";

interface Kind {
  readonly name: string;
  readonly programs: readonly string[];
  readonly packages: readonly string[];
  readonly start: (program: string, folder: string) => Promise<RemoteBrowser>;
}

const KINDS: readonly Kind[] = [
  { name: "Firefox", programs: ["firefox-esr"], packages: ["firefox-esr"], start: startFirefox },
  {
    name: "WebKit",
    programs: ["WebKitWebDriver", "xvfb-run"],
    packages: ["webkit2gtk-driver", "xvfb", "xauth"],
    start: startWebKit,
  },
];

/** Keys and pointers are real, so a stalled machine can hold a key too long: a build machine tries a journey once more. */
const TRIES = process.env.CI === undefined ? 1 : 2;

/** Makes a journey, from its beginning again where it did not come out and may be tried again. */
async function made(journey: (page: RemotePage) => Promise<void>, page: RemotePage, tries: number): Promise<void> {
  try {
    await journey(page);
  } catch (error) {
    if (tries <= 1) throw error;
    process.stdout.write(`tried again: ${error instanceof Error ? error.message : error}\n`);
    await made(journey, page, tries - 1);
  }
}

/** Makes every journey in one browser. One that does not come out leaves the others their turn. */
async function travel(browser: RemoteBrowser, { address, pass, fail }: TrialContext): Promise<void> {
  const page = new RemotePage(browser, address);
  await browser.send("resize", { x: 0, y: 0, width: 1280, height: 900 });
  for (const [name, journey] of Object.entries(JOURNEYS)) {
    const started = performance.now();
    try {
      await made(journey, page, TRIES);
      pass();
      process.stdout.write(`${browser.name}: ${name}, ${((performance.now() - started) / 1000).toFixed(1)} s\n`);
    } catch (error) {
      fail(`${browser.name}, ${name}: ${error instanceof Error ? error.message : String(error)}`);
    }
    // A picture is for whoever looks at it; no journey hangs on it.
    await page
      .picture(join(PICTURES, `${browser.name}-${name.replaceAll(" ", "-")}.png`))
      .catch((error: unknown) => process.stdout.write(`${browser.name}: no picture of ${name}, ${error}\n`));
  }
}

export const trial: Trial = {
  name: "the main journeys in other browsers",
  run: async (context) => {
    await mkdir(PICTURES, { recursive: true });
    for (const { name, programs, packages, start } of KINDS) {
      const found = installed(programs);
      if (found === null) {
        process.stdout.write(`SKIPPED: ${name} is not here (Debian: apt-get install ${packages.join(" ")})\n`);
        continue;
      }
      const home = join(context.folder, name);
      await mkdir(home);
      const browser = await start(found[0] ?? name, home);
      try {
        await travel(browser, context);
      } finally {
        await browser.close();
      }
    }
  },
};
