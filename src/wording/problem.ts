import { countText } from "./amountWords";

/** Where something is wrong: keys and places, from the whole inward. */
export type Path = readonly PropertyKey[];

/** What is wrong, as data: its code, where it is, and what its words need. */
export interface Problem {
  readonly code: string;
  readonly path: Path;
  /** A value named `found` that the words do not use comes behind what must be, before advice: ", not 5", "(it is missing)". */
  readonly values: Readonly<Record<string, unknown>>;
}

/**
 * Words for the problems of a topic, by code. `{name}` takes a value of ours, or the words of a problem, `{name:placed}` with its place; `{name:json}` shows
 * any value from outside as JSON, `{name:percent}` a share, `{name:dashes}` and `{name:or}` join a list,
 * `{count:try|tries}` puts a noun to a count. Words that begin with ": " are a sentence of their own; others go on from the
 * place: "title must be ...".
 */
export type Words = Readonly<Record<string, string>>;

type NameOf<Slot> = Slot extends `${infer Name}:${string}` ? Name : Slot;
type SlotsOf<Text> = Text extends `${string}{${infer Slot}}${infer Rest}` ? NameOf<Slot> | SlotsOf<Rest> : never;
type ValuesOf<Text> = { readonly [Name in SlotsOf<Text>]: unknown };
type Found = { readonly found?: unknown };
/** The values that words need, and what was found, where that is to be said. */
export type ValuesFor<Text> = [SlotsOf<Text>] extends [never] ? [values?: Found] : [values: ValuesOf<Text> & Found];

/** Makes the problems that a topic has words for: the compiler knows its codes and the values that each needs. */
export const problemsOf =
  <const Table extends Words>(_words: Table) =>
  <Code extends keyof Table & string>(code: Code, path: Path, ...[values]: ValuesFor<Table[Code]>): Problem => ({
    code,
    path,
    values: values ?? {},
  });

/** Makes the errors that a topic has words for, as `problemsOf` makes its problems. */
export const errorsOf =
  <const Table extends Words, Kind extends ProblemError>(words: Table, TheError: new (problem: Problem) => Kind) =>
  <Code extends keyof Table & string>(code: Code, path: Path, ...values: ValuesFor<Table[Code]>): Kind =>
    new TheError(problemsOf(words)(code, path, ...values));

/** A problem of a part, in the whole that the part lies in. */
export const under = (path: Path, problem: Problem): Problem => ({ ...problem, path: [...path, ...problem.path] });

/** Something that must hold, and the problem where it does not. */
export type Finding = readonly [isFine: boolean, problem: Problem];

/** The problems of all that does not hold. */
export const failing = (findings: readonly Finding[]): readonly Problem[] =>
  findings.flatMap(([isFine, problem]) => (isFine ? [] : [problem]));

/** A path as one writes it: "stations[0].passMarks.firstTime". */
export const pathText = (path: Path): string =>
  path.map((key, k) => (typeof key === "number" ? `[${key}]` : `${k === 0 ? "" : "."}${String(key)}`)).join("");

const LONGEST_SHOWN = 40;

function jsonText(value: unknown): string {
  try {
    return JSON.stringify(value) ?? "missing";
  } catch {
    return "a value nested too deep to be shown";
  }
}

/** A value as a short piece of JSON, for a sentence. */
function shown(value: unknown): string {
  if (typeof value === "number") return String(value);
  const text = jsonText(value);
  return text.length > LONGEST_SHOWN ? `${text.slice(0, LONGEST_SHOWN)}…` : text;
}

const listed = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : [value]);

function alternatives(value: unknown): string {
  const each = listed(value).map((one) => JSON.stringify(one));
  return each.length < 2 ? each.join() : `${each.slice(0, -1).join(", ")} or ${each.at(-1)}`;
}

const isProblem = (value: unknown): value is Problem =>
  typeof value === "object" && value !== null && "code" in value && "values" in value;

function inSlot(value: unknown, format: string | undefined, words: Words): string {
  const [one, many] = format?.split("|") ?? [];
  if (many !== undefined) return countText(Number(value), one ?? "", many);
  switch (format) {
    case "json":
      return shown(value);
    case "dashes":
      return listed(value).join("-");
    case "or":
      return alternatives(value);
    case "placed":
      return isProblem(value) ? problemText(value, words) : String(value);
    case "percent":
      return `${Number((100 * Number(value)).toFixed(2))} %`;
    default:
      return isProblem(value) ? wordsOf(value, words) : listed(value).join(", ");
  }
}

const SLOT = /\{(\w+)(?::([^}]+))?\}/g;
const ALONE = ": ";
const ADVICE = "; ";

/** What is wrong, without where: the rest of a sentence about the place, or a sentence of its own; without its period. */
export function wordsOf({ code, values }: Problem, words: Words): string {
  const pattern = words[code] ?? code;
  const own = pattern.startsWith(ALONE) ? pattern.slice(ALONE.length) : pattern;
  const filled = (part: string) =>
    part.replace(SLOT, (_, name: string, format?: string) => inSlot(values[name], format, words));
  if (!("found" in values) || pattern.includes("{found")) return filled(own);
  const found = values.found === undefined ? " (it is missing)" : `, not ${shown(values.found)}`;
  const [rule = "", ...advice] = own.split(ADVICE);
  return [`${filled(rule)}${found}`, ...advice.map(filled)].join(ADVICE);
}

/** Whether the words for a problem are a sentence of their own, and do not go on from its place. */
const standsAlone = ({ code }: Problem, words: Words): boolean => words[code]?.startsWith(ALONE) === true;

/** What is wrong and where, without its period. */
export function problemText(problem: Problem, words: Words): string {
  const place = pathText(problem.path);
  const says = wordsOf(problem, words);
  if (!standsAlone(problem, words)) return `${place === "" ? "this" : place} ${says}`;
  return place === "" ? says : `${place}: ${says}`;
}

/** A problem on its way up. Its message is worded only when it is asked for. */
export abstract class ProblemError extends Error {
  readonly problem: Problem;
  /** What the path of the problem begins in, such as "sheet"; left out where the problem says it. */
  readonly subject: string | undefined;
  protected abstract readonly words: Words;

  constructor(problem: Problem, subject?: string, options?: ErrorOptions) {
    super(undefined, options);
    this.problem = problem;
    this.subject = subject;
  }

  get code(): string {
    return this.problem.code;
  }

  /** What is wrong, with its subject: "sheet: title must be ...". */
  override get message(): string {
    return this.subject === undefined ? this.says : `${this.subject}: ${this.says}`;
  }

  /** What is wrong, without its subject. */
  get says(): string {
    return problemText(this.problem, this.words);
  }
}

/** What an error of anybody's says. */
export const errorText = (error: unknown): string => (error instanceof Error ? error.message : String(error));
