import { spawn } from "node:child_process";
import { join } from "node:path";

const ROOT = join(import.meta.dirname, "../..");
/** Room for objects, megabytes: what holds a whole input in memory does not fit. */
const ROOM = 160;
/** Longest run, milliseconds: none of a trial's inputs is much work. */
const LONGEST = 60_000;

export interface CliOutcome {
  readonly status: number | null;
  readonly out: string;
  readonly complaints: string;
}

/** Runs the real command line in little memory. @param input - pieces of what it reads from "-" */
export async function spawnedCli(args: readonly string[], input: Iterable<string | Buffer>): Promise<CliOutcome> {
  const node = ["--import", "tsx", `--max-old-space-size=${ROOM}`, "src/cli/main.ts", ...args];
  const child = spawn(process.execPath, node, { cwd: ROOT, timeout: LONGEST, killSignal: "SIGKILL" });
  const [out, complaints]: [Buffer[], Buffer[]] = [[], []];
  child.stdout.on("data", (piece: Buffer) => out.push(piece));
  child.stderr.on("data", (piece: Buffer) => complaints.push(piece));
  // It may end before it has read all of it.
  child.stdin.on("error", () => undefined);
  const ended = new Promise<number | null>((resolve) => child.once("close", (status) => resolve(status)));
  for (const piece of input) {
    if (!child.stdin.writable) break;
    if (!child.stdin.write(piece)) {
      await Promise.race([new Promise((resolve) => child.stdin.once("drain", resolve)), ended]);
    }
  }
  child.stdin.end();
  const status = await ended;
  return { status, out: Buffer.concat(out).toString(), complaints: Buffer.concat(complaints).toString() };
}

/** What no run may show, whatever it was given; null where all is well. */
export function unseemly({ status, out, complaints }: CliOutcome): string | null {
  if (status === null || status > 2) return `it ended with status ${status}: ${complaints.slice(0, 300)}`;
  if (/\n\s+at .*[:(]/.test(complaints + out)) return `it shows a stack trace: ${complaints.slice(0, 300)}`;
  if (status !== 0 && out + complaints === "") return `it ended with status ${status} and not a word`;
  return null;
}
