import { cellState, masteryWords } from "./cellWords";
import type { DeskTable } from "./tableOrder";

/** Someone who is not ready, with what is wanted. */
export interface UnderWay {
  readonly name: string;
  readonly wanted: string;
}

/** Who is ready in one skill, and who is not. */
export interface ReadyList {
  readonly ready: readonly string[];
  /** Ready before, and no longer. */
  readonly lapsed: readonly UnderWay[];
  /** Nearest to it first. */
  readonly notYet: readonly UnderWay[];
  readonly none: readonly string[];
}

/** Who is ready, for each skill in the order of the table. */
export function readyLists({ skills, rows }: DeskTable, names: ReadonlyMap<string, string>): ReadyList[] {
  return skills.map((_, i) => {
    const all = rows.map(({ person, cells }) => ({
      name: names.get(person.id) ?? person.name,
      cell: cells[i] ?? null,
      state: cellState(cells[i]),
    }));
    const namesOf = (state: string) => all.filter((one) => one.state === state).map(({ name }) => name);
    const nearestFirst = (wanted: string) =>
      all
        .flatMap(({ name, cell, state }) => (cell && state === wanted ? [{ name, cell }] : []))
        .sort((a, b) => b.cell.mastery.progress - a.cell.mastery.progress)
        .map(({ name, cell }) => ({ name, wanted: masteryWords(cell.mastery) }));
    return {
      ready: namesOf("ready"),
      lapsed: nearestFirst("lapsed"),
      notYet: nearestFirst("not-yet"),
      none: namesOf("none"),
    };
  });
}
