import type { ReadingProgress } from "../../../records/file/logbookFile";
import type { ReadLogbook } from "../../../records/file/logbookReading";
import type { ReplayedLogbook } from "../../../records/file/replayedAttempts";
import { FileError, fileProblem } from "../../../records/fileWords";
import type { Problem } from "../../../wording/problem";
import type { ReaderMessage, ReaderOrder } from "./readerMessages";

/** What of a web worker is used. */
export type ReaderWorker = Pick<Worker, "postMessage" | "terminate" | "onmessage" | "onerror">;

const newWorker = (): ReaderWorker =>
  new Worker(new URL("./logbookReader.worker.ts", import.meta.url), { type: "module" });

const NOT_STARTED = fileProblem("reader-not-started", []);

/** Attempts that came before the rest of their file. */
type AttemptsPart = Extract<ReaderMessage, { readonly kind: "attempts" }>;

function joined({ contents, leftOut }: ReplayedLogbook, parts: readonly AttemptsPart[]): ReplayedLogbook {
  const attempts = [...parts.flatMap((part) => part.attempts), ...contents.records.attempts];
  const traces = new Map([...parts.flatMap((part) => [...part.traces]), ...contents.traces]);
  return { contents: { records: { ...contents.records, attempts }, traces }, leftOut };
}

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
   * @throws {FileError} where it is none
   */
  async read(file: Blob, tell: (progress: ReadingProgress) => void): Promise<ReadLogbook | null> {
    const read = await this.order(file, tell);
    return read === null ? null : { ...read.contents, remarks: read.leftOut };
  }

  /**
   * Reads one file and replays every attempt in it; those that their recordings do not bear out are left out.
   *
   * @returns null where reading was stopped
   * @throws {FileError} as `read`
   */
  readReplayed(file: Blob, tell: (progress: ReadingProgress) => void): Promise<ReplayedLogbook | null> {
    return this.order({ replayed: file }, tell);
  }

  private order(order: ReaderOrder, tell: (progress: ReadingProgress) => void): Promise<ReplayedLogbook | null> {
    return new Promise((resolve, reject) => {
      const refuse = (problem: Problem) => reject(new FileError(problem));
      const parts: AttemptsPart[] = [];
      this.stopReading = () => resolve(null);
      try {
        this.worker ??= this.startWorker();
      } catch {
        return refuse(NOT_STARTED);
      }
      this.worker.onmessage = ({ data }: MessageEvent<ReaderMessage>) => {
        if (data.kind === "progress") tell(data.progress);
        else if (data.kind === "attempts") parts.push(data);
        else if (data.kind === "read") resolve(joined(data, parts));
        else refuse(data.problem);
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
