import type { ClassRow, ClassTable, StandingCell } from "../../progress/classTable";
import { skillKey } from "../../records/skill";

/** The table of a desk, from files or from a server. */
export type DeskTable = ClassTable<StandingCell>;

/** One person in it. */
export type DeskRow = ClassRow<StandingCell>;

/** What a class table is sorted by. */
export interface TableOrder {
  /** "person", "all" for how many skills someone is ready at, or the key of a skill. */
  readonly column: string;
  readonly direction: "ascending" | "descending";
}

/** Who is listed. */
export interface TableFilter {
  readonly show: "everyone" | "ready" | "not-yet";
  /** Ready in what: the key of a skill, or "all". */
  readonly skill: string;
}

/** By name, as a class list is. */
export const BY_NAME: TableOrder = { column: "person", direction: "ascending" };

/** The order after a header was pressed: names from A, skills with those who are ready first, and then the other way. */
export function nextOrder({ column, direction }: TableOrder, pressed: string): TableOrder {
  if (column === pressed) return { column, direction: direction === "ascending" ? "descending" : "ascending" };
  return { column: pressed, direction: pressed === "person" ? "ascending" : "descending" };
}

/** How far a cell is: below 0 without an attempt, up to 1 under way, above 1 while ready. */
function standing(cell: StandingCell | null | undefined): number {
  if (!cell) return -1;
  const { isReady, progress } = cell.mastery;
  return (isReady ? 1 : 0) + (progress + cell.openings.share) / 2;
}

/** How many skills someone is ready at. */
export const shownIn = ({ cells }: DeskRow) => cells.filter((cell) => cell?.mastery.isReady === true).length;

/** Whether someone is ready in a skill, or in all that are asked for. */
export function isReadyIn(row: DeskRow, { skills }: Pick<DeskTable, "skills">, skill: string): boolean {
  if (skill === "all") return row.isReady;
  return row.cells[skills.findIndex((one) => skillKey(one) === skill)]?.mastery.isReady === true;
}

function compared(a: DeskRow, b: DeskRow, { skills }: DeskTable, column: string): number {
  if (column === "all") return shownIn(a) - shownIn(b);
  const index = skills.findIndex((skill) => skillKey(skill) === column);
  return index < 0 ? 0 : standing(a.cells[index]) - standing(b.cells[index]);
}

/**
 * The rows to show, in order; of equals the name decides, from A.
 *
 * @param names - what each person is called, by id
 */
export function orderedRows(
  table: DeskTable,
  names: ReadonlyMap<string, string>,
  order: TableOrder,
  { show, skill }: TableFilter,
): DeskRow[] {
  const name = ({ person }: DeskRow) => names.get(person.id) ?? person.name;
  const sign = order.direction === "ascending" ? 1 : -1;
  const rows = table.rows.filter((row) => show === "everyone" || isReadyIn(row, table, skill) === (show === "ready"));
  return rows.sort((a, b) => {
    const byName = name(a).localeCompare(name(b));
    return order.column === "person" ? sign * byName : sign * compared(a, b, table, order.column) || byName;
  });
}
