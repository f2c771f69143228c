import { LockError } from "../lock/lockError";
import { parseAttemptLine } from "../trace/recordedAttempt";
import { type Replayed, replay, resultOf } from "../trace/replay";
import { TraceError } from "../trace/traceError";
import type { Command, Terminal } from "./command";
import { UsageError } from "./usageError";

/**
 * Replays one line. A bad line becomes an `error`, so that the lines after it are still replayed.
 *
 * @param lineNumber - counted from 1, named in the error
 */
export function replayLine(line: string, lineNumber: number): Replayed | { readonly error: string } {
  try {
    return resultOf(replay(parseAttemptLine(line)));
  } catch (error) {
    if (error instanceof TraceError || error instanceof LockError)
      return { error: `line ${lineNumber}: ${error.message}` };
    throw error;
  }
}

const BYTE_ORDER_MARK = /^\uFEFF/;
const LINES_BETWEEN_PROGRESS = 5000;

/** Replays line after line, and counts the bad ones. Blank lines are passed over, but counted as lines. */
async function replayAll(lines: AsyncIterable<string>, terminal: Terminal): Promise<number> {
  let lineNumber = 0;
  let badLines = 0;
  for await (const line of lines) {
    lineNumber += 1;
    if (lineNumber % LINES_BETWEEN_PROGRESS === 0) terminal.progress(`${lineNumber} lines replayed, ${badLines} bad`);
    if (line.trim() === "") continue;
    const result = replayLine(line.replace(BYTE_ORDER_MARK, ""), lineNumber);
    if ("error" in result) badLines += 1;
    await terminal.write(`${JSON.stringify(result)}\n`);
  }
  return badLines;
}

/** `gatefall replay FILE` */
export const replayCommand: Command = {
  name: "replay",
  summary: "replay recorded attempts and tell what came of them",
  usage: `gatefall replay FILE      (FILE "-" reads standard input)

FILE holds JSON Lines, one recorded attempt a line:
  {"profile": "three-wheel", "combination": [38,71,26], "positions": [0,338,71,226,190], "times_ms": [0,9000,16000,21000,24000]}
profile     the id of a profile (see "gatefall profiles"), or a whole profile
positions   where the hand held the dial, unwrapped graduations, left positive
times_ms    optional, one a position; coming back onto a number and pauses need it
start       optional, {"dial": 12.5, "slack": [0,0,0]}: where the lock stood before the first move

Each line gets one line of JSON: opened, dial (the reading), stands and errors of the wheels, runs, faults.
Arrivals and stop error of a run are null where no number applies to it. Blank lines are passed over.
A line that cannot be read gets {"error": "line N: ..."}; the rest goes on, and the exit status is 1.`,
  options: {},
  async run(files, _options, terminal) {
    const [file, ...more] = files;
    if (file === undefined || more.length > 0) throw new UsageError('replay takes one file, or "-" for standard input');
    const badLines = await replayAll(terminal.lines(file), terminal);
    return badLines > 0 ? 1 : 0;
  },
};
