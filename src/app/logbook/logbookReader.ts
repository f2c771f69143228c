import type { LogbookContents } from "../../logbook/logbookContents";
import { LogbookError } from "../../logbook/logbookError";
import type { ReadingProgress } from "../../logbook/logbookFile";
import type { ReplayedLogbook } from "../../logbook/replayedAttempts";
import type { ReaderMessage, ReaderOrder } from "./readerMessages";

/** What of a web worker is used. */
export type ReaderWorker = Pick<Worker, "postMessage" | "terminate" | "onmessage" | "onerror">;

const newWorker = (): ReaderWorker =>
  new Worker(new URL("./logbookReader.worker.ts", import.meta.url), { type: "module" });

const NOT_STARTED = "This browser could not read the file beside the page: reload the page and try again.";

/** Reads logbook files one after another in a web worker, so that a large one never holds up the page. */
export class LogbookReader {
  private readonly startWorker: () => ReaderWorker;
  private worker: ReaderWorker | null = null;
  private stopReading: (() => void) | null = null;

  /** @param startWorker - starts what reads; a browser's worker if left out */
  constructor(startWorker: () => ReaderWorker = newWorker) {
    this.startWorker = startWorker;
  }

  /**
   * Reads one file; the next one is to wait for its end.
   *
   * @param tell - hears how far it is
   * @returns null where reading was stopped
   * @throws {LogbookError} `bad-file` with a sentence for a person
   */
  async read(file: Blob, tell: (progress: ReadingProgress) => void): Promise<LogbookContents | null> {
    return (await this.order(file, tell))?.contents ?? null;
  }

  /**
   * Reads one file and replays every attempt in it; those that their recordings do not bear out are left out.
   *
   * @returns null where reading was stopped
   * @throws {LogbookError} as `read`
   */
  readReplayed(file: Blob, tell: (progress: ReadingProgress) => void): Promise<ReplayedLogbook | null> {
    return this.order({ replayed: file }, tell);
  }

  private order(order: ReaderOrder, tell: (progress: ReadingProgress) => void): Promise<ReplayedLogbook | null> {
    return new Promise((resolve, reject) => {
      const refuse = (sentence: string) => reject(new LogbookError("bad-file", sentence));
      this.stopReading = () => resolve(null);
      try {
        this.worker ??= this.startWorker();
      } catch {
        return refuse(NOT_STARTED);
      }
      this.worker.onmessage = ({ data }: MessageEvent<ReaderMessage>) => {
        if (data.kind === "progress") tell(data.progress);
        else if (data.kind === "read") resolve(data);
        else refuse(data.sentence);
      };
      this.worker.onerror = () => {
        this.close();
        refuse(NOT_STARTED);
      };
      this.worker.postMessage(order);
    });
  }

  /** Stops what is being read and lets the worker go; a later file starts another. */
  stop(): void {
    this.close();
    this.stopReading?.();
  }

  /** Lets the worker go once nothing is left to read. */
  close(): void {
    this.worker?.terminate();
    this.worker = null;
  }
}
