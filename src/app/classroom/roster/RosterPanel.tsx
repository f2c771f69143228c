import { useRef, useState } from "react";
import * as z from "zod/mini";
import { madeCards, roster } from "../../../school/wire/rosterWire";
import { countText } from "../../../wording/amountWords";
import { useAsked } from "../../keeping/useLogbook";
import { Button } from "../../parts/controls/Button";
import { Notice } from "../../parts/Notice";
import { shownName } from "../../parts/shownName";
import { ToldLine, useDoing } from "../../parts/Told";
import type { OfClass } from "../asking/classProps";
import { CardSheet, type Cards } from "../cards/CardSheet";
import { LineForm } from "../entry/LineForm";
import { PersonDialog } from "./PersonDialog";
import { RosterFile } from "./RosterFile";
import { type RosterPerson, RosterTable } from "./RosterTable";

const madePerson = z.object({ id: z.string() });

/** Who is in a class: by hand, from a file, with cards to join by. */
export function RosterPanel({ asking, one }: OfClass) {
  const [version, setVersion] = useState(0);
  const [chosen, setChosen] = useState<string | null>(null);
  const [cards, setCards] = useState<Cards | null>(null);
  const path = `/classes/${one.id}`;
  const { answer, problem } = useAsked(`roster ${one.id} ${version}`, () => asking.read(`${path}/people`, roster));
  const { told, act } = useDoing();
  const people: readonly RosterPerson[] = answer?.people ?? [];
  const person = people.find(({ id }) => id === chosen) ?? null;
  const changed = () => setVersion((before) => before + 1);
  const heading = useRef<HTMLHeadingElement>(null);
  const taken = () => {
    changed();
    heading.current?.focus();
  };
  const add = (name: string) =>
    act(async () => {
      await asking.change(`${path}/people`, madePerson, { name });
      changed();
      return `${shownName(name)} is on the roster.`;
    });
  const makeCards = (personIds?: readonly string[]) =>
    act(async () => {
      const made = await asking.change(`${path}/cards`, madeCards, personIds === undefined ? {} : { personIds });
      changed();
      if (made.cards.length === 0) return "Everyone has a card. For a lost one, make a new card in its row.";
      setCards(made);
      return `${countText(made.cards.length, "card is", "cards are")} ready to print.`;
    });
  if (cards !== null)
    return <CardSheet cards={cards} school={asking.signedIn.school.name} onDone={() => setCards(null)} />;
  const isOpen = one.endedAt === null;
  return (
    <section className="stack gap-5" aria-labelledby="class-roster">
      <h2 id="class-roster" tabIndex={-1} ref={heading}>
        Roster: {countText(people.length, "person", "people")}
      </h2>
      {problem !== null && <Notice className="">{problem}</Notice>}
      {answer?.people.length === 0 && (
        <p>Nobody is on the roster yet. Add names here, or let apprentices join with the class code.</p>
      )}
      {people.length > 0 && (
        <RosterTable people={people} onChoose={setChosen} onCard={(id) => makeCards([id])} isOpen={isOpen} />
      )}
      <ToldLine told={told} />
      {isOpen && (
        <>
          <div className="row items-end gap-x-6">
            <LineForm label="Name to add" button="Add to the roster" onLine={add} />
            {people.length > 0 && (
              <Button onClick={() => makeCards()}>Make join cards for everyone who has none</Button>
            )}
          </div>
          <RosterFile asking={asking} one={one} onTaken={taken} />
        </>
      )}
      <PersonDialog
        key={`${chosen} ${person?.version}`}
        asking={asking}
        classId={one.id}
        person={person}
        onChanged={changed}
        onClose={() => setChosen(null)}
        says={(text) => act(async () => text)}
        title={shownName(person?.name ?? "Person")}
      />
    </section>
  );
}
