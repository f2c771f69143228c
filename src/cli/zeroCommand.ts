import type { Turn } from "../lock/dial";
import type { Interval } from "../statistics/interval";
import { ReadingsError } from "../zeroing/readingsError";
import { ReadingsCollector, resolutionOf, type SidesRead } from "../zeroing/readingsFile";
import { lineProblemText } from "../zeroing/readingsWords";
import { type SideResult, type ZeroLimits, type ZeroResult, zeroResult } from "../zeroing/zeroResult";
import { lostMotionWords, verdictWords } from "../zeroing/zeroWords";
import { linesOf } from "./lineSplitter";
import { numberOption } from "./numberOption";
import type { Command, OptionValues, Terminal } from "./terminal/command";
import { usageError } from "./terminal/usageError";

/** @returns the limits for readings, whose resolution is taken from their decimals where it is not given */
function limitsOf(options: OptionValues): (readings: SidesRead) => Required<ZeroLimits> {
  const tolerance = numberOption(options, "tolerance", 0.5);
  const risk = numberOption(options, "risk", 0.05);
  const unit = "graduations";
  if (!(tolerance > 0)) throw usageError("above", ["--tolerance"], { unit, low: 0, found: tolerance });
  if (!(risk > 0 && risk < 0.5)) throw usageError("between", ["--risk"], { low: 0, high: 0.5, found: risk });
  const given = resolutionGiven(options);
  return (readings) => ({ tolerance, risk, resolution: given ?? resolutionOf(readings) });
}

/** The step of the readings as it was given, or undefined where it is to be taken from their decimals. */
function resolutionGiven(options: OptionValues): number | undefined {
  if (options.resolution === undefined) return undefined;
  const resolution = numberOption(options, "resolution");
  if (resolution >= 0 && resolution <= MOST_RESOLUTION) return resolution;
  const range = { unit: "graduations", low: 0, high: MOST_RESOLUTION };
  throw usageError("within", ["--resolution"], { ...range, found: resolution });
}

const MOST_RESOLUTION = 50;

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

// No number of readings makes it certain.
const percent = (probability: number) =>
  probability > 0.999 ? "> 99.9 %" : probability < 0.001 ? "< 0.1 %" : `${(100 * probability).toFixed(1)} %`;

const sideRow = (turn: Turn, { n, mean, sd, spread, ci95, conformance }: SideResult) =>
  tableRow([
    turn.padEnd(WIDTHS[0] ?? 0),
    String(n),
    signed(mean),
    signed(sd),
    signed(spread),
    `${signed(ci95.low)} to ${signed(ci95.high)}`,
    percent(conformance),
  ]);

const inWords = ({ right, left, lostMotion }: ZeroResult, limits: ZeroLimits) =>
  `Graduations, left positive; tolerance ${limits.tolerance}, risk of a wrong verdict ${Number((100 * limits.risk).toFixed(4))} %; readings in steps of ${limits.resolution}

${[tableRow(COLUMNS), sideRow("right", right), sideRow("left", left)].join("\n")}

${verdictWords("right", right, limits)}
${verdictWords("left", left, limits)}
${lostMotionWords(lostMotion)}
`;

/** Readings of a file. A program reads what was wrong where it looks for the result; a person on standard error. */
async function readingsOf(file: string, isJson: boolean, terminal: Terminal): Promise<SidesRead> {
  const collector = new ReadingsCollector();
  for await (const line of linesOf(terminal.pieces(file))) collector.takeLine(line);
  try {
    return collector.sidesRead();
  } catch (error) {
    if (error instanceof ReadingsError && isJson) {
      for (const one of error.problems) await terminal.write(`${JSON.stringify({ error: lineProblemText(one) })}\n`);
    }
    throw error;
  }
}

/** `gatefall zero FILE` */
export const zeroCommand: Command = {
  usage: `gatefall zero FILE [--tolerance T] [--risk R] [--json]      (FILE "-" reads standard input)

FILE holds one stop a line, as JSON Lines or as comma-separated values with or without a header:
  {"direction": "right", "deviation": 0.2}
  right,0.2
direction   the way the dial was turned onto zero: right or left
deviation   how far off zero the dial read, graduations, left positive, at most half a turn of 100 (50)

For each side: number, mean, standard deviation, spread, 95 % interval of the mean (Student), the probability that the
true mean lies within the tolerance, and the verdict: accept, reject, or not shown yet. Over both: the lost motion, which
is the mean turning right minus the mean turning left, with its 95 % interval (Welch).
The resolution of the readings adds to the uncertainty of each mean, as delta / sqrt(12) (GUM F.2.2). A coarser reading
never shows more: the wider interval counts, of scatter with resolution and of scatter alone. Without --resolution it is
one of the last decimal that any deviation has. Where it alone keeps a verdict from being shown, the result says so: not
shown, the readings are too coarse.
It needs at least two stops in each direction. A bad line gets a sentence that names it, there is then no result, and
the exit status is 1; with --json each sentence is also written as {"error": "line N: ..."}. Blank lines are skipped.

  --tolerance T   how far the true mean may lie from zero, graduations (0.5)
  --risk R        highest risk of a wrong verdict either way (0.05)
  --resolution D  step in which the dial was read, graduations; 0 for none
  --json          print JSON`,
  options: {
    tolerance: { type: "string" },
    risk: { type: "string" },
    resolution: { type: "string" },
    json: { type: "boolean" },
  },
  async run(files, options, terminal) {
    const [file, ...more] = files;
    if (file === undefined || more.length > 0) throw usageError("wants-file", [], { command: "zero" });
    const limitsFor = limitsOf(options);
    const isJson = options.json === true;
    const readings = await readingsOf(file, isJson, terminal);
    const limits = limitsFor(readings);
    const result = zeroResult(readings, limits);
    await terminal.write(isJson ? `${JSON.stringify(asJson(result))}\n` : inWords(result, limits));
    return 0;
  },
};
