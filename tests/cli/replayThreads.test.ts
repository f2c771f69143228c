import { spawn, spawnSync } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Worker } from "node:worker_threads";
import { build } from "esbuild";
import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, test, vi } from "vitest";
import { batchesOf, linesOf } from "../../src/cli/lineSplitter";
import { type BatchResult, replayLine } from "../../src/cli/replayBatch";
import { MOST_THREADS, ReplayCrew } from "../../src/cli/replayCrew";
import { variedAttempts } from "../support/variedAttempts";

const ROOT = join(import.meta.dirname, "../..");
const nested = "[".repeat(200);
/** Attempts of every lock, and lines that nobody means well with. */
const LINES = [
  ...variedAttempts(300, 1),
  ...["", "  ", "\uFEFF{}", nested, '{"profile":"größer"', "null", "7", '{"positions":[1,null]}', '{"positions":[]}'],
  ...variedAttempts(300, 2),
];
const TEXT = LINES.map((line, k) => (k % 3 === 0 ? `${line}\r\n` : `${line}\n`)).join("");
/** Line by line, by the plain function. */
const plain = (lines: readonly string[]) =>
  lines
    .flatMap((line, k) => (line.trim() === "" ? [] : [`${JSON.stringify(replayLine(line, k + 1).written)}\n`]))
    .join("");
const PLAIN = plain(LINES);

async function* inPieces(text: string, size: number) {
  const bytes = Buffer.from(text);
  for (let at = 0; at < bytes.length; at += size) yield bytes.subarray(at, at + size);
}

async function replayed(crew: ReplayCrew, size: number, text = TEXT): Promise<readonly BatchResult[]> {
  const results: Promise<BatchResult>[] = [];
  for await (const batch of batchesOf(inPieces(text, size))) results.push(crew.replay(batch));
  return Promise.all(results);
}

const textOf = (results: readonly BatchResult[]) => Buffer.concat(results.map(({ text }) => text)).toString();
const badIn = (results: readonly BatchResult[]) => results.reduce((sum, { badLines }) => sum + badLines, 0);

describe("threads give, byte for byte, what the plain function gives", () => {
  test.each([1000, 5000, 40_000, 10_000_000])("one thread, in pieces of %i characters", async (size) => {
    const results = await replayed(new ReplayCrew(1), size);
    expect(textOf(results)).toBe(PLAIN);
    expect(badIn(results)).toBe(PLAIN.split('{"error"').length - 1);
    expect(Math.max(...results.map(({ status }) => status))).toBe(1);
  });

  test.each([1000, 5000, 40_000])("three threads, in pieces of %i characters", async (size) => {
    const sent = vi.spyOn(Worker.prototype, "postMessage");
    const crew = new ReplayCrew(3);
    try {
      await crew.start();
      expect(textOf(await replayed(crew, size))).toBe(PLAIN);
      expect(sent.mock.calls.length).toBeGreaterThan(1);
    } finally {
      await crew.dismiss();
    }
  });
});

describe("any input", () => {
  const good = fc.constantFrom(...LINES);
  const bad = fc.tuple(good, fc.nat(), fc.string({ unit: "grapheme", maxLength: 3 })).map(([line, at, put]) => {
    const cut = at % (line.length + 1);
    return line.slice(0, cut) + put.replaceAll("\n", "") + line.slice(cut + 1);
  });
  const lines = fc.array(fc.oneof(good, bad, fc.constantFrom("", " ", "größer", "7")), { maxLength: 40 });
  const lineEnd = fc.constantFrom("\n", "\r\n");
  let two: ReplayCrew;
  beforeAll(async () => {
    two = new ReplayCrew(2);
    await two.start();
  });
  afterAll(() => two.dismiss());

  test("in any pieces, with either line end and with or without the last, comes out of two threads as of one", async () => {
    await fc.assert(
      fc.asyncProperty(
        lines,
        lineEnd,
        fc.boolean(),
        fc.integer({ min: 1, max: 9000 }),
        async (all, end, isEnded, size) => {
          const text = all.join(end) + (isEnded ? end : "");
          const [one, other] = [await replayed(new ReplayCrew(1), size, text), await replayed(two, size, text)];
          expect(textOf(one)).toBe(plain(all));
          expect(other.map(({ badLines, status }) => ({ badLines, status }))).toEqual(
            one.map(({ badLines, status }) => ({ badLines, status })),
          );
          expect(textOf(other)).toBe(textOf(one));
        },
      ),
      { numRuns: 100 },
    );
  });
});

test("a thread that ends by itself is an error of the batches it had and of all that follow", async () => {
  const crew = new ReplayCrew(2);
  const batch = () => ({ firstLine: 1, count: 1, bytes: new TextEncoder().encode("{}") });
  try {
    await crew.start();
    vi.spyOn(Worker.prototype, "postMessage").mockImplementationOnce(function (this: Worker) {
      void this.terminate();
    });
    await expect(crew.replay(batch())).rejects.toThrow("a thread ended");
    await expect(crew.replay(batch())).rejects.toThrow("a thread ended");
  } finally {
    await crew.dismiss();
  }
});

vi.mock("esbuild", async (original) => {
  const esbuild = await original<typeof import("esbuild")>();
  return { ...esbuild, build: vi.fn(esbuild.build) };
});

test("where no thread can be started, this one does it all", async () => {
  vi.mocked(build).mockRejectedValueOnce(new Error("no room for another process"));
  const crew = new ReplayCrew(3);
  await crew.start();
  expect(textOf(await replayed(crew, 5000))).toBe(PLAIN);
  await crew.dismiss();
});

describe("batches", () => {
  test("have the lines of the input and their numbers, however it comes in pieces", async () => {
    const line = fc.string({ unit: fc.constantFrom("a", "b", "\r"), maxLength: 8 });
    await fc.assert(
      fc.asyncProperty(fc.array(line), fc.integer({ min: 1, max: 12 }), async (lines, size) => {
        const text = lines.map((one) => `${one}\n`).join("");
        const cut: (string | null)[] = [];
        for await (const one of linesOf(inPieces(text, size), 5)) cut.push(one);
        expect(cut).toEqual(lines.map((one) => (one.length > 5 ? null : one.replace(/\r$/, ""))));
        let next = 1;
        for await (const { firstLine, count } of batchesOf(inPieces(text, size), 5)) {
          expect(firstLine).toBe(next);
          next += count;
        }
        expect(next).toBe(lines.length + 1);
      }),
    );
  });
});

describe("the real command line", () => {
  let folder = "";
  let file = "";
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), "gatefall-"));
    file = join(folder, "long.jsonl");
    // Long enough for other threads to be started.
    writeFileSync(file, TEXT.repeat(20));
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  const gatefall = (args: string) =>
    spawnSync("/bin/sh", ["-c", `node --import tsx src/cli/main.ts ${args}`], {
      cwd: ROOT,
      encoding: "utf8",
      maxBuffer: 1e9,
    });

  test("a long file comes out the same from one thread and from as many as there may be, and nothing else is said", () => {
    const one = gatefall(`replay --threads 1 "${file}"`);
    const all = gatefall(`replay --threads ${MOST_THREADS} "${file}"`);
    expect([one.status, one.stderr, all.status, all.stderr]).toEqual([1, "", 1, ""]);
    expect(one.stdout.length).toBeGreaterThan(20 * 600);
    expect(all.stdout === one.stdout).toBe(true);
  });

  test("a reader that has seen enough of a long file is no failure", () => {
    const { stdout, stderr } = gatefall(`replay --threads 3 "${file}" | head -1`);
    expect([stdout.trimEnd().split("\n").length, stderr]).toEqual([1, ""]);
  });

  test("threads that make no sense get status 2 and a sentence", () => {
    const { status, stderr } = gatefall(`replay --threads 0 "${file}"`);
    expect([status, stderr]).toEqual([2, expect.stringMatching(/--threads must be a whole number from 1 to 8/)]);
  });

  test("a slow input is answered line by line", async () => {
    const child = spawn(process.execPath, ["--import", "tsx", "src/cli/main.ts", "replay", "-"], { cwd: ROOT });
    child.stdout.setEncoding("utf8");
    for (const line of [LINES[0], LINES[1]]) {
      child.stdin.write(`${line}\n`);
      expect((await once(child.stdout, "data"))[0]).toMatch(/^\{"opened".*\n$/);
    }
    child.stdin.end();
    expect((await once(child, "exit"))[0]).toBe(0);
  });
});
