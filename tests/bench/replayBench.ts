import { spawnSync } from "node:child_process";
import { once } from "node:events";
import { closeSync, createReadStream, createWriteStream, mkdtempSync, openSync, rmSync, statSync } from "node:fs";
import { loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import { linesOf } from "../../src/cli/lineSplitter";
import { usualThreads } from "../../src/cli/replayCrew";
import { variedAttempts } from "../support/variedAttempts";
import { TELL_USAGE, USAGE_FD } from "./tellUsage";

/**
 * `gatefall replay` of a long file against `JSON.parse` of its lines, which is measured again before each run, so that other
 * work on the machine slows both. Wall time is what one waits for; processor time says more where the machine is busy.
 * A number after the command says how many attempts; a million are some 700 MB.
 */

const ROOT = join(import.meta.dirname, "../..");
const ATTEMPTS = Number(process.argv[2] ?? 200_000);
const SEED = 1989;
const WRITTEN_AT_ONCE = 1 << 20;

const print = (text: string) => process.stdout.write(`${text}\n`);
const seconds = (ms: number) => (ms / 1000).toFixed(2);

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

/** What something took, milliseconds. */
interface Taken {
  readonly wall: number;
  /** Of the processors, all threads together. */
  readonly processor: number;
}

/** What `JSON.parse` takes of all lines; reading them is not counted. */
async function parseTime(file: string): Promise<Taken> {
  let wall = 0;
  let processor = 0;
  let lines: string[] = [];
  const parseAll = () => {
    const begin = performance.now();
    const used = process.cpuUsage();
    for (const line of lines) isJson(line);
    wall += performance.now() - begin;
    const { user, system } = process.cpuUsage(used);
    processor += (user + system) / 1000;
    lines = [];
  };
  for await (const line of linesOf(createReadStream(file, { highWaterMark: WRITTEN_AT_ONCE }))) {
    lines.push(line ?? "");
    if (lines.length >= 1000) parseAll();
  }
  parseAll();
  return { wall, processor };
}

function usageOf(told: string | null | undefined): NodeJS.ResourceUsage {
  return JSON.parse(told ?? "") as NodeJS.ResourceUsage;
}

const processorOf = (told: string | null | undefined) => {
  const { userCPUTime, systemCPUTime } = usageOf(told);
  return (userCPUTime + systemCPUTime) / 1000;
};

/** A program that only reads the lines, as Node does, and parses them. */
const ONLY_PARSES = `
  import { createReadStream } from "node:fs";
  import { createInterface } from "node:readline";
  let read = 0;
  for await (const line of createInterface({ input: createReadStream(process.argv[1]) })) {
    try { JSON.parse(line); } catch {}
    read += 1;
  }
  process.stdout.write(String(read));
`;

/** What such a program takes from its start to its end. */
function onlyParsing(file: string): Taken {
  const begin = performance.now();
  const args = ["--import", TELL_USAGE, "--input-type=module", "--eval", ONLY_PARSES, file];
  const { stdout, output } = spawnSync(process.execPath, args, {
    encoding: "utf8",
    stdio: ["ignore", "pipe", "inherit", "pipe"],
  });
  const wall = performance.now() - begin;
  if (Number(stdout) !== ATTEMPTS) throw new Error(`it read ${stdout} lines, not ${ATTEMPTS}`);
  return { wall, processor: processorOf(output[USAGE_FD]) };
}

/** What the command takes from its start to its end, with everything that it loads, and its memory at most, MB. */
function replayTime(file: string, threads: number): Taken & { readonly most_MB: number } {
  const written = openSync(`${file}.out`, "w");
  const begin = performance.now();
  const args = ["--import", TELL_USAGE, "--import", "tsx", "src/cli/main.ts"];
  const { status, output } = spawnSync(process.execPath, [...args, "replay", "--threads", String(threads), file], {
    cwd: ROOT,
    encoding: "utf8",
    stdio: ["ignore", written, "inherit", "pipe"],
  });
  const wall = performance.now() - begin;
  closeSync(written);
  if (status !== 1) throw new Error(`replay ended with ${status}, and not with 1 for the broken lines`);
  const told = output[USAGE_FD];
  return { wall, processor: processorOf(told), most_MB: usageOf(told).maxRSS / 1024 };
}

const folder = mkdtempSync(join(tmpdir(), "gatefall-bench-"));
try {
  const file = join(folder, "attempts.jsonl");
  await writeAttempts(file);
  print(`${ATTEMPTS} attempts, ${(statSync(file).size / 1e6).toFixed(0)} MB, seed ${SEED}`);
  for (const threads of [...new Set([1, usualThreads()])]) {
    const parsing = await parseTime(file);
    const program = onlyParsing(file);
    const taken = replayTime(file, threads);
    const [load = 0] = loadavg();
    const ratio = (kind: "wall" | "processor") => (taken[kind] / parsing[kind]).toFixed(1);
    const toProgram = (kind: "wall" | "processor") => (taken[kind] / program[kind]).toFixed(1);
    print(`JSON.parse of the lines: ${seconds(parsing.wall)} s, ${seconds(parsing.processor)} s of processor`);
    print(
      `a program that reads the lines and parses them: ${seconds(program.wall)} s, ${seconds(program.processor)} s of processor`,
    );
    print(
      `gatefall replay --threads ${threads}: ${seconds(taken.wall)} s, ${ratio("wall")} times JSON.parse; ` +
        `${seconds(taken.processor)} s of processor, ${ratio("processor")} times; ` +
        `${toProgram("wall")} and ${toProgram("processor")} times that program; ` +
        `${taken.most_MB.toFixed(0)} MB at most; load ${load.toFixed(1)}`,
    );
  }
} finally {
  rmSync(folder, { recursive: true });
}
