import type { ClassTable } from "../../logbook/classTable";
import { cellState, masteryWords } from "./cellWords";

/** Someone who is not ready, with what is wanted. */
export interface UnderWay {
  readonly name: string;
  readonly wanted: string;
}

/** Who is ready in one skill, and who is not. */
export interface ReadyList {
  readonly ready: readonly string[];
  /** Nearest to it first. */
  readonly notYet: readonly UnderWay[];
  readonly none: readonly string[];
}

/** Who is ready, for each skill in the order of the table. */
export function readyLists({ skills, rows }: ClassTable, names: ReadonlyMap<string, string>): ReadyList[] {
  return skills.map((_, i) => {
    const all = rows.map(({ person, cells }) => ({
      name: names.get(person.id) ?? person.name,
      cell: cells[i] ?? null,
      state: cellState(cells[i]),
    }));
    const namesOf = (state: string) => all.filter((one) => one.state === state).map(({ name }) => name);
    const underWay = all.flatMap(({ name, cell, state }) => (cell && state === "not-yet" ? [{ name, cell }] : []));
    return {
      ready: namesOf("ready"),
      notYet: underWay
        .sort((a, b) => b.cell.mastery.progress - a.cell.mastery.progress)
        .map(({ name, cell }) => ({ name, wanted: masteryWords(cell.mastery) })),
      none: namesOf("none"),
    };
  });
}
