import { spawnSync } from "node:child_process";
import { once } from "node:events";
import { createWriteStream, mkdtempSync, openSync, rmSync } from "node:fs";
import { loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import { demoLogbook } from "../../src/progress/demo/demoLogbook";
import { writeLogbookFile } from "../../src/records/file/logbookFile";
import { NOON } from "../support/logbookRecords";
import { TELL_USAGE, USAGE_FD } from "./tellUsage";

/**
 * Memory and time that `gatefall class` and `gatefall records check` take of one large logbook, made of as many invented classes
 * as fill it. A number after the command says how many megabytes.
 */

const ROOT = join(import.meta.dirname, "../..");
const MEGABYTES = Number(process.argv[2] ?? 200);
const print = (text: string) => process.stdout.write(`${text}\n`);

/** The lists of invented classes, joined until they fill a file; each record as JSON. */
function joinedLists(bytes: number): Map<string, string[]> {
  const lists = new Map<string, string[]>();
  for (let seed = 1, size = 0; size < bytes; seed++) {
    for (const [kind, list] of Object.entries(JSON.parse(writeLogbookFile(demoLogbook(seed, NOON), NOON)))) {
      if (!Array.isArray(list)) continue;
      const texts = list.map((one) => JSON.stringify(one));
      lists.set(kind, [...(lists.get(kind) ?? []), ...texts]);
      size += texts.reduce((sum, { length }) => sum + length + 1, 0);
    }
  }
  return lists;
}

async function writeLogbook(file: string): Promise<void> {
  const output = createWriteStream(file);
  output.write(`{"format":"gatefall-logbook","version":2,"exportedAt":${NOON}`);
  for (const [kind, texts] of joinedLists(MEGABYTES * 1e6)) {
    if (!output.write(`,"${kind}":[${texts.join(",")}]`)) await once(output, "drain");
  }
  output.end("}");
  await once(output, "close");
}

const folder = mkdtempSync(join(tmpdir(), "gatefall-records-"));
const file = join(folder, "logbook.json");
await writeLogbook(file);
for (const command of [["class"], ["records", "check"]]) {
  const begin = performance.now();
  const args = ["--import", "tsx", "--import", TELL_USAGE, "src/cli/main.ts", ...command, file];
  const output = openSync("/dev/null", "w");
  const { status, output: piped } = spawnSync(process.execPath, args, {
    cwd: ROOT,
    stdio: ["ignore", output, "inherit", "pipe"],
    encoding: "utf8",
  });
  const { maxRSS, userCPUTime, systemCPUTime } = JSON.parse(piped[USAGE_FD] ?? "");
  const wall = (performance.now() - begin) / 1000;
  print(
    `${command.join(" ")}, ${MEGABYTES} MB: status ${status}; ${wall.toFixed(0)} s, of the processor ${((userCPUTime + systemCPUTime) / 1e6).toFixed(0)} s; ${(maxRSS / 1024).toFixed(0)} MB at most; load ${loadavg()[0]?.toFixed(0)}`,
  );
}
rmSync(folder, { recursive: true });
