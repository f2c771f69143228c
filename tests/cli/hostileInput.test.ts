import { spawn, spawnSync } from "node:child_process";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { linesOf } from "../../src/cli/lineSplitter";
import { run } from "./fakeTerminal";

const ROOT = join(import.meta.dirname, "../..");
const GOOD = '{"profile":"three-wheel","combination":[38,71,26],"positions":[0,338,71,226,190]}';
const DECIMAL = '{"profile":"two-wheel","combination":[74,37],"positions":[0,-226,-64.26,-110]}';
const ROUND = '{"profile":"dial-encoder","combination":[43,16,58],"positions":[0,343,116,458,442]}';
const NEW_FIRST = '{"profile":"dial-encoder","combination":[43,16,58],"positions":[0,343,116,443,216,358,343]}';

const resultsOf = (out: string) =>
  out
    .trimEnd()
    .split("\n")
    .map((line) => JSON.parse(line));

test("draws in decimals and encoder rounds open from the command line", async () => {
  const { status, out } = await run(["replay", "-"], { "-": [DECIMAL, ROUND, NEW_FIRST].join("\n") });
  expect(resultsOf(out).map(({ opened }) => opened)).toEqual([true, true, true]);
  expect(status).toBe(0);
});

describe("lines that nobody means well with", () => {
  const nested = (depth: number) => "[".repeat(depth) + "]".repeat(depth);
  const profileNested = `{"profile":${nested(20_000)},"combination":[1],"positions":[0]}`;

  test("nested 20,000 deep are one bad line each, and the rest goes on", async () => {
    const text = [GOOD, nested(20_000), profileNested, "[".repeat(20_000), GOOD].join("\n");
    const { status, out } = await run(["replay", "-"], { "-": text });
    expect(status).toBe(1);
    expect(resultsOf(out).map((one) => one.opened ?? one.error)).toEqual([
      true,
      expect.stringMatching(/^line 2: this is nested more than 100 deep/),
      expect.stringMatching(/^line 3: this is nested more than 100 deep/),
      expect.stringMatching(/^line 4: this is nested more than 100 deep/),
      true,
    ]);
  });

  test("brackets in a string are no nesting, and a backslash hides a quote", async () => {
    const title = `"${"[".repeat(500)}\\"${"{".repeat(500)}"`;
    const { out } = await run(["replay", "-"], { "-": `{"title":${title},${GOOD.slice(1)}` });
    expect(resultsOf(out)).toMatchObject([{ opened: true }]);
  });

  test("of zero and of a JSON file as well", async () => {
    const { status, complaints } = await run(["zero", "-"], { "-": `{"a":${nested(20_000)}}\nleft,0.1` });
    expect([status, complaints[0]]).toEqual([1, expect.stringMatching(/^line 1: this is not one whole JSON object/)]);
    const file = await run(["profiles", "deep.json"], { "deep.json": nested(20_000) });
    expect([file.status, file.out]).toEqual([1, expect.stringContaining("nested more than 100 deep")]);
  });
});

describe("lines are cut from pieces of text", () => {
  const cut = async (pieces: readonly string[], longest?: number) => {
    const lines: (string | null)[] = [];
    async function* given() {
      for (const piece of pieces) yield Buffer.from(piece);
    }
    for await (const line of linesOf(given(), longest)) lines.push(line);
    return lines;
  };

  test.each([
    { why: "nothing", pieces: [], lines: [] },
    { why: "a line without an end", pieces: ["ab"], lines: ["ab"] },
    { why: "lines across pieces", pieces: ["a", "b\nc", "d\n", "e"], lines: ["ab", "cd", "e"] },
    { why: "blank lines", pieces: ["\n\na\n"], lines: ["", "", "a"] },
    { why: "either line end, cut in two", pieces: ["a\r", "\nb\r\n"], lines: ["a", "b"] },
  ])("$why", async ({ pieces, lines }) => {
    expect(await cut(pieces)).toEqual(lines);
  });

  test("one over the limit comes as null, and the next as it is", async () => {
    expect(await cut(["abc", "def\nabcd", "\n", "abcde"], 4)).toEqual([null, "abcd", null]);
  });
});

describe("the real command line", () => {
  const shell = (script: string) => spawnSync("/bin/sh", ["-c", script], { cwd: ROOT, encoding: "utf8" });

  test("a full disk gets one sentence and status 2", () => {
    const { status, stderr } = shell(`echo '${GOOD}' | npx tsx src/cli/main.ts replay - > /dev/full`);
    expect(stderr).toMatch(/^gatefall: the output cannot be written: ENOSPC.*\n$/);
    expect(status).toBe(2);
  }, 30_000);

  test("a line of 17 million characters is one bad line", () => {
    const long = `(head -c 17000000 /dev/zero | tr '\\0' 1; echo; echo '${GOOD}')`;
    const { status, stdout } = shell(`${long} | npx tsx src/cli/main.ts replay -`);
    expect(resultsOf(stdout)).toMatchObject([{ error: expect.stringMatching(/^line 1: .*longer/) }, { opened: true }]);
    expect(status).toBe(1);
  }, 30_000);

  test("a long simulation ends at Ctrl-C", async () => {
    const args = ["--import", "tsx", "src/cli/main.ts", "odds"];
    const numbers = ["--profile", "three-wheel", "--bias", "0", "--spread", "1", "--trials", "10000000"];
    const child = spawn(process.execPath, [...args, ...numbers], { cwd: ROOT });
    await new Promise((resume) => setTimeout(resume, 4000));
    child.kill("SIGINT");
    const signal = await new Promise((resume) => child.once("exit", (_, by) => resume(by)));
    expect(signal).toBe("SIGINT");
  }, 30_000);
});

test.each([
  { trials: "1e15", status: 2 },
  { trials: "10000001", status: 2 },
  { trials: "x", status: 2 },
  { trials: "0", status: 1 },
  { trials: "2.5", status: 1 },
])("--trials $trials is refused in a sentence", async ({ trials, status }) => {
  const outcome = await run([
    ...["odds", "--profile", "three-wheel", "--bias", "0", "--spread", "1"],
    `--trials=${trials}`,
  ]);
  expect([outcome.status, outcome.complaints]).toEqual([status, [expect.stringContaining("trials")]]);
});

describe("rules that are hard to count", () => {
  const with_ = (rules: object) => ({ "rules.json": JSON.stringify(rules) });
  const combinations = (action: string, rules: object, profile = "three-wheel") =>
    run(["combinations", action, "--profile", profile, "--rules", "rules.json"], with_(rules));

  test.each([100, 105, 200])("a distance of %s on a circle of 100 leaves none, and says so", async (minSeparation) => {
    const counted = await combinations("count", { minSeparation, circular: true });
    expect([counted.status, counted.out]).toEqual([0, expect.stringContaining("allow 0 of 1,000,000")]);
    const drawn = await combinations("draw", { minSeparation, circular: true });
    expect([drawn.status, drawn.complaints]).toEqual([1, [expect.stringContaining("no combination")]]);
  });

  test("six numbers of 200 under all rules are not counted, at once, and it is said", async () => {
    const step = (turn: string) => ({ turn, arrivals: 2, rule: "at-least" });
    const profile = JSON.stringify({
      id: "six",
      kind: "dial-encoder",
      graduations: 200,
      procedure: ["left", "right", "left", "right", "left", "right"].map(step),
      draw: { turn: "left", travel: 15 },
      combinationRules: {
        minSeparation: 20,
        circular: true,
        noStraight: true,
        notAllEven: true,
        notAllOdd: true,
        multiplesOfTen: "differences",
        oneFromEachThird: true,
      },
    });
    const began = performance.now();
    const { status, complaints } = await run(["combinations", "count", "--profile", "six.json"], {
      "six.json": profile,
    });
    expect([status, complaints]).toEqual([1, [expect.stringMatching(/would take too long; ease one of them/)]]);
    expect(performance.now() - began).toBeLessThan(2000);
  });
});

test("the help names the exit statuses", async () => {
  const { out } = await run(["--help"]);
  for (const status of ["0 done", "1 some", "2 the command", "3 something"]) expect(out).toContain(status);
});
