import { LockError } from "../lock/lockError";
import { parseAttemptLine } from "../trace/recordedAttempt";
import { type Replayed, replay, resultOf } from "../trace/replay";
import { TraceError } from "../trace/traceError";
import { INTERNAL_ERROR, internalWords } from "./exitStatus";
import { type LineBatch, linesIn } from "./lineSplitter";

/** What a line came to: the object that is written, and the exit status that it asks for. */
interface LineResult {
  readonly written: Replayed | { readonly error: string };
  readonly status: number;
}

/** What a batch of lines came to. */
export interface BatchResult {
  /** UTF-8: a line of JSON for each line, each with its end. */
  readonly text: Uint8Array<ArrayBuffer>;
  readonly badLines: number;
  /** The highest exit status that a line of it asks for. */
  readonly status: number;
}

const BYTE_ORDER_MARK = "\uFEFF";

/**
 * Replays one line. Whatever is wrong with it becomes an `error`, so that the lines after it are still replayed.
 *
 * @param line - null for one over the limit of length
 * @param lineNumber - counted from 1, named in the error
 */
export function replayLine(line: string | null, lineNumber: number): LineResult {
  if (line === null) return badLine(lineNumber, "this line is longer than 16 MB; split the motion", 1);
  try {
    const json = line.startsWith(BYTE_ORDER_MARK) ? line.slice(1) : line;
    return { written: resultOf(replay(parseAttemptLine(json))), status: 0 };
  } catch (error) {
    if (error instanceof TraceError || error instanceof LockError) return badLine(lineNumber, error.message, 1);
    return badLine(lineNumber, internalWords(error), INTERNAL_ERROR);
  }
}

const badLine = (lineNumber: number, why: string, status: number): LineResult => ({
  written: { error: `line ${lineNumber}: ${why}` },
  status,
});

/** Replays the lines of a batch, one after another. Blank lines are passed over, but counted as lines. */
export function replayBatch(batch: LineBatch): BatchResult {
  let length = 0;
  let badLines = 0;
  let worst = 0;
  let lineNumber = batch.firstLine - 1;
  for (const line of linesIn(batch)) {
    lineNumber += 1;
    if (line?.trim() === "") continue;
    const { written, status } = replayLine(line, lineNumber);
    if (status > 0) badLines += 1;
    worst = Math.max(worst, status);
    length += encode(JSON.stringify(written), length);
  }
  return { text: new Uint8Array(encoded.subarray(0, length)), badLines, status: worst };
}

/** Where the results of a batch are encoded. Line by line into the same memory takes a tenth of encoding all at once. */
let encoded = Buffer.alloc(1024 * 1024);
const LINE_END = 0x0a;
/** UTF-8 bytes that a character of a string takes at most. */
const MOST_BYTES = 3;

/** Encodes a line with its end at a place in `encoded`, which grows where it has to. @returns how many bytes it takes */
function encode(line: string, at: number): number {
  const needed = at + MOST_BYTES * line.length + 1;
  if (needed > encoded.length) encoded = Buffer.concat([encoded], 2 * needed);
  const length = encoded.write(line, at);
  encoded[at + length] = LINE_END;
  return length + 1;
}
