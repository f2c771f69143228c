import { spawnSync } from "node:child_process";
import { browserPath, hasQuickBrowser } from "./browserPath";

type Command = readonly string[];

const install = (name: string): Command => ["apt-get", "install", "-y", "--no-install-recommends", name];

/** The system's packages, where we may install: a browser without windows first. */
const QUICK_WAYS: readonly Command[] = [["apt-get", "update"], install("chromium-headless-shell")];
/** Any other, tried in order: the test tool's own last. */
const OTHER_WAYS: readonly Command[] = [install("chromium"), ["npx", "playwright", "install", "chromium"]];

const run = ([command = "", ...args]: Command) => spawnSync(command, args, { stdio: "inherit" });

// A build machine is ours to install on, so it gets the quick browser; elsewhere any that is there will do.
const isQuickWanted = process.env.CI !== undefined && !hasQuickBrowser();
if (isQuickWanted || browserPath() === undefined) for (const way of QUICK_WAYS) run(way);
for (const way of OTHER_WAYS) if (browserPath() === undefined) run(way);

const found = browserPath();
if (found === undefined) {
  process.stderr.write("No browser was found or could be installed. Install Chromium, or name one in CHROMIUM_PATH.\n");
  process.exitCode = 1;
} else process.stdout.write(`Browser: ${found}\n`);
