import type { Range } from "../lock/profile";

/** An entry of a data file of training values: one figure, a range that chance draws from, or figures in a list. */
type Entry =
  | { readonly value: number }
  | { readonly from: number; readonly to: number }
  | { readonly list: readonly number[] };

type Figure<One> = One extends { readonly value: number }
  ? number
  : One extends { readonly from: number }
    ? Range
    : readonly [number, ...number[]];

function figureOf(entry: Entry) {
  if ("value" in entry) return entry.value;
  return "list" in entry ? entry.list : [entry.from, entry.to];
}

/** The figures of a data file of training values, by their names; what each is for is told in the file. Units are those of the file. */
export const figuresOf = <Table extends Readonly<Record<string, Entry>>>(table: Table) =>
  Object.fromEntries(Object.entries(table).map(([name, entry]) => [name, figureOf(entry)])) as {
    readonly [Name in keyof Table]: Figure<Table[Name]>;
  };
