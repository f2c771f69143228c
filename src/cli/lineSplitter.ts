/** Longest line that is read, characters: some 16 MB. A recorded attempt of an hour has about one. */
export const LONGEST_LINE = 16 * 1024 * 1024;

/**
 * Cuts text that comes in pieces into lines. Of a line over the limit nothing is kept: it comes out as null.
 * Line ends are \n or \r\n. Takes no more memory than the longest line and a piece.
 */
export async function* linesOf(
  pieces: AsyncIterable<string>,
  longest: number = LONGEST_LINE,
): AsyncIterable<string | null> {
  let begun: string[] = [];
  let length = 0;
  const taken = () => {
    const line = length > longest ? null : begun.join("").replace(/\r$/, "");
    begun = [];
    length = 0;
    return line;
  };
  const take = (part: string) => {
    length += part.length;
    if (length <= longest) begun.push(part);
    else begun = [];
  };
  for await (const piece of pieces) {
    const parts = piece.split("\n");
    const last = parts.pop() ?? "";
    for (const part of parts) {
      take(part);
      yield taken();
    }
    if (last !== "") take(last);
  }
  if (length > 0) yield taken();
}
