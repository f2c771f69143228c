import { LockError } from "../lock/lockError";
import { parseAttemptLine } from "../trace/recordedAttempt";
import { type Replayed, replay, resultOf } from "../trace/replay";
import { TraceError } from "../trace/traceError";
import type { Command } from "./command";
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

const LINES_BETWEEN_PROGRESS = 5000;

/** `gatefall replay FILE` */
export const replayCommand: Command = {
  name: "replay",
  summary: "replay recorded attempts and tell what came of them",
  usage: `gatefall replay FILE      (FILE "-" reads standard input)

FILE holds JSON Lines, one recorded attempt a line:
  {"profile": "three-wheel", "combination": [38,71,26], "positions": [0,338,71,226,90], "times_ms": [0,9000,16000,21000,24000]}
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
    let lineNumber = 0;
    let badLines = 0;
    for await (const line of terminal.lines(file)) {
      lineNumber += 1;
      if (line.trim() === "") continue;
      const result = replayLine(line, lineNumber);
      if ("error" in result) badLines += 1;
      await terminal.write(`${JSON.stringify(result)}\n`);
      if (lineNumber % LINES_BETWEEN_PROGRESS === 0) terminal.progress(`${lineNumber} lines replayed, ${badLines} bad`);
    }
    return badLines > 0 ? 1 : 0;
  },
};
