import { describe, expect, test } from "vitest";
import { LogbookReader, type ReaderWorker } from "../../../../src/app/keeping/reader/logbookReader";
import { type ReaderMessage, readAndTell } from "../../../../src/app/keeping/reader/readerMessages";
import { readingWords, readShare } from "../../../../src/app/keeping/reader/readingWords";
import { type ReadingProgress, writeLogbookFile } from "../../../../src/records/file/logbookFile";
import { FileError, fileProblem } from "../../../../src/records/fileWords";
import { anAttempt, aPerson, contents, NOON } from "../../../support/logbookRecords";

const shown = Array.from({ length: 250 }, (_, i) => anAttempt(`a${i}`));
const logbook = contents([aPerson("tavro")], shown);
const file = (text: string) => new File([text], "tavro.json");
const whole = file(writeLogbookFile(logbook, NOON));

/** A worker in the same thread. */
class NearWorker implements ReaderWorker {
  onmessage: ReaderWorker["onmessage"] = null;
  onerror: ReaderWorker["onerror"] = null;
  isGone = false;

  postMessage(data: unknown): void {
    readAndTell(data as Blob, (message) => this.say(message));
  }

  terminate(): void {
    this.isGone = true;
  }

  private say(data: ReaderMessage): void {
    const heard = this.onmessage as ((event: { data: ReaderMessage }) => void) | null;
    if (!this.isGone) heard?.({ data });
  }
}

/** A worker that never answers. */
class SilentWorker extends NearWorker {
  override postMessage(): void {}
}

describe("a file read beside the page", () => {
  test("comes whole, and how far it is was told on the way", async () => {
    const told: ReadingProgress[] = [];
    const read = await new LogbookReader(() => new NearWorker()).read(whole, (progress) => told.push(progress));
    expect(read).toEqual({ ...logbook, remarks: [] });
    expect(told).toEqual([
      { stage: "opening" },
      { stage: "checking" },
      ...[0, 100, 200].map((done) => ({ stage: "motions", done, total: 250 })),
    ]);
  });

  test("is refused with the reader's own sentence, and the next one is read by the same worker", async () => {
    const started: NearWorker[] = [];
    const reader = new LogbookReader(() => {
      const worker = new NearWorker();
      started.push(worker);
      return worker;
    });
    await expect(reader.read(file("{"), () => {})).rejects.toThrow(/not one whole JSON value/);
    expect(await reader.read(whole, () => {})).toEqual({ ...logbook, remarks: [] });
    expect(started).toHaveLength(1);
    reader.close();
    expect(started[0]?.isGone).toBe(true);
  });

  test("can be stopped, and a later one still be read", async () => {
    const workers = [new SilentWorker(), new NearWorker()];
    const reader = new LogbookReader(() => workers.shift() ?? new NearWorker());
    const first = workers[0];
    const reading = reader.read(whole, () => {});
    reader.stop();
    expect(await reading).toBeNull();
    expect(first?.isGone).toBe(true);
    expect(await reader.read(whole, () => {})).toEqual({ ...logbook, remarks: [] });
  });

  test("is refused in words where no worker starts", async () => {
    const reader = new LogbookReader(() => {
      throw new Error("denied");
    });
    await expect(reader.read(whole, () => {})).rejects.toThrow(FileError);
    const failing = new SilentWorker();
    const reading = new LogbookReader(() => failing).read(whole, () => {});
    (failing.onerror as (() => void) | null)?.();
    await expect(reading).rejects.toThrow(/reload the page/);
  });

  test("that was moved since is told so, in words of a person", async () => {
    const gone = { text: () => Promise.reject(new DOMException("NotReadableError")) } as unknown as Blob;
    const told: ReaderMessage[] = [];
    await readAndTell(gone, (message) => told.push(message));
    expect(told).toEqual([{ kind: "bad", problem: fileProblem("file-moved", []) }]);
  });
});

test("reading is told in a sentence that changes with the stage alone", () => {
  const at = { name: "a.json", place: 2, files: 5 };
  const motions = (done: number) => ({ ...at, progress: { stage: "motions" as const, done, total: 200 } });
  expect(readingWords({ ...at, progress: null })).toBe("Reading a.json, file 2 of 5: opening the file.");
  expect(readingWords({ ...at, files: 1, progress: { stage: "checking" } })).toBe(
    "Reading a.json: checking the records.",
  );
  expect(readingWords(motions(0))).toBe(readingWords(motions(100)));
  expect(readShare(motions(50))).toBe(0.25);
  expect(readShare({ progress: { stage: "opening" } })).toBeNull();
});
