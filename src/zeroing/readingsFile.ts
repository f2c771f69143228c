import type { Graduations, Turn } from "../lock/dial";
import { shown } from "../lock/fieldProblem";
import { ReadingsError } from "./readingsError";

/** Deviations read from outside, by side, in the order of their lines. Graduations, left positive. */
export type SidesRead = Readonly<Record<Turn, readonly Graduations[]>>;

/** Half a turn of a dial of 100: nothing is farther from zero than that, graduations. */
const FARTHEST = 50;
/** Readings that a side needs: of one alone nothing is known of its spread. */
const LEAST = 2;

interface LineRead {
  readonly line: number;
  readonly direction: unknown;
  readonly deviation: unknown;
}

/** Where the columns of comma-separated values stand. */
interface Columns {
  readonly direction: number;
  readonly deviation: number;
  /** How many cells a line has. */
  readonly count: number;
}

const USUAL_COLUMNS: Columns = { direction: 0, deviation: 1, count: 2 };

const isDirection = (value: unknown): value is Turn => value === "right" || value === "left";

/** What is wrong with the values of one line, as the end of a sentence; or undefined. */
function problemOf({ direction, deviation }: Omit<LineRead, "line">): string | undefined {
  if (!isDirection(direction)) return `direction must be "right" or "left", not ${shown(direction)}`;
  if (typeof deviation !== "number" || Number.isNaN(deviation))
    return `deviation must be a number, not ${shown(deviation)}`;
  return Math.abs(deviation) <= FARTHEST
    ? undefined
    : `deviation must lie within half a turn (${FARTHEST} graduations) of zero, not at ${deviation}`;
}

const cellsOf = (text: string) =>
  text.split(",").map((cell) =>
    cell
      .trim()
      .replace(/^"(.*)"$/, "$1")
      .trim(),
  );

const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;

/** Columns as a header names them; undefined where the line is no header. */
function headerOf(text: string): Columns | undefined {
  const names = cellsOf(text).map((name) => name.toLowerCase());
  const columns = {
    direction: names.indexOf("direction"),
    deviation: names.indexOf("deviation"),
    count: names.length,
  };
  return columns.direction >= 0 && columns.deviation >= 0 ? columns : undefined;
}

function valuesOfCells(text: string, columns: Columns): Omit<LineRead, "line"> {
  const cells = cellsOf(text);
  const cell = cells[columns.deviation];
  // A decimal comma makes a cell too many, and its whole part would pass for the number.
  if (cells.length > columns.count) return { direction: cells[columns.direction]?.toLowerCase(), deviation: text };
  return {
    direction: cells[columns.direction]?.toLowerCase(),
    deviation: cell !== undefined && NUMBER.test(cell) ? Number(cell) : cell,
  };
}

function valuesOfJson(text: string): Omit<LineRead, "line"> | undefined {
  try {
    const { direction, deviation } = JSON.parse(text);
    return { direction, deviation };
  } catch {
    return undefined;
  }
}

/** Collects readings line by line; a line that is wrong leaves a sentence. Mutable. */
class ReadingsCollector {
  readonly sides: Record<Turn, LineRead[]> = { right: [], left: [] };
  readonly problems: string[] = [];
  private columns: Columns | null = null;

  take(text: string, line: number): void {
    const values = text.startsWith("{") ? valuesOfJson(text) : this.ofCells(text);
    if (values === undefined) {
      this.problems.push(`line ${line}: this is not one whole JSON object: ${text.slice(0, 60)}`);
    } else if (values !== "header") this.keep({ line, ...values });
  }

  /** The first line of comma-separated values may be a header. */
  private ofCells(text: string): Omit<LineRead, "line"> | "header" {
    if (this.columns === null) {
      const header = headerOf(text);
      this.columns = header ?? USUAL_COLUMNS;
      if (header !== undefined) return "header";
    }
    return valuesOfCells(text, this.columns);
  }

  private keep(read: LineRead): void {
    const problem = problemOf(read);
    if (problem !== undefined) this.problems.push(`line ${read.line}: ${problem}`);
    else if (isDirection(read.direction)) this.sides[read.direction].push(read);
  }
}

/** What is wrong with the number of readings of a side, as a sentence; none where they are enough. */
function countProblem(turn: Turn, reads: readonly LineRead[]): string[] {
  const [only] = reads;
  if (reads.length >= LEAST) return [];
  return only === undefined
    ? [`there are no readings from the ${turn}; the result needs at least two from each side`]
    : [`line ${only.line}: this is the only reading from the ${turn}; the result needs at least two from each side`];
}

/**
 * Reads deviations from lines of text: JSON Lines (`{"direction":"right","deviation":0.2}`) or comma-separated values
 * (`right,0.2`), told apart line by line. The first line of comma-separated values may be a header; then it says where
 * the columns are, and there may be others. Blank lines are passed over.
 *
 * One bad line spoils the result, since a mean without it would be another one; but all bad lines are told.
 *
 * @returns at least two readings from each side
 * @throws {ReadingsError} with a sentence for each bad line, or for each side with fewer than two readings
 */
export function parseReadings(lines: readonly string[]): SidesRead {
  const collector = new ReadingsCollector();
  lines.forEach((line, index) => {
    const text = line.replace(/^\uFEFF/, "").trim();
    if (text !== "") collector.take(text, index + 1);
  });
  const { problems, sides } = collector;
  if (problems.length > 0) throw new ReadingsError(problems);
  const missing = (["right", "left"] as const).flatMap((turn) => countProblem(turn, sides[turn]));
  if (missing.length > 0) throw new ReadingsError(missing);
  const deviations = (turn: Turn) => sides[turn].map(({ deviation }) => deviation as Graduations);
  return { right: deviations("right"), left: deviations("left") };
}
