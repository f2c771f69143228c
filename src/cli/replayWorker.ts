import { parentPort } from "node:worker_threads";
import type { LineBatch } from "./lineSplitter";
import { replayBatch } from "./replayBatch";

/* Runs in a thread of its own: replays the batches that it is sent, in order, and answers each with its result. */

parentPort?.on("message", (batch: LineBatch) => {
  const result = replayBatch(batch);
  parentPort?.postMessage(result, [result.text.buffer]);
});
