import { describe, expect, test } from "vitest";
import { gatefall } from "../../src/cli/gatefall";
import type { Terminal } from "../../src/cli/terminal/command";
import { SHIPPED_PROFILES, shippedProfile } from "../../src/lock/shippedProfiles";
import { COMBINATION, FAULT_TRACES } from "../support/faultTraces";
import { run } from "./fakeTerminal";

const jsonLines = (out: string): Record<string, unknown>[] =>
  out
    .trimEnd()
    .split("\n")
    .map((line) => JSON.parse(line));

describe("help", () => {
  test.each([["--help"], ["-h"], ["help"]])("%s lists the commands", async (arg) => {
    const { status, out, complaints } = await run([arg]);
    expect([status, complaints]).toEqual([0, []]);
    for (const name of ["replay", "profiles", "odds"]) expect(out).toContain(name);
    expect(out).toContain("not a certificate");
  });

  test.each(["replay", "profiles", "odds"])(
    "%s tells how it is used, whatever else is on the line",
    async (command) => {
      for (const args of [
        [command, "--help"],
        [command, "-h"],
        [command, "no-such-file", "--help"],
      ]) {
        const { status, out, complaints } = await run(args);
        expect([status, complaints]).toEqual([0, []]);
        expect(out).toContain(`gatefall ${command}`);
      }
    },
  );
});

describe("a command line that makes no sense gets status 2 and a sentence", () => {
  test.each([
    { args: [], says: "name a command" },
    { args: ["open"], says: 'no command "open"' },
    { args: ["--version"], says: "--version" },
    { args: ["replay"], says: "one file" },
    { args: ["replay", "a", "b"], says: "one file" },
    { args: ["replay", "nowhere.jsonl"], says: "nowhere.jsonl" },
    { args: ["replay", "--fast", "-"], says: "--fast" },
    { args: ["profiles", "--xml"], says: "--xml" },
    { args: ["profiles", "--json=yes"], says: "--json" },
    { args: ["odds"], says: "--profile" },
    { args: ["odds", "--profile", "three-wheel"], says: "--bias is missing" },
    { args: ["odds", "--profile", "three-wheel", "--bias", "0"], says: "--spread is missing" },
    { args: ["odds", "--profile", "three-wheel", "--bias", "much", "--spread", "1"], says: '"much"' },
    { args: ["odds", "--profile", "three-wheel", "--bias", "0", "--spread", ""], says: "--spread" },
    { args: ["odds", "--profile", "three-wheel", "--bias", "0", "--spread", "Infinity"], says: "--spread" },
    { args: ["odds", "extra", "--profile", "three-wheel", "--bias", "0", "--spread", "1"], says: "extra" },
    { args: ["odds", "--profile", "mine.json", "--bias", "0", "--spread", "1"], says: "mine.json" },
  ])("$args: $says", async ({ args, says }) => {
    const { status, out, complaints } = await run(args);
    expect([status, out]).toEqual([2, ""]);
    expect(complaints).toHaveLength(1);
    expect(complaints[0]).toContain(says);
  });
});

describe("input that is bad gets status 1 and a sentence", () => {
  const odds = (...more: string[]) => ["odds", "--bias", "0", "--spread", "1", ...more];
  test.each([
    { args: odds("--profile", "no-such-lock"), says: '"no-such-lock"' },
    { args: odds("--profile", "three-wheel", "--combination", "38-71"), says: "takes 3" },
    { args: odds("--profile", "three-wheel", "--combination", "38-71-x"), says: "combination[2]" },
    { args: odds("--profile", "three-wheel", "--trials", "0"), says: "trials" },
    { args: odds("--profile", "three-wheel", "--trials", "1.5"), says: "trials" },
    { args: ["odds", "--profile", "three-wheel", "--bias", "0", "--spread=-1"], says: "spread" },
  ])("$args: $says", async ({ args, says }) => {
    const { status, complaints } = await run(args);
    expect(status).toBe(1);
    expect(complaints).toEqual([expect.stringContaining(says)]);
  });
});

describe("profiles", () => {
  test("lists those that come with it, each with its procedure", async () => {
    const { status, out } = await run(["profiles"]);
    expect(status).toBe(0);
    for (const { id, title } of SHIPPED_PROFILES) expect(out).toContain(`${id}\n  ${title}`);
    expect(out).toContain("left >=4, right 3, left 2, draw right");
  });

  test("as JSON, one object a line", async () => {
    const { out } = await run(["profiles", "--json"]);
    expect(jsonLines(out)).toMatchObject(
      SHIPPED_PROFILES.map(({ id, kind }) => ({ id, kind, valid: true, doubts: [] })),
    );
  });

  const mine = { ...shippedProfile("three-wheel"), id: "mine" };
  const FILES = {
    "mine.json": JSON.stringify(mine),
    "doubtful.json": JSON.stringify({ ...mine, id: "doubtful", draw: { ...mine.draw, turn: "left" } }),
    "bad.json": JSON.stringify({ ...mine, graduations: 7 }),
    "broken.json": "{",
  };

  test("checks files: a sound one passes", async () => {
    const { status, out } = await run(["profiles", "mine.json"], FILES);
    expect([status, out.split("\n")[0]]).toEqual([0, "mine"]);
  });

  test("a doubtful one passes, with the doubt told", async () => {
    const { status, out } = await run(["profiles", "doubtful.json"], FILES);
    expect(status).toBe(0);
    expect(out).toContain("doubtful: draw.turn");
  });

  test("a bad one is told by field, the others go on, and the status is 1", async () => {
    const { status, out } = await run(
      ["profiles", "--json", "bad.json", "broken.json", "gone.json", "mine.json"],
      FILES,
    );
    expect(status).toBe(1);
    const [bad, broken, gone, sound] = jsonLines(out);
    expect(bad).toMatchObject({ id: "bad.json", valid: false, error: expect.stringContaining("graduations") });
    expect(broken).toMatchObject({ valid: false, error: expect.stringContaining("not JSON") });
    expect(gone).toMatchObject({ valid: false, error: expect.stringContaining("gone.json") });
    expect(sound).toMatchObject({ id: "mine", valid: true });
  });
});

describe("odds", () => {
  const hand = ["--bias", "0.2", "--spread", "0.6", "--trials", "400"];

  test("are told in words", async () => {
    const { status, out } = await run(["odds", "--profile", "three-wheel", ...hand]);
    expect(status).toBe(0);
    expect(out).toMatch(/closed form +\d+\.\d\d % of attempts open/);
    expect(out).toMatch(/simulated +\d+\.\d\d % \+- \d\.\d\d % .*of 400, seed 1/);
  });

  test("and as JSON, the same for the same seed and others for another", async () => {
    const json = async (seed: string) => {
      const { out } = await run(["odds", "--profile", "three-wheel", ...hand, "--json", "--seed", seed]);
      return jsonLines(out)[0];
    };
    const first = await json("5");
    expect(first).toMatchObject({ profile: "three-wheel", bias: 0.2, spread: 0.6, trials: 400 });
    expect(await json("5")).toEqual(first);
    expect((await json("6"))?.opened).not.toBe(first?.opened);
  });

  test("of one's own profile and combination", async () => {
    const files = { "mine.json": JSON.stringify({ ...shippedProfile("two-wheel"), id: "mine" }) };
    const args = ["odds", "--profile", "mine.json", ...hand, "--json", "--combination", "74-37"];
    expect(jsonLines((await run(args, files)).out)[0]).toMatchObject({ profile: "mine" });
  });

  test("with a negative bias written with an equals sign", async () => {
    const args = ["odds", "--profile", "two-wheel", "--bias=-0.4", "--spread", "0", "--trials", "10", "--json"];
    expect(jsonLines((await run(args)).out)[0]).toMatchObject({ bias: -0.4, closedForm: 1, simulated: 1 });
  });
});

describe("replay", () => {
  const lineOf = ({ profile, hand, times }: (typeof FAULT_TRACES)[number]) =>
    JSON.stringify({ profile, combination: COMBINATION, positions: hand, ...(times && { times_ms: times }) });

  test.each(FAULT_TRACES.map((trace) => [`${trace.profile}: ${trace.why}`, trace] as const))("%s", async (_, trace) => {
    const { status, out } = await run(["replay", "t.jsonl"], { "t.jsonl": `${lineOf(trace)}\n` });
    expect(status).toBe(0);
    const [result] = jsonLines(out);
    expect(result).toMatchObject({
      opened: trace.opens,
      faults: trace.faults.map(([code, number, size]) => ({ code, number, size, message: expect.any(String) })),
    });
  });

  test("answers line by line, in order; a bad one gets its number and the status is 1", async () => {
    const lines = FAULT_TRACES.slice(0, 3).map(lineOf);
    const text = [lines[0], "nonsense", "", lines[1], "{}", lines[2]].join("\n");
    const { status, out, complaints } = await run(["replay", "-"], { "-": text });
    expect([status, complaints]).toEqual([1, []]);
    const results = jsonLines(out);
    expect(results.map((result) => result.opened ?? result.error)).toEqual([
      true,
      expect.stringMatching(/^line 2: /),
      true,
      expect.stringMatching(/^line 5: /),
      true,
    ]);
  });

  test("has nothing to say of an empty file", async () => {
    expect(await run(["replay", "-"], { "-": "\n\n" })).toEqual({ status: 0, out: "", complaints: [] });
  });
});

test("a failure that is no one's mistake is not swallowed", async () => {
  const broken: Terminal = {
    pieces: () => {
      throw new RangeError("broken");
    },
    size: async () => null,
    text: async () => "",
    write: async () => {},
    complain() {},
    progress() {},
  };
  await expect(gatefall(["replay", "-"], broken, () => {})).rejects.toThrow(RangeError);
});

test("a negative bias may follow its option as a word of its own", async () => {
  const args = ["odds", "--profile", "three-wheel", "--bias", "-0.2", "--spread", "0.6", "--trials", "100", "--json"];
  const { status, out } = await run(args);
  expect([status, JSON.parse(out).bias]).toEqual([0, -0.2]);
});
