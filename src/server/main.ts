import { spawnSync } from "node:child_process";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { HELP, readOptions, type StartOptions } from "./start/options";
import { type Running, start, withData } from "./start/running";
import { howToTrust } from "./tls/trusting";
import { ServerError } from "./words/serverError";
import { serverProblem } from "./words/serverWords";

const ROOT = join(import.meta.dirname, "../..");

/** Builds the app, and gives its folder. */
function buildApp(): string {
  const vite = join(dirname(createRequire(import.meta.url).resolve("vite/package.json")), "bin/vite.js");
  const { status } = spawnSync(process.execPath, [vite, "build", "--logLevel", "warn"], {
    cwd: ROOT,
    stdio: "inherit",
  });
  if (status !== 0) throw new ServerError(serverProblem("not-built", []));
  return join(ROOT, "dist");
}

const PLAIN =
  "Over plain http, other machines have no camera, serial dial or installed app, and the network can read along: see --tls.";

function greet({ addresses, firstLink, place, isSecure, authority }: Running, isBehindProxy: boolean): void {
  const [here = "", ...network] = addresses;
  const lines = [
    `This machine: ${here}`,
    ...network.map((address) => `The network:  ${address}`),
    ...(firstLink === null ? [] : [`First instructor, once, within a day: ${here}${firstLink}`]),
    `Data: ${place}`,
    ...(isSecure || isBehindProxy ? [] : [PLAIN]),
    "Stop with Ctrl+C.",
    ...(authority === null ? [] : howToTrust(authority, network[0] ?? here)),
  ];
  process.stdout.write(`${lines.join("\n")}\n`);
}

async function run(options: StartOptions): Promise<void> {
  const running = await start(options, options.app ?? buildApp());
  greet(running, options.isBehindProxy);
  for (const signal of ["SIGINT", "SIGTERM"] as const) {
    process.once(signal, () => {
      void running.stop().then(() => process.exit(0));
    });
  }
}

try {
  const asked = readOptions(process.argv.slice(2), process.env);
  if (asked.kind === "help") process.stdout.write(HELP);
  else if (asked.kind === "command") {
    const { lines, isWell } = await withData(asked.command, asked.options);
    process.stdout.write(`${lines.join("\n")}\n`);
    if (!isWell) process.exitCode = 1;
  } else await run(asked.options);
} catch (error) {
  if (!(error instanceof ServerError)) throw error;
  process.stderr.write(`class: ${error.says}\n`);
  process.exitCode = 2;
}
