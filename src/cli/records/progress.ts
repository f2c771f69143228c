import type { Terminal } from "../terminal/command";

/** How much of a file was read, in words. @param size - null where nobody knows */
const readText = (bytes: number, size: number | null) =>
  size === null
    ? `${Math.floor(bytes / 1e6)} MB read`
    : `${Math.floor((100 * bytes) / size)} % of ${Math.ceil(size / 1e6)} MB`;

/** A terminal that shows how much of a file was read, behind a text. */
export function withProgress(terminal: Terminal, text: string): Terminal {
  return {
    ...terminal,
    async *pieces(file) {
      const size = await terminal.size(file);
      let bytes = 0;
      let shown = "";
      for await (const piece of terminal.pieces(file)) {
        const now = readText(bytes, size);
        if (now !== shown) terminal.progress(`${text}: ${now}`);
        shown = now;
        yield piece;
        bytes += piece.length;
      }
    },
  };
}
