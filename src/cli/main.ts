import { once } from "node:events";
import { createReadStream } from "node:fs";
import { readFile } from "node:fs/promises";
import { createInterface } from "node:readline";
import type { Readable } from "node:stream";
import { text as wholeText } from "node:stream/consumers";
import type { Terminal } from "./command";
import { gatefall } from "./gatefall";
import { UsageError } from "./usageError";

const cannotRead = (file: string, error: unknown) =>
  new UsageError(`${file} cannot be read: ${error instanceof Error ? error.message : String(error)}`);

/** Lines of a stream. An error of the stream (a folder, a disk that fails) reaches whoever reads the lines. */
async function* readLines(input: Readable): AsyncIterable<string> {
  const reader = createInterface({ input, crlfDelay: Number.POSITIVE_INFINITY });
  let failure: unknown;
  input.once("error", (error) => {
    failure = error;
    reader.close();
  });
  yield* reader;
  if (failure !== undefined) throw failure;
}

/** Lines of a file as they come, however long the file. */
async function* lines(file: string): AsyncIterable<string> {
  const input = file === "-" ? process.stdin : createReadStream(file);
  try {
    if (file !== "-") await once(input, "open");
    yield* readLines(input);
  } catch (error) {
    throw error instanceof Error && "syscall" in error ? cannotRead(file, error) : error;
  }
}

const terminal: Terminal = {
  lines,
  async text(file) {
    try {
      return file === "-" ? await wholeText(process.stdin) : await readFile(file, "utf8");
    } catch (error) {
      throw cannotRead(file, error);
    }
  },
  async write(text) {
    if (!process.stdout.write(text)) await once(process.stdout, "drain");
  },
  progress(text) {
    if (process.stderr.isTTY) process.stderr.write(`\r${text}`);
  },
};

// A reader that has seen enough (`| head -1`) closes the pipe; that is no failure of ours.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code !== "EPIPE") throw error;
  process.exit();
});

process.exitCode = await gatefall(process.argv.slice(2), terminal, (sentence) =>
  process.stderr.write(`gatefall: ${sentence}\n`),
);
