import { dsvFormat } from "d3-dsv";
import { fieldProblem } from "../../lock/fieldProblem";
import { type Problem, under } from "../../wording/problem";
import { foldedName, tidyName } from "../names/foldedName";
import { SchoolError } from "../schoolError";
import { schoolProblem } from "../schoolWords";
import { extraTime, LONGEST_NAME, newPerson, type PreviewRow } from "../wire/rosterWire";

/** Somebody of the school whom a row can mean. */
export interface KnownPerson {
  readonly id: string;
  readonly name: string;
  readonly extraTime: number;
  readonly isInClass: boolean;
}

/** Most rows of a file: no class is larger. */
const MOST_ROWS = 500;

/** What a column may be called in its first row, folded. */
const HEADINGS = {
  name: ["name", "full name", "person", "apprentice", "student"],
  first: ["first name", "first", "given name"],
  last: ["last name", "last", "family name", "surname"],
  extraTime: ["extra time", "extra_time", "extratime", "extra time %", "extra time (%)"],
} as const;

type Columns = Readonly<Record<keyof typeof HEADINGS, number>>;

const SEPARATORS = [",", ";", "\t"] as const;

/** The separator that the first row has most of: spreadsheets write what their country writes. */
function separatorOf(text: string): string {
  const [first = ""] = text.split(/\r?\n/, 1);
  const counts = SEPARATORS.map((separator) => first.split(separator).length);
  return SEPARATORS[counts.indexOf(Math.max(...counts))] ?? ",";
}

/** A row of the file and the line that it is, counted from 1 as a spreadsheet does. */
interface Row {
  readonly line: number;
  readonly cells: readonly string[];
}

function columnsOf({ cells }: Row): Columns | null {
  const folded = cells.map(foldedName);
  const at = (names: readonly string[]) => folded.findIndex((heading) => names.includes(heading));
  const columns: Columns = {
    name: at(HEADINGS.name),
    first: at(HEADINGS.first),
    last: at(HEADINGS.last),
    extraTime: at(HEADINGS.extraTime),
  };
  return columns.name >= 0 || columns.first >= 0 || columns.last >= 0 ? columns : null;
}

/** Without headings the first column is the name, the second the extra time. */
const UNNAMED: Columns = { name: 0, first: -1, last: -1, extraTime: 1 };

/** Who a row names, as far as it can be read. */
interface Named {
  readonly line: number;
  readonly name: string;
  /** As it is in the file; empty where the file says nothing. */
  readonly extraTime: string;
}

/** @throws {SchoolError} "too-many-rows" */
function namedIn(csv: string): Named[] {
  const text = csv.replace(/^\uFEFF/, "");
  const rows: Row[] = dsvFormat(separatorOf(text))
    .parseRows(text)
    .map((cells, k) => ({ line: k + 1, cells }))
    .filter(({ cells }) => cells.some((cell) => cell.trim() !== ""));
  const [first] = rows;
  if (first === undefined) return [];
  const columns = columnsOf(first);
  const people = columns === null ? rows : rows.slice(1);
  if (people.length > MOST_ROWS) throw new SchoolError(schoolProblem("too-many-rows", ["csv"], { most: MOST_ROWS }));
  const { name, first: given, last, extraTime: extra } = columns ?? UNNAMED;
  return people.map(({ line, cells }) => ({
    line,
    name: tidyName(name >= 0 ? (cells[name] ?? "") : `${cells[given] ?? ""} ${cells[last] ?? ""}`),
    extraTime: (cells[extra] ?? "").replace(/%\s*$/, "").trim(),
  }));
}

const refused = ({ line, name }: Named, why: Problem): PreviewRow => ({
  line,
  outcome: "refused",
  name: name.slice(0, LONGEST_NAME),
  why: { ...why, path: why.path.map(String) },
});

/** The extra time that a row wants; null where it says nothing. */
const extraTimeOf = (text: string) =>
  text === "" ? { success: true as const, data: null } : extraTime.safeParse(Number(text));

/** What is wrong with a row by itself; null where nothing is. */
function wrongWith({ name, extraTime: extra }: Named): Problem | null {
  if (name === "") return schoolProblem("no-name", []);
  const read = newPerson.shape.name.safeParse(name);
  if (!read.success) return under(["name"], fieldProblem(read.error.issues, name));
  const wanted = extraTimeOf(extra);
  return wanted.success ? null : under(["extraTime"], fieldProblem(wanted.error.issues, extra));
}

/** What a row that can be read comes to. @param alike - people of the school with its name */
function outcomeOf(named: Named, alike: readonly KnownPerson[]): PreviewRow {
  const { line, name } = named;
  const wanted = extraTimeOf(named.extraTime).data ?? null;
  const here = alike.filter(({ isInClass }) => isInClass);
  const [meant, another] = here.length > 0 ? here : alike;
  if (another !== undefined) return refused(named, schoolProblem("several-people", [], { name }));
  if (meant === undefined) return { line, outcome: "added", name, extraTime: wanted ?? 0 };
  return {
    line,
    outcome: "matched",
    name: meant.name,
    personId: meant.id,
    isInClass: meant.isInClass,
    extraTime: wanted === meant.extraTime ? null : wanted,
  };
}

/**
 * What would become of each row of a file of names: CSV with commas, semicolons or tabs, with or without headings.
 *
 * @param people - everybody of the school who was not erased
 * @throws {SchoolError} "too-many-rows"
 */
export function previewRoster(csv: string, people: readonly KnownPerson[]): PreviewRow[] {
  const byName = new Map<string, KnownPerson[]>();
  for (const person of people) {
    const folded = foldedName(person.name);
    byName.set(folded, [...(byName.get(folded) ?? []), person]);
  }
  const lines = new Map<string, number>();
  return namedIn(csv).map((named) => {
    const wrong = wrongWith(named);
    if (wrong !== null) return refused(named, wrong);
    const folded = foldedName(named.name);
    const line = lines.get(folded);
    if (line !== undefined) return refused(named, schoolProblem("twice", [], { line }));
    lines.set(folded, named.line);
    return outcomeOf(named, byName.get(folded) ?? []);
  });
}
