import { availableParallelism } from "node:os";
import { setImmediate as otherWork } from "node:timers/promises";
import { fileURLToPath } from "node:url";
import { Worker } from "node:worker_threads";
import { build } from "esbuild";
import type { LineBatch } from "./lineSplitter";
import { type BatchResult, replayBatch } from "./replayBatch";

/** Batches that a thread has at a time: one in hand, and others that wait, so that it is never idle. */
const MOST_SENT = 6;
/** More threads than this wait for the one that reads and writes. */
export const MOST_THREADS = 8;
/** Bytes after which other threads are worth their start: some 0.4 s of work, while this thread is not warm yet. */
const WORTH_A_START = 4 * 1024 * 1024;

/** Threads that replay where nobody says how many: one for each processor core. */
export const usualThreads = (): number => Math.min(MOST_THREADS, availableParallelism());

const ENTRY = fileURLToPath(new URL("./replayWorker.ts", import.meta.url));

/**
 * What the threads run, in one piece. They start sooner with it than with every file read for itself, and it goes without
 * what the command line's loader does to every function with a name.
 */
async function workerCode(): Promise<string> {
  const { outputFiles } = await build({
    entryPoints: [ENTRY],
    bundle: true,
    platform: "node",
    write: false,
    logLevel: "silent",
  });
  return outputFiles[0]?.text ?? "";
}

interface Waiting {
  readonly resolve: (result: BatchResult) => void;
  readonly reject: (error: unknown) => void;
}

/** A thread that replays batches, in the order in which it is sent them. */
class Hand {
  private readonly worker: Worker;
  private readonly sent: Waiting[] = [];
  private isDismissed = false;

  /** @param onLost - takes what a thread went wrong with, unless it was dismissed */
  constructor(code: string, onLost: (error: unknown) => void) {
    // A thread prints nothing. Left to itself, each would be listening to the output of the program.
    this.worker = new Worker(code, { eval: true, execArgv: [], stdout: true });
    const lose = (error: unknown) => {
      if (this.isDismissed) return;
      onLost(error);
      for (const waiting of this.sent.splice(0)) waiting.reject(error);
    };
    this.worker.on("message", (result: BatchResult) => this.sent.shift()?.resolve(result));
    this.worker.on("error", lose);
    this.worker.on("exit", (status) => lose(new Error(`a thread ended with status ${status}`)));
  }

  get load(): number {
    return this.sent.length;
  }

  replay(batch: LineBatch): Promise<BatchResult> {
    return new Promise((resolve, reject) => {
      this.sent.push({ resolve, reject });
      this.worker.postMessage(batch, batch.bytes === null ? [] : [batch.bytes.buffer]);
    });
  }

  async dismiss(): Promise<void> {
    this.isDismissed = true;
    await this.worker.terminate();
  }
}

/**
 * Replays batches on as many threads as it is given. With one, this thread does it. With more, this thread does it until
 * the input has shown to be long enough for others and they are there; from then on it only reads and writes.
 */
export class ReplayCrew {
  private readonly threads: number;
  private readonly worthAStart: number;
  private readonly hands: Hand[] = [];
  private begun: Promise<void> | undefined;
  private bytes = 0;
  private failure: unknown;

  /**
   * @param threads - 1 for this thread alone
   * @param worthAStart - bytes of input after which the others are started
   */
  constructor(threads: number, worthAStart: number = WORTH_A_START) {
    this.threads = threads;
    this.worthAStart = worthAStart;
  }

  /** How many batches may be under way beside the one in hand, so that memory is bounded and every thread has work. */
  get mostAhead(): number {
    return this.hands.length * MOST_SENT;
  }

  /** What a batch comes to; its bytes may be gone afterwards. @throws whatever another thread went wrong with */
  async replay(batch: LineBatch): Promise<BatchResult> {
    if (this.failure !== undefined) throw this.failure;
    this.bytes += batch.bytes?.length ?? 0;
    if (this.threads > 1 && this.bytes > this.worthAStart) void this.start();
    const [first, ...others] = this.hands;
    if (first !== undefined)
      return others.reduce((least, hand) => (hand.load < least.load ? hand : least), first).replay(batch);
    const result = replayBatch(batch);
    // Lets what starts the others go on.
    await otherWork();
    return result;
  }

  /** Starts the other threads, once: as many as can be had. @returns when batches can be sent to them */
  start(): Promise<void> {
    // With fewer of them, or none, the work is the same and takes longer.
    this.begun ??= workerCode()
      .then((code) => this.hire(code))
      .catch(() => undefined);
    return this.begun;
  }

  private hire(code: string): void {
    while (this.hands.length < this.threads) this.hands.push(new Hand(code, (error) => this.fail(error)));
  }

  private fail(error: unknown): void {
    this.failure ??= error;
  }

  /** Ends the other threads. */
  async dismiss(): Promise<void> {
    await this.begun;
    await Promise.all(this.hands.map((hand) => hand.dismiss()));
  }
}
