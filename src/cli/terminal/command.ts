import type { ParseArgsConfig } from "node:util";

/** Values of a command's options, as `node:util` parses them. */
export type OptionValues = Readonly<Record<string, string | boolean | undefined>>;

/** Where a command reads and writes. Injected, so that commands are plain functions to their tests. */
export interface Terminal {
  /** The bytes of a file, or of standard input for "-", in pieces as they come. */
  pieces(file: string): AsyncIterable<Uint8Array>;
  /** Bytes of a file, or null where nobody knows before it is read. */
  size(file: string): Promise<number | null>;
  /** The whole text of a file, or of standard input for "-". @throws {UsageError} when it cannot be read */
  text(file: string): Promise<string>;
  /** Writes text, or UTF-8, to standard output and waits until it takes more. */
  write(text: string | Uint8Array): Promise<void>;
  /** Says something beside the result, one sentence on standard error. */
  complain(sentence: string): void;
  /** Shows how far a long command is, where someone is looking. */
  progress(text: string): void;
}

/** One command of the command line; its name and what it is for are in the table of `gatefall.ts`. */
export interface Command {
  /** Help text below the summary. */
  readonly usage: string;
  readonly options: NonNullable<ParseArgsConfig["options"]>;
  /**
   * @returns the exit status: 0, 1 when some of the input was bad, or 3 when something went wrong inside
   * @throws {UsageError} when the command line makes no sense
   */
  run(files: readonly string[], options: OptionValues, terminal: Terminal): Promise<number>;
}
