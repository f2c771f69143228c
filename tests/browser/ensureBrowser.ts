import { spawnSync } from "node:child_process";
import { browserPath } from "./browserPath";

/** Ways to get a browser, tried in order: the system's packages where we may install, else the test tool's own. */
const WAYS: readonly (readonly string[])[] = [
  ["apt-get", "update"],
  ["apt-get", "install", "-y", "--no-install-recommends", "chromium"],
  ["npx", "playwright", "install", "chromium"],
];

for (const [command = "", ...args] of WAYS) {
  if (browserPath() !== undefined) break;
  spawnSync(command, args, { stdio: "inherit" });
}
const found = browserPath();
if (found === undefined) {
  process.stderr.write("No browser was found or could be installed. Install Chromium, or name one in CHROMIUM_PATH.\n");
  process.exitCode = 1;
} else process.stdout.write(`Browser: ${found}\n`);
