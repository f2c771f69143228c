/** Longest line that is read, characters: some 16 MB. A recorded attempt of an hour has about one. */
export const LONGEST_LINE = 16 * 1024 * 1024;

/** UTF-8 bytes that a character of a string takes at most. */
const MOST_BYTES = 3;
const LINE_END = 0x0a;

/** Whole lines that came together. */
export interface LineBatch {
  /** Number of its first line in the input, counted from 1. */
  readonly firstLine: number;
  /** How many lines it has. */
  readonly count: number;
  /** UTF-8, with \n between the lines; null stands for one line over the limit of length, which is not kept. */
  readonly bytes: Uint8Array<ArrayBuffer> | null;
}

/** The line that is under way between two pieces: nothing of it is kept once it cannot be within the limit. */
class BegunLine {
  private readonly mostBytes: number;
  private parts: Uint8Array[] = [];
  private length = 0;

  constructor(mostBytes: number) {
    this.mostBytes = mostBytes;
  }

  get isEmpty(): boolean {
    return this.length === 0;
  }

  get isTooLong(): boolean {
    return this.length > this.mostBytes;
  }

  add(part: Uint8Array): void {
    this.length += part.length;
    if (this.isTooLong) this.parts = [];
    else this.parts.push(part);
  }

  /** Ends it, with what follows it. @returns null where it was over the limit */
  end(following: Uint8Array): Buffer<ArrayBuffer> | null {
    const bytes = this.isTooLong ? null : joined([...this.parts, following]);
    this.parts = [];
    this.length = 0;
    return bytes;
  }
}

/** In memory of its own, which can be handed to another thread. */
function joined(parts: readonly Uint8Array[]): Buffer<ArrayBuffer> {
  const whole = Buffer.from(new ArrayBuffer(parts.reduce((sum, { length }) => sum + length, 0)));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

function countLines(bytes: Buffer): number {
  let count = 1;
  for (let at = bytes.indexOf(LINE_END); at >= 0; at = bytes.indexOf(LINE_END, at + 1)) count += 1;
  return count;
}

/**
 * Cuts bytes that come in pieces at line ends. A batch is there as soon as its piece is, so that a slow input is answered
 * line by line. Takes no more memory than the longest line and a piece.
 *
 * @param longest - characters
 */
export async function* batchesOf(
  pieces: AsyncIterable<Uint8Array>,
  longest: number = LONGEST_LINE,
): AsyncIterable<LineBatch> {
  let firstLine = 1;
  for await (const bytes of wholeLines(pieces, MOST_BYTES * longest)) {
    const count = bytes === null ? 1 : countLines(bytes);
    yield { firstLine, count, bytes };
    firstLine += count;
  }
}

/** Whole lines with \n between them, as they come; null for one over the limit that came in several pieces. */
async function* wholeLines(
  pieces: AsyncIterable<Uint8Array>,
  mostBytes: number,
): AsyncIterable<Buffer<ArrayBuffer> | null> {
  const begun = new BegunLine(mostBytes);
  for await (const piece of pieces) {
    const lastEnd = piece.lastIndexOf(LINE_END);
    if (lastEnd >= 0) yield* endedBy(piece.subarray(0, lastEnd), begun);
    begun.add(piece.subarray(lastEnd + 1));
  }
  if (!begun.isEmpty) yield begun.end(new Uint8Array());
}

/** The line under way, ended by what came of it, and the whole lines that follow it there. */
function endedBy(lines: Uint8Array, begun: BegunLine): (Buffer<ArrayBuffer> | null)[] {
  if (!begun.isTooLong) return [begun.end(lines)];
  const firstEnd = lines.indexOf(LINE_END);
  return firstEnd < 0 ? [begun.end(lines)] : [begun.end(lines), joined([lines.subarray(firstEnd + 1)])];
}

/** The lines of a batch, without their ends: \n or \r\n. A line over the limit of length is null. */
export function* linesIn({ bytes }: LineBatch, longest: number = LONGEST_LINE): Iterable<string | null> {
  if (bytes === null) return yield null;
  const text = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length).toString();
  for (let from = 0; from <= text.length; ) {
    const next = text.indexOf("\n", from);
    const end = next < 0 ? text.length : next;
    const line = text.slice(from, end);
    yield line.length > longest ? null : line.endsWith("\r") ? line.slice(0, -1) : line;
    from = end + 1;
  }
}

/** Cuts UTF-8 that comes in pieces into lines; null is one over the limit, of which nothing is kept. */
export async function* linesOf(pieces: AsyncIterable<Uint8Array>, longest?: number): AsyncIterable<string | null> {
  for await (const batch of batchesOf(pieces, longest)) yield* linesIn(batch, longest);
}
