import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { mkdir, mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createInterface, type Interface } from "node:readline";
import { buildSync } from "esbuild";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { lockFolder } from "../../src/server/database/folderLock";
import { openEmbedded } from "../../src/server/database/openDatabase";

/** A process of its own that takes a folder when it is told to. */
class Taker {
  readonly process: ChildProcess;
  private readonly lines: Interface;

  constructor(script: string, folder: string) {
    this.process = spawn(process.execPath, [script, folder], {
      stdio: ["pipe", "pipe", "inherit"],
    });
    if (this.process.stdout === null) throw new Error("no output");
    this.lines = createInterface({ input: this.process.stdout });
  }

  async say(word: "take" | "release"): Promise<string> {
    const answer = once(this.lines, "line");
    this.process.stdin?.write(`${word}\n`);
    const [line] = await answer;
    return String(line);
  }

  async kill(): Promise<void> {
    const gone = once(this.process, "exit");
    this.process.kill("SIGKILL");
    await gone;
  }
}

describe("a data folder", () => {
  let built = "";
  let script = "";
  let folder = "";
  let takers: Taker[] = [];
  beforeAll(async () => {
    built = await mkdtemp(join(tmpdir(), "gatefall-taker-"));
    script = join(built, "taker.mjs");
    // Plain code starts at once, where ten of them are started.
    const entry = join(import.meta.dirname, "support/lockTaker.ts");
    buildSync({
      entryPoints: [entry],
      bundle: true,
      platform: "node",
      format: "esm",
      target: "node20",
      outfile: script,
    });
  });
  afterAll(() => rm(built, { recursive: true, force: true }));
  beforeEach(async () => {
    folder = await mkdtemp(join(tmpdir(), "gatefall-lock-"));
    takers = Array.from({ length: 4 }, () => new Taker(script, folder));
  });
  afterEach(async () => {
    for (const taker of takers) taker.process.kill("SIGKILL");
    await rm(folder, { recursive: true, force: true });
  });

  test("whoever starts at once, one process has it, also after the one before was killed or gave it back", async () => {
    for (let round = 0; round < 12; round++) {
      const answers = await Promise.all(takers.map((taker) => taker.say("take")));
      expect(answers.toSorted(), `round ${round}`).toEqual(["folder-in-use", "folder-in-use", "folder-in-use", "held"]);
      const holding = answers.indexOf("held");
      if (round % 3 === 2) {
        expect(await takers[holding]?.say("release")).toBe("released");
        continue;
      }
      await takers[holding]?.kill();
      takers[holding] = new Taker(script, folder);
    }
  });

  test("a server that is there already keeps another process out", async () => {
    const [first] = takers;
    expect(await first?.say("take")).toBe("held");
    await expect(openEmbedded(folder)).rejects.toMatchObject({
      code: "folder-in-use",
      problem: { values: { folder, process: first?.process.pid } },
    });
    await first?.kill();
    const lock = await lockFolder(folder);
    expect(lock.wasLeft, "the one before was killed").toBe(true);
    expect(await takers[1]?.say("take")).toBe("folder-in-use");
    await lock.release();
    expect(await takers[1]?.say("take")).toBe("held");
  });

  test.each([
    { what: "a process that has died", lock: "4194303 17\n" },
    // Its number was given to another since: this one, which began at another time.
    { what: "a process whose number another has now", lock: `${process.pid} 17\n` },
    { what: "a server that was killed while it gave the folder back", lock: "" },
    { what: "nobody we know", lock: "x\n" },
  ])("a lock of $what keeps nobody out", async ({ lock }) => {
    await mkdir(join(folder, "in-use"));
    await writeFile(join(folder, "in-use/7"), lock);
    // A starter that was killed before it had its lock leaves the text of it.
    await writeFile(join(folder, "in-use/12-3.own"), `${process.pid} 17\n`);
    const taken = await lockFolder(folder);
    expect(taken.wasLeft).toBe(true);
    await expect(lockFolder(folder)).rejects.toMatchObject({ code: "folder-in-use" });
    await taken.release();
  });

  test("a folder is left where the server before was killed, and not where it gave it back or there was none", async () => {
    const first = await lockFolder(folder);
    await first.release();
    const second = await lockFolder(folder);
    await second.release();
    expect([first.wasLeft, second.wasLeft]).toEqual([false, false]);
    expect(await takers[0]?.say("take")).toBe("held");
    await takers[0]?.kill();
    const said: object[] = [];
    const database = await openEmbedded(folder, (opening) => said.push(opening));
    expect(said).toEqual([{ wasKilled: true }]);
    await database.close();
  });
});
