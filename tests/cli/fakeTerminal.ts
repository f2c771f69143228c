import { gatefall } from "../../src/cli/gatefall";
import type { Terminal } from "../../src/cli/terminal/command";
import { usageError } from "../../src/cli/terminal/usageError";

/** What a command line came to. */
export interface Outcome {
  readonly status: number;
  readonly out: string;
  /** Sentences for standard error. */
  readonly complaints: readonly string[];
}

/** A terminal with files that exist only here; what is written to it goes nowhere. @param files - text by name */
export function fakeTerminal(files: Readonly<Record<string, string>>): Terminal {
  const textOf = (file: string): string => {
    const text = files[file];
    if (text === undefined) throw usageError("file-unreadable", [file], { why: "there is no such file" });
    return text;
  };
  return {
    async *pieces(file) {
      yield Buffer.from(textOf(file));
    },
    async size(file) {
      return Buffer.byteLength(textOf(file));
    },
    async text(file) {
      return textOf(file);
    },
    async write() {},
    complain() {},
    progress() {},
  };
}

/**
 * Runs a command line on files that exist only here.
 *
 * @param files - text by name; "-" is standard input
 */
export async function run(args: readonly string[], files: Readonly<Record<string, string>> = {}): Promise<Outcome> {
  let out = "";
  const complaints: string[] = [];
  const complain = (sentence: string) => {
    complaints.push(sentence);
  };
  const terminal: Terminal = {
    ...fakeTerminal(files),
    async write(text) {
      out += Buffer.from(text).toString();
    },
    complain,
  };
  const status = await gatefall(args, terminal, complain);
  return { status, out, complaints };
}
