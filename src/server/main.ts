import { spawnSync } from "node:child_process";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { type Demo, startDemo } from "./start/demoStart";
import { HELP, readOptions, type StartOptions } from "./start/options";
import { type Running, start, withData } from "./start/running";
import { howToTrust } from "./tls/trusting";
import { ServerError } from "./words/serverError";
import { serverProblem } from "./words/serverWords";

const ROOT = join(import.meta.dirname, "../..");

const say = (line: string) => process.stdout.write(`${line}\n`);

/** Builds the app, and gives its folder. */
function buildApp(): string {
  say("Building the app. That takes up to a minute.");
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

/** @param more - further lines */
function greet(
  { addresses, firstLink, place, isSecure, authority }: Running,
  isBehindProxy: boolean,
  more: readonly string[] = [],
): void {
  const [here = "", ...network] = addresses;
  const lines = [
    `This machine: ${here}`,
    ...network.map((address) => `The network:  ${address}`),
    ...(firstLink === null
      ? []
      : [`First instructor, set up your school here, once, within a day: ${here}${firstLink}`]),
    ...more,
    `Data: ${place}`,
    ...(isSecure || isBehindProxy ? [] : [PLAIN]),
    "Stop with Ctrl+C.",
    ...(authority === null ? [] : howToTrust(authority, network[0] ?? here)),
  ];
  process.stdout.write(`${lines.join("\n")}\n`);
}

const demoLines = ({ school, apprentices, login, password, code }: Demo, here = ""): readonly string[] => [
  `Demo: ${school}, a week of ${apprentices} apprentices. All of its people, and all that they did, are invented.`,
  `Instructor: open ${here}#/instructor and sign in as ${login} with the password ${password}`,
  `Class code for benches of your own: ${code}`,
  "The data below goes when you stop the server.",
];

/** Lets requests under way end when somebody stops it. */
function stopWhenAsked(running: Running): void {
  for (const signal of ["SIGINT", "SIGTERM"] as const) {
    process.once(signal, () => {
      void running.stop().then(() => process.exit(0));
    });
  }
}

async function run(options: StartOptions): Promise<void> {
  const running = await start(options, options.app ?? buildApp(), say);
  greet(running, options.isBehindProxy);
  stopWhenAsked(running);
}

async function runDemo(options: Parameters<typeof startDemo>[0]): Promise<void> {
  const app = options.app ?? buildApp();
  process.stdout.write("Making the demo. That takes about a minute.\n");
  const { running, demo } = await startDemo(options, app);
  greet(running, options.isBehindProxy, demoLines(demo, running.addresses[0]));
  stopWhenAsked(running);
}

try {
  const asked = readOptions(process.argv.slice(2), process.env);
  if (asked.kind === "help") process.stdout.write(HELP);
  else if (asked.kind === "command") {
    const { lines, isWell } = await withData(asked.command, asked.options, (line) => process.stderr.write(`${line}\n`));
    process.stdout.write(`${lines.join("\n")}\n`);
    if (!isWell) process.exitCode = 1;
  } else if (asked.kind === "demo") await runDemo(asked.options);
  else await run(asked.options);
} catch (error) {
  if (!(error instanceof ServerError)) throw error;
  process.stderr.write(`class: ${error.says}\n`);
  process.exitCode = 2;
}
