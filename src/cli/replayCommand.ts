import { batchesOf } from "./lineSplitter";
import { wholeOption } from "./numberOption";
import type { BatchResult } from "./replayBatch";
import { MOST_THREADS, ReplayCrew, usualThreads } from "./replayCrew";
import type { Command, Terminal } from "./terminal/command";
import { usageError } from "./terminal/usageError";

const LINES_BETWEEN_PROGRESS = 5000;

/** Writes results in the order of the input, and keeps count. */
class ResultWriter {
  /** Highest exit status that a line asked for. */
  status = 0;
  private readonly terminal: Terminal;
  private lines = 0;
  private badLines = 0;

  constructor(terminal: Terminal) {
    this.terminal = terminal;
  }

  async write(count: number, { text, badLines, status }: BatchResult): Promise<void> {
    const before = Math.floor(this.lines / LINES_BETWEEN_PROGRESS);
    this.lines += count;
    this.badLines += badLines;
    this.status = Math.max(this.status, status);
    const isStep = Math.floor(this.lines / LINES_BETWEEN_PROGRESS) > before;
    if (isStep) this.terminal.progress(`${this.lines} lines replayed, ${this.badLines} bad`);
    if (text.length > 0) await this.terminal.write(text);
  }
}

/** Replays a file, batch after batch. @returns the exit status */
async function replayAll(file: string, crew: ReplayCrew, terminal: Terminal): Promise<number> {
  const writer = new ResultWriter(terminal);
  const underWay: Promise<void>[] = [];
  let last: Promise<void> = Promise.resolve();
  for await (const batch of batchesOf(terminal.pieces(file))) {
    const replayed = crew.replay(batch);
    last = Promise.all([replayed, last]).then(([result]) => writer.write(batch.count, result));
    // What goes wrong is met where it is waited for; until then the input may be slow.
    last.catch(() => undefined);
    underWay.push(last);
    if (underWay.length > crew.mostAhead) await underWay.shift();
  }
  await last;
  return writer.status;
}

/** `gatefall replay FILE` */
export const replayCommand: Command = {
  usage: `gatefall replay FILE [--threads N]      (FILE "-" reads standard input)

FILE holds JSON Lines, one recorded attempt a line:
  {"profile": "three-wheel", "combination": [38,71,26], "positions": [0,338,71,226,190], "times_ms": [0,9000,16000,21000,24000]}
profile     the id of a profile (see "gatefall profiles"), or a whole profile
positions   where the hand held the dial, unwrapped graduations, left positive
times_ms    optional, one a position; coming back onto a number and pauses need it
start       optional, {"dial": 12.5, "slack": [0,0,0]}: state of the lock before the first move

Each line gets one line of JSON: opened, dial (the reading), stands and errors of the wheels, runs, faults.
Arrivals and stop error of a run are null where no number applies to it. Blank lines are skipped.
A line that cannot be read gets {"error": "line N: ..."}; the rest goes on, and the exit status is 1
(3 where the program itself went wrong on a line). A line of more than 16 MB, or nested more than 100 deep, is bad.
--threads   how many processor cores a long file is shared among, from 1 to ${MOST_THREADS}; one a core, if left out`,
  options: { threads: { type: "string" } },
  async run(files, options, terminal) {
    const [file, ...more] = files;
    if (file === undefined || more.length > 0) throw usageError("wants-file", [], { command: "replay" });
    const crew = new ReplayCrew(
      wholeOption(options, "threads", { least: 1, most: MOST_THREADS, otherwise: usualThreads() }),
    );
    try {
      return await replayAll(file, crew, terminal);
    } finally {
      await crew.dismiss();
    }
  },
};
