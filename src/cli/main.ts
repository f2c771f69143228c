import { once } from "node:events";
import { createReadStream } from "node:fs";
import { readFile, stat } from "node:fs/promises";
import { text as wholeText } from "node:stream/consumers";
import { errorText } from "../wording/problem";
import { INTERNAL_ERROR, internalWords } from "./exitStatus";
import { gatefall } from "./gatefall";
import type { Terminal } from "./terminal/command";
import { usageError } from "./terminal/usageError";

const cannotRead = (file: string, error: unknown) => usageError("file-unreadable", [file], { why: errorText(error) });

/**
 * Bytes of a file that are read at a time: enough that another thread is worth asking. As text they stay below 128 kB, from
 * where on each gets memory of its own from the system, which takes forty times as long as to decode it.
 */
const PIECE = 96 * 1024;

/** Bytes of a file as they come, however long the file. An error (a folder, a disk that fails) reaches the reader. */
async function* pieces(file: string): AsyncIterable<Uint8Array> {
  const input: AsyncIterable<Uint8Array> & NodeJS.ReadableStream =
    file === "-" ? process.stdin : createReadStream(file, { highWaterMark: PIECE });
  try {
    if (file !== "-") await once(input, "open");
    yield* input;
  } catch (error) {
    throw error instanceof Error && "syscall" in error ? cannotRead(file, error) : error;
  }
}

/** How far something is, on a line of a terminal that it has for itself: it goes before anything else is written. */
let isProgressShown = false;
function clearProgress(): void {
  if (isProgressShown) process.stderr.write("\r\x1b[K");
  isProgressShown = false;
}

function complain(sentence: string): void {
  clearProgress();
  process.stderr.write(`gatefall: ${sentence}\n`);
}

const terminal: Terminal = {
  complain,
  pieces,
  async size(file) {
    // What cannot be read is refused when it is read.
    const known = file === "-" ? null : await stat(file).catch(() => null);
    return known?.isFile() ? known.size : null;
  },
  async text(file) {
    try {
      return file === "-" ? await wholeText(process.stdin) : await readFile(file, "utf8");
    } catch (error) {
      throw cannotRead(file, error);
    }
  },
  async write(text) {
    clearProgress();
    if (!process.stdout.write(text)) await once(process.stdout, "drain");
  },
  progress(text) {
    if (!process.stderr.isTTY) return;
    clearProgress();
    process.stderr.write(text);
    isProgressShown = true;
  },
};

process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  // A reader that has seen enough (`| head -1`) closes the pipe; that is no failure of ours.
  if (error.code === "EPIPE") process.exit();
  complain(`the output cannot be written: ${error.message}; make room or choose another place, and run it again`);
  process.exit(2);
});

try {
  process.exitCode = await gatefall(process.argv.slice(2), terminal, complain);
  clearProgress();
} catch (error) {
  complain(`${internalWords(error)}; please report it with the command line`);
  process.exitCode = INTERNAL_ERROR;
}
