import { spawnSync } from "node:child_process";
import { once } from "node:events";
import { closeSync, createReadStream, createWriteStream, mkdtempSync, openSync, rmSync, statSync } from "node:fs";
import { availableParallelism, tmpdir } from "node:os";
import { join } from "node:path";
import { linesOf } from "../../src/cli/lineSplitter";
import { variedAttempts } from "../support/variedAttempts";

/**
 * `gatefall replay` of a long file against `JSON.parse` of its lines, in wall time.
 * A number after the command says how many attempts; a million are some 700 MB.
 */

const ROOT = join(import.meta.dirname, "../..");
const ATTEMPTS = Number(process.argv[2] ?? 200_000);
const SEED = 1989;
const WRITTEN_AT_ONCE = 1 << 20;

const print = (text: string) => process.stdout.write(`${text}\n`);
const seconds = (ms: number) => (ms / 1000).toFixed(1);

async function writeAttempts(file: string): Promise<void> {
  const output = createWriteStream(file);
  let text = "";
  for (const line of variedAttempts(ATTEMPTS, SEED)) {
    text += `${line}\n`;
    if (text.length < WRITTEN_AT_ONCE) continue;
    if (!output.write(text)) await once(output, "drain");
    text = "";
  }
  output.end(text);
  await once(output, "close");
}

function isJson(line: string): boolean {
  try {
    JSON.parse(line);
    return true;
  } catch {
    return false;
  }
}

/** Milliseconds that `JSON.parse` takes of all lines; reading them is not counted. */
async function parseTime(file: string): Promise<number> {
  let taken = 0;
  let lines: string[] = [];
  const parseAll = () => {
    const begin = performance.now();
    for (const line of lines) isJson(line);
    taken += performance.now() - begin;
    lines = [];
  };
  for await (const line of linesOf(createReadStream(file, { encoding: "utf8", highWaterMark: WRITTEN_AT_ONCE }))) {
    lines.push(line ?? "");
    if (lines.length >= 1000) parseAll();
  }
  parseAll();
  return taken;
}

/** Milliseconds from the start of the command to its end, with everything that it loads. */
function replayTime(file: string, threads: number): number {
  const output = openSync(`${file}.out`, "w");
  const begin = performance.now();
  const args = ["--import", "tsx", "src/cli/main.ts", "replay", "--threads", String(threads), file];
  const { status } = spawnSync(process.execPath, args, { cwd: ROOT, stdio: ["ignore", output, "inherit"] });
  const taken = performance.now() - begin;
  closeSync(output);
  if (status !== 1) throw new Error(`replay ended with ${status}, and not with 1 for the broken lines`);
  return taken;
}

const folder = mkdtempSync(join(tmpdir(), "gatefall-bench-"));
try {
  const file = join(folder, "attempts.jsonl");
  await writeAttempts(file);
  print(`${ATTEMPTS} attempts, ${(statSync(file).size / 1e6).toFixed(0)} MB, seed ${SEED}`);
  const parsing = await parseTime(file);
  print(`JSON.parse of the lines: ${seconds(parsing)} s`);
  for (const threads of [...new Set([1, availableParallelism()])]) {
    const taken = replayTime(file, threads);
    const ratio = (taken / parsing).toFixed(1);
    print(`gatefall replay --threads ${threads}: ${seconds(taken)} s, ${ratio} times JSON.parse`);
  }
} finally {
  rmSync(folder, { recursive: true });
}
