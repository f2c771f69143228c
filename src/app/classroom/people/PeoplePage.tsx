import { useState } from "react";
import type * as z from "zod/mini";
import { classList } from "../../../school/wire/classWire";
import { schoolPeople } from "../../../school/wire/rosterWire";
import { countText } from "../../../wording/amountWords";
import { useAsked } from "../../keeping/useLogbook";
import { Button } from "../../parts/controls/Button";
import { Dialog } from "../../parts/controls/Dialog";
import { Notice } from "../../parts/Notice";
import { shownName } from "../../parts/shownName";
import { ToldLine, useDoing } from "../../parts/Told";
import type { Asking } from "../asking/asking";
import { ExportList } from "../records/ExportList";
import { ErasePerson } from "./ErasePerson";
import { MergePerson } from "./MergePerson";

/** Somebody of the school, with the classes that they are in. */
type SchoolPerson = z.infer<typeof schoolPeople>["people"][number];

const holds = (name: string, part: string) => name.toLocaleLowerCase().includes(part.trim().toLocaleLowerCase());

interface PersonProps {
  readonly asking: Asking;
  readonly person: SchoolPerson;
  /** Everyone else of the school. */
  readonly others: readonly SchoolPerson[];
  readonly onChanged: (says: string) => void;
}

/** What is done with one person's data. */
function PersonData({ asking, person, others, onChanged }: PersonProps) {
  return (
    <div className="stack gap-5">
      <section className="stack" aria-labelledby="person-export">
        <h3 id="person-export">Save the records</h3>
        <ExportList asking={asking} path={`/people/${person.id}`} name={person.name} />
      </section>
      {others.length > 0 && (
        <section className="stack" aria-labelledby="person-merge">
          <h3 id="person-merge">Is this person on the list twice?</h3>
          <MergePerson asking={asking} person={person} others={others} onMerged={onChanged} />
        </section>
      )}
      <section className="stack" aria-labelledby="person-erase">
        <h3 id="person-erase">Erase this person</h3>
        <ErasePerson asking={asking} person={person} onErased={onChanged} />
      </section>
    </div>
  );
}

/** Everybody of the school, those too who left their class: their data is saved or erased here. */
export function PeoplePage({ asking }: { readonly asking: Asking }) {
  const [version, setVersion] = useState(0);
  const [part, setPart] = useState("");
  const [chosen, setChosen] = useState<string | null>(null);
  const { answer, problem } = useAsked(`people ${version}`, async () => ({
    people: (await asking.read("/people", schoolPeople)).people,
    classes: (await asking.read("/classes", classList)).classes,
  }));
  const { told, say } = useDoing();
  const people = answer?.people ?? [];
  const shown = people.filter(({ name }) => holds(name, part));
  const person = people.find(({ id }) => id === chosen) ?? null;
  const classesOf = ({ classIds }: SchoolPerson) =>
    classIds.map((id) => shownName(answer?.classes.find((one) => one.id === id)?.name ?? "")).join(", ");
  const changed = (says: string) => {
    setChosen(null);
    setVersion(version + 1);
    say(says);
  };
  return (
    <>
      <h1 tabIndex={-1}>People</h1>
      <p>Everyone who is or was on a roster of your school.</p>
      {problem !== null && <Notice className="">{problem}</Notice>}
      <ToldLine told={told} />
      {answer !== null && people.length === 0 && <p>Nobody is on a roster yet.</p>}
      {people.length > 0 && (
        <label className="block">
          Find a name
          <input
            className="field block w-[min(320px,100%)] mt-2"
            type="search"
            value={part}
            onChange={({ currentTarget }) => setPart(currentTarget.value)}
          />
        </label>
      )}
      <p role="status" className="text-small text-soft">
        {answer !== null && `${countText(shown.length, "person", "people")} shown`}
      </p>
      <ul className="plain">
        {shown.map((one) => (
          <li key={one.id} className="flex items-center justify-between gap-4 py-2 ruled">
            <span className="min-w-0 wrap-anywhere">
              <b className="font-medium">{shownName(one.name)}</b>
              <small className="block">{classesOf(one) || "in no class"}</small>
            </span>
            <Button className="slim" aria-haspopup="dialog" onClick={() => setChosen(one.id)}>
              Records and data<span className="visually-hidden"> of {shownName(one.name)}</span>
            </Button>
          </li>
        ))}
      </ul>
      <Dialog title={shownName(person?.name ?? "Person")} isOpen={person !== null} onClose={() => setChosen(null)}>
        {person !== null && (
          <PersonData
            key={person.id}
            asking={asking}
            person={person}
            others={people.filter(({ id }) => id !== person.id)}
            onChanged={changed}
          />
        )}
      </Dialog>
    </>
  );
}
