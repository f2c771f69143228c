/** Longest line that is read, characters: some 16 MB. A recorded attempt of an hour has about one. */
export const LONGEST_LINE = 16 * 1024 * 1024;

/** Whole lines that came together. */
export interface LineBatch {
  /** Number of its first line in the input, counted from 1. */
  readonly firstLine: number;
  /** How many lines it has. */
  readonly count: number;
  /** The lines with \n between them; null stands for one line over the limit of length, which is not kept. */
  readonly text: string | null;
}

/** The line that is under way between two pieces: nothing of it is kept once it is over the limit. */
class BegunLine {
  private readonly longest: number;
  private parts: string[] = [];
  private length = 0;

  constructor(longest: number) {
    this.longest = longest;
  }

  get isEmpty(): boolean {
    return this.length === 0;
  }

  add(part: string): void {
    this.length += part.length;
    if (this.length <= this.longest) this.parts.push(part);
    else this.parts = [];
  }

  /** Ends it. @returns null where it was over the limit */
  end(): string | null {
    const text = this.length > this.longest ? null : this.parts.join("");
    this.parts = [];
    this.length = 0;
    return text;
  }
}

function countLines(text: string): number {
  let count = 1;
  for (let at = text.indexOf("\n"); at >= 0; at = text.indexOf("\n", at + 1)) count += 1;
  return count;
}

/**
 * Cuts text that comes in pieces at line ends. A batch is there as soon as its piece is, so that a slow input is answered
 * line by line. Takes no more memory than the longest line and a piece.
 */
export async function* batchesOf(
  pieces: AsyncIterable<string>,
  longest: number = LONGEST_LINE,
): AsyncIterable<LineBatch> {
  let firstLine = 1;
  for await (const text of wholeLines(pieces, longest)) {
    const count = text === null ? 1 : countLines(text);
    yield { firstLine, count, text };
    firstLine += count;
  }
}

/** Whole lines with \n between them, as they come; null for one over the limit that came in several pieces. */
async function* wholeLines(pieces: AsyncIterable<string>, longest: number): AsyncIterable<string | null> {
  const begun = new BegunLine(longest);
  for await (const piece of pieces) {
    if (piece.includes("\n")) yield* endedBy(piece, begun);
    begun.add(piece.slice(piece.lastIndexOf("\n") + 1));
  }
  if (!begun.isEmpty) yield begun.end();
}

/** The line under way, ended by a piece, and the whole lines that follow it there. */
function endedBy(piece: string, begun: BegunLine): (string | null)[] {
  const firstEnd = piece.indexOf("\n");
  const lastEnd = piece.lastIndexOf("\n");
  begun.add(piece.slice(0, firstEnd));
  const line = begun.end();
  if (line !== null) return [line + piece.slice(firstEnd, lastEnd)];
  return lastEnd > firstEnd ? [null, piece.slice(firstEnd + 1, lastEnd)] : [null];
}

/** The lines of a batch, without their ends: \n or \r\n. A line over the limit of length is null. */
export function linesIn({ text }: LineBatch, longest: number = LONGEST_LINE): (string | null)[] {
  if (text === null) return [null];
  const lines: (string | null)[] = text.split("\n");
  for (const [k, line] of lines.entries()) {
    if (line === null || line.length > longest) lines[k] = null;
    else if (line.endsWith("\r")) lines[k] = line.slice(0, -1);
  }
  return lines;
}

/** Cuts text that comes in pieces into lines; null is one over the limit, of which nothing is kept. */
export async function* linesOf(pieces: AsyncIterable<string>, longest?: number): AsyncIterable<string | null> {
  for await (const batch of batchesOf(pieces, longest)) yield* linesIn(batch, longest);
}
