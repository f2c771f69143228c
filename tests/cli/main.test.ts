import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";

const ROOT = join(import.meta.dirname, "../..");
const GOOD = '{"profile":"three-wheel","combination":[38,71,26],"positions":[0,338,71,226,190]}';

let folder = "";
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "gatefall-"));
});
afterAll(() => rmSync(folder, { recursive: true }));

/** The real command line, in a process of its own. */
const gatefall = (args: string, input = "") =>
  spawnSync("/bin/sh", ["-c", `npx tsx src/cli/main.ts ${args}`], { cwd: ROOT, input, encoding: "utf8" });

test("replays a file: a bad line gets a sentence and status 1, and the rest goes on", () => {
  const file = join(folder, "trace.jsonl");
  writeFileSync(file, `${GOOD}\n{"profile":\n${GOOD}\n`);
  const { status, stdout, stderr } = gatefall(`replay "${file}"`);
  const results = stdout
    .trimEnd()
    .split("\n")
    .map((line) => JSON.parse(line));
  expect(results).toMatchObject(
    [{ opened: true, dial: 90 }, { error: /^line 2: ./ }, { opened: true }].map((one) =>
      one.error === undefined ? one : { error: expect.stringMatching(one.error) },
    ),
  );
  expect([status, stderr]).toEqual([1, ""]);
}, 20_000);

test("replays standard input, with line ends of any kind", () => {
  const { status, stdout } = gatefall("replay -", `${GOOD}\r\n${GOOD}`);
  expect(stdout.trimEnd().split("\n")).toHaveLength(2);
  expect(status).toBe(0);
}, 20_000);

test("reads one JSON text from standard input as well, a byte order mark before it or not", () => {
  const clean = readFileSync(join(ROOT, "shared/handovers/clean.json"), "utf8");
  for (const input of [clean, `\uFEFF${clean}`]) {
    const { status, stdout, stderr } = gatefall("handover check -", input);
    expect([status, stderr]).toEqual([0, ""]);
    expect(stdout).toMatch(/^Handed over with every proof and without a fault\.\n/);
  }
}, 40_000);

test("a missing file gets status 2 and a sentence on standard error", () => {
  const { status, stdout, stderr } = gatefall(`replay "${join(folder, "none.jsonl")}"`);
  expect([status, stdout]).toEqual([2, ""]);
  expect(stderr).toMatch(/^gatefall: .*none\.jsonl cannot be read: .+\n$/);
}, 20_000);

test("a reader that has seen enough is no failure", () => {
  const many = `${GOOD}\n`.repeat(3000);
  const { stdout, stderr } = gatefall("replay - | head -1", many);
  expect(stdout.trimEnd().split("\n")).toHaveLength(1);
  expect(stderr).toBe("");
}, 30_000);
