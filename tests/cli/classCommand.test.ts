import { describe, expect, test } from "vitest";
import { classTable } from "../../src/progress/classTable";
import { classCsv } from "../../src/progress/csv/classCsv";
import { demoLogbook } from "../../src/progress/demo/demoLogbook";
import { writeLogbookFile } from "../../src/records/file/logbookFile";
import { run } from "./fakeTerminal";

const DAY = "2026-11-28";
const NOW = Date.parse("2026-11-28T23:59:59.999Z");
/** The invented class of the demo. */
const CLASS = demoLogbook(7, NOW - 3_600_000);
const FILE = writeLogbookFile(CLASS, NOW);
const FILES = { "class.json": FILE };

describe("gatefall class", () => {
  test("as CSV it is what the desk writes", async () => {
    const { status, out, complaints } = await run(["class", "class.json", "--format", "csv", "--on", DAY], FILES);
    expect({ status, complaints }).toEqual({ status: 0, complaints: [] });
    expect(out).toBe(classCsv(classTable([CLASS], undefined, { now: NOW })));
  });

  test("figures are of one hand: that which is asked for, and named where it is not the screen", async () => {
    const ofNone = await run(["class", "class.json", "--hand", "encoder", "--on", DAY], FILES);
    expect(ofNone.out).toMatch(/^Only what was turned by this counts: encoder\.\nperson /);
    expect(ofNone.out).not.toContain("three-wheel, open");
    const screen = await run(["class", "class.json", "--hand", "screen", "--on", DAY], FILES);
    expect(screen.out).toBe((await run(["class", "class.json", "--on", DAY], FILES)).out);
    const wrong = await run(["class", "class.json", "--hand", "hammer"], FILES);
    expect(wrong.status).toBe(2);
    expect(wrong.complaints.join()).toMatch(/--hand must be "screen", .* or "mixed", not "hammer"/);
  });

  test("a logbook that comes twice counts once", async () => {
    const once = await run(["class", "class.json", "--format", "json", "--on", DAY], FILES);
    const twice = await run(["class", "class.json", "again.json", "--format", "json", "--on", DAY], {
      ...FILES,
      "again.json": FILE,
    });
    expect(twice.out).toBe(once.out);
    expect(JSON.parse(once.out).length).toBeGreaterThan(3);
  });

  test("in words: a person a line, a skill a column", async () => {
    const { out } = await run(["class", "class.json", "--on", DAY], FILES);
    const lines = out.trimEnd().split("\n");
    const trainees = CLASS.records.people.filter(({ part }) => part === "trainee");
    expect(lines).toHaveLength(trainees.length + 1);
    for (const { name } of trainees) expect(out).toContain(`\n${name}  `);
    expect(lines[0]).toMatch(/^person .*three-wheel, open .*ready at all$/);
  });

  test("readiness lapses by the day that is asked for", async () => {
    const states = async (on: string) => {
      const { out } = await run(["class", "class.json", "--format", "json", "--on", on], FILES);
      return JSON.parse(out).flatMap(({ skills }: { skills: { state: string }[] }) => skills.map(({ state }) => state));
    };
    expect(await states(DAY)).toContain("ready");
    expect(await states("2036-01-01")).not.toContain("ready");
  });

  test("an attempt that its recording does not bear out is left out, and standard error says so", async () => {
    const forged = JSON.parse(FILE);
    const miss = forged.attempts.find(
      (one: { opened: boolean; exercise: string }) => !one.opened && one.exercise === "open",
    );
    miss.opened = true;
    const { status, complaints } = await run(["class", "class.json", "--on", DAY], {
      "class.json": JSON.stringify(forged),
    });
    expect(status).toBe(1);
    expect(complaints.join()).toMatch(/^class\.json: 1 attempt of .+ left out: .+/);
  });

  test.each([
    { why: "no file", args: ["class"] },
    { why: "an unknown format", args: ["class", "class.json", "--format", "xml"] },
    { why: "a day that is none", args: ["class", "class.json", "--on", "tomorrow"] },
    { why: "no logbook", args: ["class", "sheet.json"] },
  ])("$why gets status 2 and a sentence", async ({ args }) => {
    const { status, complaints } = await run(args, { ...FILES, "sheet.json": '{"format": "gatefall-sheet"}' });
    expect(status).toBe(2);
    expect(complaints).toHaveLength(1);
  });
});
