import { createRequire } from "node:module";
import { setImmediate as otherWork } from "node:timers/promises";
import { fileURLToPath } from "node:url";
import { Worker } from "node:worker_threads";
import type { LineBatch } from "./lineSplitter";
import { type BatchResult, replayBatch } from "./replayBatch";

/** What a worker says once it can be sent batches. */
export const READY = "ready";

/** Batches that a worker has at a time: one in hand, and one that waits, so that it is never idle. */
const MOST_SENT = 2;
/** Characters after which more threads are worth their start: some 0.3 s of work for one. */
const WORTH_A_START = 8 * 1024 * 1024;

/**
 * What a worker runs. TypeScript has to be read there as well, and `--import tsx` has no effect in a worker of Node 20; so
 * the loader is asked for by name. It is found from here, wherever the command is run.
 */
const LOADER = createRequire(import.meta.url).resolve("tsx/cjs/api");
const ENTRY = fileURLToPath(new URL("./replayWorker.ts", import.meta.url));
const START = `require(${JSON.stringify(LOADER)}).require(${JSON.stringify(ENTRY)}, ${JSON.stringify(ENTRY)})`;

interface Waiting {
  readonly resolve: (result: BatchResult) => void;
  readonly reject: (error: unknown) => void;
}

/** A thread that replays batches, in the order in which it is sent them. */
class Hand {
  /** Kept once it can be sent batches; broken where it goes wrong before. */
  readonly ready: Promise<void>;
  private readonly worker = new Worker(START, { eval: true, execArgv: [] });
  private readonly sent: Waiting[] = [];
  private isReady = false;

  constructor() {
    this.ready = new Promise((resolve, reject) => {
      this.worker.on("message", (message: BatchResult | typeof READY) => {
        if (message !== READY) this.sent.shift()?.resolve(message);
        else {
          this.isReady = true;
          resolve();
        }
      });
      this.worker.on("error", (error) => {
        this.isReady = false;
        reject(error);
        for (const waiting of this.sent.splice(0)) waiting.reject(error);
      });
    });
  }

  get isFree(): boolean {
    return this.isReady && this.sent.length < MOST_SENT;
  }

  replay(batch: LineBatch): Promise<BatchResult> {
    return new Promise((resolve, reject) => {
      this.sent.push({ resolve, reject });
      this.worker.postMessage(batch);
    });
  }

  async dismiss(): Promise<void> {
    await this.worker.terminate();
  }
}

/**
 * Replays batches on as many threads as it is given. This thread is one of them: it takes what the others have no room for,
 * and everything until they are ready. They are started only where the input is long enough to be worth it.
 */
export class ReplayCrew {
  private readonly threads: number;
  private readonly worthAStart: number;
  private hands: readonly Hand[] = [];
  private characters = 0;
  private failure: unknown;

  /**
   * @param threads - 1 for this thread alone
   * @param worthAStart - characters of input after which the others are started
   */
  constructor(threads: number, worthAStart: number = WORTH_A_START) {
    this.threads = threads;
    this.worthAStart = worthAStart;
  }

  /** How many batches may be under way beside the one in hand, so that memory is bounded and every thread has work. */
  get mostAhead(): number {
    return this.hands.length * MOST_SENT;
  }

  /** What a batch comes to. @throws whatever another thread went wrong with */
  async replay(batch: LineBatch): Promise<BatchResult> {
    if (this.failure !== undefined) throw this.failure;
    this.characters += batch.text?.length ?? 0;
    if (this.characters > this.worthAStart && this.hands.length < this.threads - 1) void this.start();
    const free = this.hands.find(({ isFree }) => isFree);
    if (free !== undefined) return free.replay(batch);
    const result = replayBatch(batch);
    // Lets the answers of the others in.
    await otherWork();
    return result;
  }

  /** Starts the other threads. @returns when all of them are ready, or one has gone wrong */
  async start(): Promise<void> {
    this.hands = Array.from({ length: this.threads - 1 }, () => new Hand());
    try {
      await Promise.all(this.hands.map(({ ready }) => ready));
    } catch (error) {
      this.failure = error;
    }
  }

  /** Ends the other threads. */
  async dismiss(): Promise<void> {
    await Promise.all(this.hands.map((hand) => hand.dismiss()));
  }
}
