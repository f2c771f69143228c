import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";

const ROOT = join(import.meta.dirname, "../..");

/** The real command line, in a process of its own. */
const gatefall = (args: readonly string[], input = "") =>
  spawnSync("npx", ["tsx", "src/cli/main.ts", ...args], { cwd: ROOT, input, encoding: "utf8" });

test("a file gets a result; a bad line on standard input gets status 1 and a sentence on standard error", () => {
  const folder = mkdtempSync(join(tmpdir(), "gatefall-"));
  try {
    const file = join(folder, "readings.csv");
    const text = "right,0.2\r\nright,0.1\r\nleft,-0.1\r\nleft,0\r\n";
    writeFileSync(file, text);
    const fromFile = gatefall(["zero", file, "--json"]);
    expect([fromFile.status, fromFile.stderr]).toEqual([0, ""]);
    expect(JSON.parse(fromFile.stdout)).toMatchObject({ right: { n: 2 }, left: { n: 2 } });
    const bad = gatefall(["zero", "-"], `${text}down,1\n`);
    expect([bad.status, bad.stdout]).toEqual([1, ""]);
    expect(bad.stderr).toMatch(/^gatefall: line 5: direction must be .+\n$/);
  } finally {
    rmSync(folder, { recursive: true });
  }
}, 60_000);
