import type { Graduations, Turn } from "../lock/dial";
import { isNestedDeeply } from "../lock/jsonDepth";
import type { Problem } from "../wording/problem";
import { ReadingsError } from "./readingsError";
import { type LineProblem, readingsProblem } from "./readingsWords";

/** Deviations read from outside, by side, in the order of their lines. Graduations, left positive. */
export type SidesRead = Readonly<Record<Turn, readonly Graduations[]>>;

/** Half a turn of a dial of 100: nothing is farther from zero than that, graduations. */
const FARTHEST = 50;
/** Readings that a side needs: of one alone nothing is known of its spread. */
const LEAST = 2;

/** The values of one line, whatever they are. */
interface Values {
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

/** What is wrong with the values of one line, or undefined. */
function problemOf({ direction, deviation }: Values): Problem | undefined {
  if (!isDirection(direction))
    return readingsProblem("one-of", ["direction"], { choices: ["right", "left"], found: direction });
  if (typeof deviation !== "number" || Number.isNaN(deviation))
    return readingsProblem("number", ["deviation"], { found: deviation });
  return Math.abs(deviation) <= FARTHEST
    ? undefined
    : readingsProblem("beyond-half-turn", ["deviation"], { farthest: FARTHEST, found: deviation });
}

const cellsOf = (text: string) =>
  text.split(",").map((cell) =>
    cell
      .trim()
      .replace(/^"(.*)"$/, "$1")
      .trim(),
  );

// Every digit can be matched in one way only, so that a long run of digits takes a time in proportion to its length.
const NUMBER = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d+)?$/i;
/** Longest cell that is looked at: no number of a reading is longer. */
const LONGEST_CELL = 64;

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

function valuesOfCells(text: string, columns: Columns): Values {
  const cells = cellsOf(text);
  const cell = cells[columns.deviation];
  // A decimal comma makes a cell too many, and its whole part would pass for the number.
  if (cells.length > columns.count) return { direction: cells[columns.direction]?.toLowerCase(), deviation: text };
  return {
    direction: cells[columns.direction]?.toLowerCase(),
    deviation: cell !== undefined && cell.length <= LONGEST_CELL && NUMBER.test(cell) ? Number(cell) : cell,
  };
}

function valuesOfJson(text: string): Values | undefined {
  if (isNestedDeeply(text)) return undefined;
  try {
    const { direction, deviation } = JSON.parse(text);
    return { direction, deviation };
  } catch {
    return undefined;
  }
}

/** Bad lines that are told one by one; of a file that is all wrong nobody reads more. */
const MOST_PROBLEMS = 1000;

/**
 * Collects deviations from lines of text: JSON Lines (`{"direction":"right","deviation":0.2}`) or comma-separated values
 * (`right,0.2`), told apart line by line. The first line of comma-separated values may be a header; then it says where
 * the columns are, and there may be others. Blank lines are passed over.
 *
 * A file of any length takes no more memory than its readings. One bad line spoils the result, since a mean without it
 * would be another one; but all bad lines are told. Mutable.
 */
export class ReadingsCollector {
  private readonly sides: Record<Turn, Graduations[]> = { right: [], left: [] };
  private readonly firstLines: Partial<Record<Turn, number>> = {};
  private readonly problems: LineProblem[] = [];
  private untold = 0;
  private columns: Columns | null = null;
  private lines = 0;

  /** Takes the next line; one that was too long to be read at all is null. */
  takeLine(whole: string | null): void {
    this.lines += 1;
    const text = whole?.replace(/^\uFEFF/, "").trim();
    if (text === undefined) this.refuse(readingsProblem("line-too-long", []));
    else if (text !== "") this.take(text);
  }

  /**
   * What has been read.
   *
   * @returns at least two readings from each side
   * @throws {ReadingsError} with a problem for each bad line, or for each side with fewer than two readings
   */
  sidesRead(): SidesRead {
    const { problems, untold } = this;
    const more =
      untold === 0 ? [] : [{ line: null, problem: readingsProblem("more-bad-lines", [], { count: untold }) }];
    const [first, ...others] = problems;
    if (first !== undefined) throw new ReadingsError([first, ...others, ...more]);
    const missing = (["right", "left"] as const).flatMap((turn) =>
      countProblem(turn, this.sides[turn].length, this.firstLines[turn]),
    );
    const [lacking, ...alike] = missing;
    if (lacking !== undefined) throw new ReadingsError([lacking, ...alike]);
    return this.sides;
  }

  private take(text: string): void {
    const values = text.startsWith("{") ? valuesOfJson(text) : this.ofCells(text);
    if (values === undefined) this.refuse(readingsProblem("line-not-json", [], { beginning: text.slice(0, 60) }));
    else if (values !== "header") this.keep(values);
  }

  /** The first line of comma-separated values may be a header. */
  private ofCells(text: string): Values | "header" {
    if (this.columns === null) {
      const header = headerOf(text);
      this.columns = header ?? USUAL_COLUMNS;
      if (header !== undefined) return "header";
    }
    return valuesOfCells(text, this.columns);
  }

  private keep(read: Values): void {
    const problem = problemOf(read);
    if (problem !== undefined) this.refuse(problem);
    else if (isDirection(read.direction) && typeof read.deviation === "number") {
      this.sides[read.direction].push(read.deviation);
      this.firstLines[read.direction] ??= this.lines;
    }
  }

  private refuse(problem: Problem): void {
    if (this.problems.length < MOST_PROBLEMS) this.problems.push({ line: this.lines, problem });
    else this.untold += 1;
  }
}

/** What is wrong with the number of readings of a side; none where they are enough. */
function countProblem(turn: Turn, count: number, firstLine: number | undefined): LineProblem[] {
  if (count >= LEAST) return [];
  return firstLine === undefined
    ? [{ line: null, problem: readingsProblem("no-stops", [], { turn }) }]
    : [{ line: firstLine, problem: readingsProblem("only-stop", [], { turn }) }];
}

/** Most decimals that a resolution is told by; more are a computed number's and no reading's. */
const MOST_DECIMALS = 9;

/**
 * The step that readings seem to have been taken in: one of the last decimal that any of them has.
 *
 * @returns graduations: 1 for whole numbers, 0.1 for tenths
 */
export function resolutionOf(sides: SidesRead): Graduations {
  const decimals = [...sides.right, ...sides.left].map((deviation) => {
    const [, after = ""] = deviation.toFixed(MOST_DECIMALS).replace(/0+$/, "").split(".");
    return after.length;
  });
  return Number(`1e-${Math.max(0, ...decimals)}`);
}
