import { LockError } from "../lock/lockError";
import { parseAttemptLine } from "../trace/recordedAttempt";
import { type Replayed, replay, resultOf } from "../trace/replay";
import { TraceError } from "../trace/traceError";
import type { Command, Terminal } from "./command";
import { INTERNAL_ERROR, internalWords } from "./exitStatus";
import { UsageError } from "./usageError";

/** What a line came to: the object that is written, and the exit status that it asks for. */
interface LineResult {
  readonly written: Replayed | { readonly error: string };
  readonly status: number;
}

/**
 * Replays one line. Whatever is wrong with it becomes an `error`, so that the lines after it are still replayed.
 *
 * @param line - null for one over the limit of length
 * @param lineNumber - counted from 1, named in the error
 */
export function replayLine(line: string | null, lineNumber: number): LineResult {
  if (line === null) return badLine(lineNumber, "this line is longer than 16 MB; split the motion", 1);
  try {
    return { written: resultOf(replay(parseAttemptLine(line.replace(BYTE_ORDER_MARK, "")))), status: 0 };
  } catch (error) {
    if (error instanceof TraceError || error instanceof LockError) return badLine(lineNumber, error.message, 1);
    return badLine(lineNumber, internalWords(error), INTERNAL_ERROR);
  }
}

const badLine = (lineNumber: number, why: string, status: number): LineResult => ({
  written: { error: `line ${lineNumber}: ${why}` },
  status,
});

const BYTE_ORDER_MARK = /^\uFEFF/;
const LINES_BETWEEN_PROGRESS = 5000;

/** Replays line after line. Blank lines are passed over, but counted as lines. @returns the exit status */
async function replayAll(lines: AsyncIterable<string | null>, terminal: Terminal): Promise<number> {
  let lineNumber = 0;
  let badLines = 0;
  let worst = 0;
  for await (const line of lines) {
    lineNumber += 1;
    if (lineNumber % LINES_BETWEEN_PROGRESS === 0) terminal.progress(`${lineNumber} lines replayed, ${badLines} bad`);
    if (line?.trim() === "") continue;
    const { written, status } = replayLine(line, lineNumber);
    badLines += Math.min(1, status);
    worst = Math.max(worst, status);
    await terminal.write(`${JSON.stringify(written)}\n`);
  }
  return worst;
}

/** `gatefall replay FILE` */
export const replayCommand: Command = {
  name: "replay",
  summary: "replay recorded attempts and say whether each opened, and why",
  usage: `gatefall replay FILE      (FILE "-" reads standard input)

FILE holds JSON Lines, one recorded attempt a line:
  {"profile": "three-wheel", "combination": [38,71,26], "positions": [0,338,71,226,190], "times_ms": [0,9000,16000,21000,24000]}
profile     the id of a profile (see "gatefall profiles"), or a whole profile
positions   where the hand held the dial, unwrapped graduations, left positive
times_ms    optional, one a position; coming back onto a number and pauses need it
start       optional, {"dial": 12.5, "slack": [0,0,0]}: state of the lock before the first move

Each line gets one line of JSON: opened, dial (the reading), stands and errors of the wheels, runs, faults.
Arrivals and stop error of a run are null where no number applies to it. Blank lines are skipped.
A line that cannot be read gets {"error": "line N: ..."}; the rest goes on, and the exit status is 1
(3 where the program itself went wrong on a line). A line of more than 16 MB, or nested more than 100 deep, is bad.`,
  options: {},
  async run(files, _options, terminal) {
    const [file, ...more] = files;
    if (file === undefined || more.length > 0) throw new UsageError('replay takes one file, or "-" for standard input');
    return replayAll(terminal.lines(file), terminal);
  },
};
