import type { Turn } from "../lock/dial";
import type { Interval } from "../statistics/interval";
import { ReadingsError } from "../zeroing/readingsError";
import { parseReadings } from "../zeroing/readingsFile";
import { type SideResult, type ZeroLimits, type ZeroResult, zeroResult } from "../zeroing/zeroResult";
import { lostMotionWords, verdictWords } from "../zeroing/zeroWords";
import type { Command, OptionValues, Terminal } from "./command";
import { numberOption } from "./numberOption";
import { UsageError } from "./usageError";

function limitsOf(options: OptionValues): ZeroLimits {
  const tolerance = numberOption(options, "tolerance", 0.5);
  const risk = numberOption(options, "risk", 0.05);
  if (!(tolerance > 0)) throw new UsageError(`--tolerance must be a number of graduations above 0, not ${tolerance}`);
  if (!(risk > 0 && risk < 0.5)) throw new UsageError(`--risk must be a number above 0 and below 0.5, not ${risk}`);
  return { tolerance, risk };
}

const pair = ({ low, high }: Interval) => [low, high] as const;

const asJson = ({ right, left, lostMotion }: ZeroResult) => ({
  right: { ...right, ci95: pair(right.ci95) },
  left: { ...left, ci95: pair(left.ci95) },
  lostMotion: { ...lostMotion, ci95: pair(lostMotion.ci95) },
});

const signed = (value: number) => value.toFixed(3).replace(/^-(0\.0+)$/, "$1");

const COLUMNS = ["", "n", "mean", "sd", "spread", "95 % interval of the mean", "conformance"];
const WIDTHS = [6, 5, 10, 10, 10, 27, 13];

const tableRow = (cells: readonly string[]) => cells.map((cell, k) => cell.padStart(WIDTHS[k] ?? 0)).join("");

const sideRow = (turn: Turn, { n, mean, sd, spread, ci95, conformance }: SideResult) =>
  tableRow([
    turn.padEnd(WIDTHS[0] ?? 0),
    String(n),
    signed(mean),
    signed(sd),
    signed(spread),
    `${signed(ci95.low)} to ${signed(ci95.high)}`,
    `${(100 * conformance).toFixed(1)} %`,
  ]);

const inWords = ({ right, left, lostMotion }: ZeroResult, limits: ZeroLimits) =>
  `Graduations, left positive; tolerance ${limits.tolerance}, risk of a wrong verdict ${Number((100 * limits.risk).toFixed(4))} %

${[tableRow(COLUMNS), sideRow("right", right), sideRow("left", left)].join("\n")}

${verdictWords("right", right, limits)}
${verdictWords("left", left, limits)}
${lostMotionWords(lostMotion)}
`;

async function readLines(file: string, terminal: Terminal): Promise<string[]> {
  const lines: string[] = [];
  for await (const line of terminal.lines(file)) lines.push(line);
  return lines;
}

/** `gatefall zero FILE` */
export const zeroCommand: Command = {
  name: "zero",
  summary: "tell how good a zero is from readings of both sides",
  usage: `gatefall zero FILE [--tolerance T] [--risk R] [--json]      (FILE "-" reads standard input)

FILE holds one reading a line, as JSON Lines or as comma-separated values with or without a header:
  {"direction": "right", "deviation": 0.2}
  right,0.2
direction   the way the dial was turned onto zero: right or left
deviation   how far off zero it read, graduations, left positive, at most half a turn of 100 (50)

For each side: number, mean, standard deviation, spread, 95 % interval of the mean (Student), the probability that the
true mean lies within the tolerance, and the verdict: accept, reject, or not shown yet. Over both: the lost motion, which
is the mean from the right minus the mean from the left, with its 95 % interval (Welch).
It needs at least two readings from each side. A bad line gets a sentence that names it, there is then no result, and
the exit status is 1; with --json each sentence is also written as {"error": "line N: ..."}. Blank lines are passed over.

  --tolerance T   how far the true mean may lie from zero, graduations (0.5)
  --risk R        highest risk of a wrong verdict either way (0.05)
  --json          print JSON`,
  options: { tolerance: { type: "string" }, risk: { type: "string" }, json: { type: "boolean" } },
  async run(files, options, terminal) {
    const [file, ...more] = files;
    if (file === undefined || more.length > 0) throw new UsageError('zero takes one file, or "-" for standard input');
    const limits = limitsOf(options);
    const lines = await readLines(file, terminal);
    try {
      const result = zeroResult(parseReadings(lines), limits);
      await terminal.write(options.json === true ? `${JSON.stringify(asJson(result))}\n` : inWords(result, limits));
      return 0;
    } catch (error) {
      // A program reads what was wrong where it looks for the result; a person reads it on standard error.
      if (error instanceof ReadingsError && options.json === true) {
        for (const problem of error.problems) await terminal.write(`${JSON.stringify({ error: problem })}\n`);
      }
      throw error;
    }
  },
};
