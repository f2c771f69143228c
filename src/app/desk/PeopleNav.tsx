import { Button } from "../parts/controls/Button";
import type { Chosen } from "./ClassTableView";
import type { DeskTable } from "./tableOrder";

interface PeopleNavProps {
  readonly chosen: Chosen;
  readonly table: DeskTable;
  readonly names: ReadonlyMap<string, string>;
  readonly onChoose: (chosen: Chosen) => void;
}

/** From one person to the next, in the order of the names, with the same skill in view. */
export function PeopleNav({ chosen, table, names, onChoose }: PeopleNavProps) {
  const place = table.rows.findIndex(({ person }) => person.id === chosen.personId);
  const to = (step: number, word: string) => {
    const person = place < 0 ? undefined : table.rows[place + step]?.person;
    const name = person === undefined ? "" : `: ${names.get(person.id) ?? person.name}`;
    return (
      <Button
        // Not disabled: at the end of the class it keeps the focus.
        aria-disabled={person === undefined}
        onClick={() => person && onChoose({ ...chosen, personId: person.id })}
      >
        {word} person{name}
      </Button>
    );
  };
  return (
    <nav className="row justify-between mb-4" aria-label="People of the class">
      {to(-1, "Previous")}
      {to(1, "Next")}
    </nav>
  );
}
