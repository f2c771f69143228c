import { type ParseArgsConfig, parseArgs } from "node:util";
import { StatisticsError } from "../statistics/statisticsError";
import { errorText, ProblemError } from "../wording/problem";
import { ReadingsError } from "../zeroing/readingsError";
import { lineProblemText } from "../zeroing/readingsWords";
import type { Command, OptionValues, Terminal } from "./terminal/command";
import { UsageError, usageError } from "./terminal/usageError";

interface CommandEntry {
  readonly name: string;
  readonly summary: string;
  /** Only the command that is asked for is loaded: all of them take seconds. */
  readonly load: () => Promise<Command>;
}

const COMMANDS: readonly CommandEntry[] = [
  {
    name: "replay",
    summary: "replay recorded attempts and say whether each opened, and why",
    load: async () => (await import("./replayCommand")).replayCommand,
  },
  {
    name: "profiles",
    summary: "list the shipped lock profiles, or check profile files",
    load: async () => (await import("./profilesCommand")).profilesCommand,
  },
  {
    name: "odds",
    summary: "show how often a hand with a given bias and spread opens a lock",
    load: async () => (await import("./oddsCommand")).oddsCommand,
  },
  {
    name: "zero",
    summary: "show how good a zero is, from stops in both directions",
    load: async () => (await import("./zeroCommand")).zeroCommand,
  },
  {
    name: "combinations",
    summary: "count, draw or explain combinations under the rules for choosing them",
    load: async () => (await import("./combinationsCommand")).combinationsCommand,
  },
  {
    name: "handover",
    summary: "replay a recorded handover and list what was missing",
    load: async () => (await import("./handoverCommand")).handoverCommand,
  },
  {
    name: "records",
    summary: "check saved records: sittings, handovers, whole logbooks",
    load: async () => (await import("./records/recordsCommand")).recordsCommand,
  },
  {
    name: "class",
    summary: "who is ready at what, from the logbooks of a class",
    load: async () => (await import("./records/classCommand")).classCommand,
  },
];

const overview = () => {
  const lines = COMMANDS.map(({ name, summary }) => `  ${name.padEnd(14)}${summary}`);
  return `gatefall COMMAND ...\n\n${lines.join("\n")}\n\n"gatefall COMMAND --help" shows more.\n\nExit status: 0 done; 1 some of the input was bad; 2 the command line makes no sense, or a file cannot be read or\nwritten; 3 something went wrong inside the program.\n\nA practice result is not a certificate.\n`;
};

const HELP: NonNullable<ParseArgsConfig["options"]> = { help: { type: "boolean", short: "h" } };

/** Lets a negative number follow its option as a word of its own: `--bias -0.2`. */
function joinNegatives(args: readonly string[]): string[] {
  const joined: string[] = [];
  for (const arg of args) {
    const option = joined.at(-1);
    const isValue = option !== undefined && /^--[a-z-]+$/.test(option) && /^-\.?\d/.test(arg);
    if (isValue) joined[joined.length - 1] = `${option}=${arg}`;
    else joined.push(arg);
  }
  return joined;
}

function parse(command: Command, args: readonly string[]): { values: OptionValues; positionals: string[] } {
  try {
    const parsed = parseArgs({
      args: joinNegatives(args),
      options: { ...command.options, ...HELP },
      allowPositionals: true,
    });
    return { values: parsed.values as OptionValues, positionals: parsed.positionals };
  } catch (error) {
    // parseArgs words its refusals well; only the class is foreign.
    throw usageError("bad-arguments", [], { why: errorText(error) });
  }
}

async function runCommand(args: readonly string[], terminal: Terminal): Promise<number> {
  const [name, ...rest] = args;
  if (name === "--help" || name === "-h" || name === "help") {
    await terminal.write(overview());
    return 0;
  }
  const entry = COMMANDS.find((one) => one.name === name);
  if (entry === undefined) {
    if (name === undefined) throw usageError("command-needed", [], { overview: overview() });
    throw usageError("command-unknown", [], { command: name });
  }
  const command = await entry.load();
  const { values, positionals } = parse(command, rest);
  if (values.help === true) {
    await terminal.write(`${entry.summary}\n\n${command.usage}\n`);
    return 0;
  }
  return command.run(positionals, values, terminal);
}

/** What was wrong with the input, a sentence each; undefined for an error that is no one's mistake. */
function inputProblems(error: unknown): readonly string[] | undefined {
  if (error instanceof ReadingsError) return error.problems.map(lineProblemText);
  // A statistic asked for what cannot be is our mistake.
  return error instanceof ProblemError && !(error instanceof StatisticsError) ? [error.message] : undefined;
}

/**
 * Carries out a command line.
 *
 * @param args - without the interpreter and the script
 * @param complain - takes one sentence for standard error
 * @returns the exit status: 0; 1 when some of the input was bad; 2 when the command line makes no sense;
 *   what it throws went wrong inside (`INTERNAL_ERROR`)
 */
export async function gatefall(
  args: readonly string[],
  terminal: Terminal,
  complain: (sentence: string) => void,
): Promise<number> {
  try {
    return await runCommand(args, terminal);
  } catch (error) {
    if (error instanceof UsageError) {
      complain(error.message);
      return 2;
    }
    const problems = inputProblems(error);
    if (problems === undefined) throw error;
    for (const problem of problems) complain(problem);
    return 1;
  }
}
