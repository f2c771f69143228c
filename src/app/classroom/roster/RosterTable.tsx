import type * as z from "zod/mini";
import type { rosterPerson } from "../../../school/wire/rosterWire";
import { Button } from "../../parts/controls/Button";
import { HeadRow } from "../../parts/HeadRow";
import { shownName } from "../../parts/shownName";

/** A person of a class. */
export type RosterPerson = Readonly<z.infer<typeof rosterPerson>>;

interface TableProps {
  readonly people: readonly RosterPerson[];
  readonly isOpen: boolean;
  readonly onChoose: (id: string) => void;
  readonly onCard: (id: string) => void;
}

const HEAD = ["Name", "Extra time", "PIN", "Join card", "Change"] as const;

/** Everybody in a class. */
export function RosterTable({ people, isOpen, onChoose, onCard }: TableProps) {
  return (
    <div className="stacks overflow-x-auto">
      <table className="[&_:is(td,th)]:align-middle">
        <caption className="visually-hidden">Roster</caption>
        <HeadRow of={HEAD} />
        <tbody>
          {people.map((person) => {
            const name = shownName(person.name);
            const [, extra, pin, card, change] = HEAD;
            return (
              <tr key={person.id}>
                <th scope="row" className="wrap-anywhere">
                  {name} {person.isByCode && <small className="block">joined by code: is this one of yours?</small>}
                </th>
                <td data-head={extra}>{person.extraTime === 0 ? "none" : `${person.extraTime} %`}</td>
                <td data-head={pin}>{person.hasPin ? "set" : "none"}</td>
                <td data-head={card}>
                  <span className="inline-flex items-center gap-3">
                    {person.hasCard ? "good" : "none"}
                    {isOpen && (
                      <Button className="slim" onClick={() => onCard(person.id)}>
                        {person.hasCard ? "Lost: new card" : "New card"}
                        <span className="visually-hidden"> for {name}</span>
                      </Button>
                    )}
                  </span>
                </td>
                <td data-head={change}>
                  <Button className="slim" aria-haspopup="dialog" onClick={() => onChoose(person.id)}>
                    Change<span className="visually-hidden"> {name}</span>
                  </Button>
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}
