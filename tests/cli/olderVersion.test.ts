import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { run } from "./fakeTerminal";

/* Every file that version 0.2.0 wrote and the command line reads. */

const FOLDER = "tests/fixtures/0.2.0/";
const FILES = Object.fromEntries(readdirSync(FOLDER).map((name) => [name, readFileSync(`${FOLDER}${name}`, "utf8")]));
const inLines = (text: string) =>
  text
    .trim()
    .split("\n")
    .map((line) => JSON.parse(line));

test("records of version 0.2.0 check, and show their results", async () => {
  const names = ["sitting-passed.json", "sitting-failed.json", "handover.json", "logbook.json", "logbook-demo.json"];
  const { status, out } = await run(["records", "check", ...names, "--json"], FILES);
  expect(inLines(out).map(({ file, kind, result, problems }) => [file, kind, result, problems])).toEqual([
    ["sitting-passed.json", "sitting", "passed", []],
    ["sitting-failed.json", "sitting", "not passed", []],
    ["handover.json", "handover", "every proof shown, faults 0, of which undone 0", []],
    ["logbook.json", "logbook", null, []],
    ["logbook.json", "sitting", "passed", []],
    ["logbook.json", "sitting", "not passed", []],
    ["logbook-demo.json", "logbook", null, []],
  ]);
  expect(status).toBe(0);
});

test("attempts of version 0.2.0 replay as its logbook says of them", async () => {
  const { status, out } = await run(["replay", "attempts.jsonl"], FILES);
  const { attempts } = JSON.parse(FILES["logbook.json"] ?? "");
  const opened = inLines(out).map((one) => one.opened);
  // One was to be dialed as far as its second number only, which opens nothing.
  const right = attempts.map((one: { opened: boolean; exercise: string }) => one.opened && one.exercise === "open");
  expect(opened).toEqual(right);
  expect(right.filter(Boolean)).toHaveLength(6);
  expect(status).toBe(0);
});

test("a handover of version 0.2.0 is clean", async () => {
  expect(await run(["handover", "check", "handover-run.json"], FILES)).toMatchObject({ status: 0 });
});

test("a class comes from logbooks of version 0.2.0", async () => {
  const { status, out } = await run(["class", "logbook.json", "logbook-demo.json", "--on", "2026-11-28"], FILES);
  expect(status).toBe(0);
  for (const name of ["Mibsy", "Ondrell"]) expect(out).toContain(name);
});
