import { type ReactNode, useState } from "react";
import { harmlessName } from "../../lock/harmlessText";
import type { StandingCell } from "../../progress/classTable";
import { isJobSkill } from "../../records/jobRecord";
import { cellState, cellWords } from "./cellWords";
import type { NamedSkill } from "./classView";
import { StateMark } from "./StateMark";
import {
  BY_NAME,
  type DeskRow,
  type DeskTable,
  nextOrder,
  orderedRows,
  shownIn,
  type TableFilter,
  type TableOrder,
} from "./tableOrder";

/** Someone to look at closely; the skill is null for all. */
export interface Chosen {
  readonly personId: string;
  readonly skill: NamedSkill | null;
}

interface ClassTableProps {
  readonly table: DeskTable;
  readonly skills: readonly NamedSkill[];
  readonly names: ReadonlyMap<string, string>;
  readonly filter: TableFilter;
  readonly onChoose: (chosen: Chosen) => void;
}

interface SortHeadProps {
  readonly column: string;
  readonly order: TableOrder;
  readonly onOrder: (order: TableOrder) => void;
  readonly children: ReactNode;
}

function SortHead({ column, order, onOrder, children }: SortHeadProps) {
  const isSorted = order.column === column;
  return (
    <th scope="col" aria-sort={isSorted ? order.direction : "none"}>
      <button
        type="button"
        className="bare row flex-nowrap min-h-[36px] py-2 pr-4 pl-3"
        onClick={() => onOrder(nextOrder(order, column))}
      >
        {children}
        <svg viewBox="0 0 10 12" width="10" height="12" aria-hidden="true">
          <path className="up fill-hair" d="M5 0l4 5H1z" />
          <path className="down fill-hair" d="M5 12l4 -5H1z" />
        </svg>
      </button>
    </th>
  );
}

interface CellProps {
  readonly cell: StandingCell | null;
  /** Whose, and at what. */
  readonly whose: string;
  readonly isJob: boolean;
  readonly onChoose: () => void;
}

function Cell({ cell, whose, isJob, onChoose }: CellProps) {
  if (cell === null) {
    return (
      <td>
        <span className="block min-w-[124px] py-3 pr-4 pl-3">
          <StateMark state="none" isJob={isJob} />
        </span>
      </td>
    );
  }
  const { openings, latest, best } = cellWords(cell);
  return (
    <td>
      <button
        type="button"
        className="bare flex flex-col items-start w-full min-w-[148px] py-3 pr-4 pl-3 hover:bg-well"
        onClick={onChoose}
      >
        <StateMark state={cellState(cell)} />
        <span>{openings}</span>
        <small className="text-balance">Latest: {latest}</small>
        {best !== null && <small className="text-balance">Best: {best}</small>}
        <span className="visually-hidden">. More of {whose}</span>
      </button>
    </td>
  );
}

interface RowProps extends Pick<ClassTableProps, "skills" | "onChoose"> {
  readonly row: DeskRow;
  readonly name: string;
}

function Row({ row, name, skills, onChoose }: RowProps) {
  const { person, cells } = row;
  return (
    <tr>
      <th scope="row">
        <button
          type="button"
          className="bare min-h-[44px] p-3 text-body underline decoration-line underline-offset-[3px] hover:bg-well"
          onClick={() => onChoose({ personId: person.id, skill: null })}
        >
          {harmlessName(name)}
        </button>
        {person.isDemo === true && <small className="block -mt-3 px-3 pb-3">invented</small>}
      </th>
      <td>
        <span className="block min-w-[124px] py-3 pr-4 pl-3">
          <StateMark state={row.isReady ? "ready" : "not-yet"} />
          <small className="block">
            {shownIn(row)} of {skills.length} skills
          </small>
        </span>
      </td>
      {skills.map((skill, i) => (
        <Cell
          key={skill.key}
          cell={cells[i] ?? null}
          isJob={isJobSkill(skill.skill)}
          whose={`${name}, ${skill.title}`}
          onChoose={() => onChoose({ personId: person.id, skill })}
        />
      ))}
    </tr>
  );
}

/** People by skills, sorted by any column. */
export function ClassTableView({ table, skills, names, filter, onChoose }: ClassTableProps) {
  const [order, setOrder] = useState(BY_NAME);
  const rows = orderedRows(table, names, order, filter);
  const head = { order, onOrder: setOrder };
  if (rows.length === 0) return <p className="py-5 text-soft">No one matches this filter.</p>;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
    <section className="relative min-w-0 overflow-x-auto" aria-label="People by skills; scrolls sideways" tabIndex={0}>
      <table className="desk-table">
        <caption className="visually-hidden">People by skills</caption>
        <thead>
          <tr>
            <SortHead column="person" {...head}>
              Person
            </SortHead>
            <SortHead column="all" {...head}>
              All skills
            </SortHead>
            {skills.map(({ key, title }) => (
              <SortHead key={key} column={key} {...head}>
                {title}
              </SortHead>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <Row
              key={row.person.id}
              row={row}
              name={names.get(row.person.id) ?? row.person.name}
              skills={skills}
              onChoose={onChoose}
            />
          ))}
        </tbody>
      </table>
    </section>
  );
}
