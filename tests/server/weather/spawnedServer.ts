import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { join } from "node:path";
import { createInterface } from "node:readline";
import { buildSync } from "esbuild";

const ROOT = join(import.meta.dirname, "../../..");
/** Three folders deep in the project, as the sources are, and beside the packages. */
const BUILT = join(ROOT, "node_modules/.cache/class-server/server.mjs");

let isBuilt = false;

/** Plain code starts in a third of the time. */
function built(): string {
  if (!isBuilt) {
    const entry = join(import.meta.dirname, "serverProcess.ts");
    const how = { bundle: true, platform: "node", format: "esm", target: "node20", packages: "external" } as const;
    buildSync({ entryPoints: [entry], outfile: BUILT, logLevel: "error", ...how });
    isBuilt = true;
  }
  return BUILT;
}

/** A class server in a process of its own. */
export interface SpawnedServer {
  /** Address of its page, with a slash at the end. */
  readonly address: string;
  readonly process: ChildProcess;
  /** Processor time that it has used so far, ms. */
  readonly used: () => Promise<number>;
  /** SIGKILL: it can do nothing about it. */
  readonly kill: () => Promise<void>;
}

/**
 * Starts a class server in a process of its own.
 *
 * @param shell - what a shell does before it, in the same process
 * @throws {Error} with what it said instead
 */
export async function spawnServer(data: string, database = "", shell = ":"): Promise<SpawnedServer> {
  const command = `${shell}; exec "$0" "$@"`;
  const args = ["-c", command, process.execPath, built(), data, database];
  const child = spawn("bash", args, { stdio: ["pipe", "pipe", "pipe"] });
  let complaints = "";
  child.stderr.on("data", (piece) => {
    complaints = `${complaints}${piece}`.slice(-4000);
  });
  const ended = once(child, "exit");
  const lines = createInterface({ input: child.stdout });
  const next = () => once(lines, "line").then(([said]) => String(said));
  const line = await Promise.race([next(), ended.then(() => "fails: it ended")]);
  const [word, address = ""] = line.split(" ");
  if (word !== "listens") throw new Error(`${line} ${complaints}`);
  return {
    address,
    process: child,
    async used() {
      child.stdin.write("\n");
      const { user, system } = JSON.parse(await next());
      return (user + system) / 1000;
    },
    async kill() {
      child.kill("SIGKILL");
      await ended;
    },
  };
}
